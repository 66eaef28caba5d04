// SPDX-License-Identifier: MIT
#pragma once
#include "combustion/mixture.hpp"

/// Lighting of the row, and gas that gathers where no flame burns it.
namespace lightoff::combustion {

/// What one step did in one cell, m3/s of gas.
struct CellFlows {
    double burnt_as_it_comes = 0.0;
    double burnt_from_pocket = 0.0;
    double vented = 0.0;
    double spilled = 0.0;
};

/// Kindles, spreads, grows and extinguishes the flames of the first `burner_count` burners.
void spread_flames(const Params& p, const Condition& c, State& s, const Inputs& in,
                   const FlammableRange& range, const RowMixtures& mixtures, double dt_s);

/// What a cell does with gas that its flame has not burnt as it comes, `gathering` m3/s >= 0: see step_cell.
CellFlows gather_and_flush(const Params& p, const FlammableRange& range, const Mixture& m, double flame,
                           double gathering, double air_m3_s, double& unburnt_m3, double dt_s);

/// Burns what the flame reaches, gathers the rest, lets the draft `air_m3_s` of this cell carry it off.
/// Every m3 that enters is burnt, vented, spilled or still gathered.
inline CellFlows step_cell(const Params& p, const FlammableRange& range, const Mixture& m, double flame,
                           double air_m3_s, double& unburnt_m3, double dt_s) {
    const double burnt = flame * m.gas_m3_s;
    const double gathering = m.gas_m3_s - burnt;
    CellFlows out; // a steady flame leaves nothing over
    if (gathering > 0.0 || unburnt_m3 > 0.0)
        out = gather_and_flush(p, range, m, flame, gathering, air_m3_s, unburnt_m3, dt_s);
    out.burnt_as_it_comes = burnt;
    return out;
}

/// Pressure [Pa] of gathered gas burning at `heat_w` in one cell: heat at constant pressure swells the gas by
/// dV/dt = (gamma - 1) / gamma * heat / p, which leaves through the cell's openings, dp = rho (dV/dt / (Cd
/// A))^2 / 2. Teaching value (gamma 1.4, hot gas 0.5 kg/m3, Cd 0.6): the right order, no acoustics.
double puff_pressure_pa(const Params& p, double heat_w);

} // namespace lightoff::combustion
