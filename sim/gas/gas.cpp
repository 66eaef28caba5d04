// SPDX-License-Identifier: MIT
#include "gas/gas.hpp"
#include "gas/gas_path.hpp"
#include "gas/orifice.hpp"
#include "units/constants.hpp"
#include <algorithm>
#include <cmath>

namespace lightoff::gas {
namespace {

/// Constant stroke speed both ways, within the travel that sticking leaves.
void move_valve(const Params& p, const Condition& c, State& s, bool energised, double dt_s) {
    const double target = std::clamp(energised ? 1.0 : 0.0, c.valve_travel_min,
                                     std::max(c.valve_travel_min, c.valve_travel_max));
    if (s.valve_position == target)
        return;
    if (s.valve_position < target)
        s.valve_position = std::min(target, s.valve_position + dt_s / p.valve_opening_s);
    else
        s.valve_position = std::max(target, s.valve_position - dt_s / p.valve_closing_s);
}

struct Conductances {
    PerBurner burner{};
    double burners = 0.0;
    double outlet_tap = 0.0;
    double inlet = 0.0;
    double valve = 0.0;
};

Conductances conductances(const Params& p, const Condition& c, const State& s, double density_ratio) {
    const double per_area =
        orifice_conductance(1.0, p.discharge_coefficient, p.specific_gravity, density_ratio);
    Conductances g;
    for (std::size_t i = 0; i < static_cast<std::size_t>(p.burner_count); ++i) {
        const double diameter = p.orifice_diameter_m[i] * c.orifice_diameter_factor[i];
        g.burner[i] = per_area * circle_area_m2(diameter) * (1.0 - c.orifice_plugging[i]);
        g.burners += g.burner[i];
    }
    const double tap = per_area * circle_area_m2(p.tap_diameter_m);
    g.outlet_tap = tap * c.outlet_tap_open;
    g.inlet = per_area * c.inlet_leak_area_m2 + tap * c.inlet_tap_open;
    g.valve = s.valve_position * p.valve_conductance + per_area * c.valve_leak_area_m2;
    return g;
}

GasPath path(const Params& p, const Condition& c, const Inputs& in, const Conductances& g) {
    const double bore = 1.0 - c.pipe_restriction;
    GasPath out;
    out.supply_pa = p.supply_static_pa * c.supply_factor;
    out.shared_resistance = p.meter_resistance;
    out.branch_resistance =
        p.pipe_resistance / (bore * bore) + p.cock_resistance / (c.cock_open * c.cock_open);
    out.other_flow_m3_s = in.other_appliances_m3_s;
    out.inlet_conductance = g.inlet;
    out.valve_conductance = g.valve;
    out.load_conductance = g.burners + g.outlet_tap;
    const double set = p.regulator_set_pa + c.regulator_adjust_pa + c.regulator_drift_pa;
    out.regulator_slope = p.regulator_slope;
    out.regulator_set_pa = std::max(0.0, set - p.regulator_slope * p.regulator_inlet_pa);
    return out;
}

/// Cock shut (or pipe blocked): the gas in the inlet pipe of volume V runs out through whatever is open. With
/// x = sqrt(p) and Q = G x the balance V dp/dt = -p_baro Q gives dx/dt = -G p_baro / (2 V), constant.
GasPressures bleed_down(const Params& p, const Condition& c, State& s, const Inputs& in,
                        const Conductances& g, double dt_s) {
    const double load = g.burners + g.outlet_tap;
    const double gv2 = g.valve * g.valve;
    const double share = gv2 > 0.0 ? gv2 / (gv2 + load * load) : 0.0;
    const double total = load * std::sqrt(share) + g.inlet;
    const double fall = total * in.barometric_pa / (2.0 * p.inlet_pipe_volume_m3) * dt_s;
    const double x = std::max(0.0, std::sqrt(s.inlet_pressure_pa) - fall);
    const double inlet = x * x;
    const double line = p.regulator_set_pa + c.regulator_adjust_pa + c.regulator_drift_pa;
    const double manifold = std::min(share * inlet, std::max(0.0, line));
    return {inlet, manifold, std::sqrt(manifold)};
}

} // namespace

double dial_fraction(double meter_volume_m3, double dial_m3) {
    const double turns = meter_volume_m3 / dial_m3;
    return turns - static_cast<double>(static_cast<std::int64_t>(turns));
}

Outputs step(const Params& p, const Condition& c, State& s, const Inputs& in, double dt_s) {
    move_valve(p, c, s, in.valve_energised, dt_s);

    const double density_ratio = in.barometric_pa * (1.0 / units::standard_pressure_pa);
    const Conductances g = conductances(p, c, s, density_ratio);
    const bool fed = in.cock_handle_open && c.cock_open > 0.0 && c.pipe_restriction < 1.0;
    const GasPressures pressure =
        fed ? settled_pressures(path(p, c, in, g)) : bleed_down(p, c, s, in, g, dt_s);
    s.inlet_pressure_pa = pressure.inlet_pa;

    Outputs out;
    out.inlet_tap_pa = pressure.inlet_pa;
    out.manifold_tap_pa = pressure.manifold_pa;
    const double root = pressure.manifold_root;
    for (std::size_t i = 0; i < static_cast<std::size_t>(p.burner_count); ++i)
        out.burner_flow_m3_s[i] = g.burner[i] * root;
    out.burners_total_m3_s = g.burners * root;
    out.outlet_leak_m3_s = g.outlet_tap * root;
    if (g.inlet > 0.0)
        out.inlet_leak_m3_s = g.inlet * std::sqrt(pressure.inlet_pa);
    out.meter_flow_m3_s = in.other_appliances_m3_s;
    if (fed)
        out.meter_flow_m3_s += out.burners_total_m3_s + out.outlet_leak_m3_s + out.inlet_leak_m3_s;

    s.meter_volume_m3 += out.meter_flow_m3_s * dt_s / density_ratio;
    out.meter_dial_fraction = dial_fraction(s.meter_volume_m3, p.meter_dial_m3);

    step_room_air(s.room, p.room_volume_m3, in.room_air_changes_per_s,
                  in.spilled_gas_m3_s + out.inlet_leak_m3_s + out.outlet_leak_m3_s, in.spilled_co_m3_s, dt_s);
    return out;
}

} // namespace lightoff::gas
