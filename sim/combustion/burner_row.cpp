// SPDX-License-Identifier: MIT
#include "combustion/burner_row.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::combustion {
namespace {

constexpr double out_below = 0.001;        // a flame this small is out ...
constexpr double full_above = 0.999;       // ... and one this near to full is full
constexpr double nothing_left_m3 = 1.0e-9; // a thousandth of a millilitre: the last of a purge leaves at once
constexpr double still_air_leak_per_s = 1.0 / 900.0; // gas drifting out of a cell with no draft

/// 0 below the threshold; a surface just above it lights slowly, 80 K above it at full speed.
double igniter_rate(const Params& p, const Condition& c, const Inputs& in) {
    const double above = in.igniter_surface_k - p.igniter_lights_k;
    if (above < 0.0)
        return 0.0;
    const double in_stream = 1.0 - c.igniter_displacement;
    return std::min(1.0, 0.1 + 0.9 * above / 80.0) * in_stream * in_stream / p.igniter_light_s;
}

double carry_over_rate(const Params& p, const Condition& c, double neighbour_flame, double port_blockage,
                       double overflow, std::size_t burner) {
    const double open = 1.0 - port_blockage;
    const double reach = (1.0 - 0.5 * c.misalignment[burner]) * (1.0 - 0.7 * c.primary_blockage[burner]);
    return neighbour_flame * (open * open * reach / p.crossover_s + overflow / p.overflow_s);
}

} // namespace

void spread_flames(const Params& p, const Condition& c, State& s, const Inputs& in,
                   const FlammableRange& range, const RowMixtures& mixtures, double dt_s) {
    const auto count = static_cast<std::size_t>(p.burner_count);
    const PerBurner before = s.flame; // so that the order of burners does not matter
    bool any_before = false;
    for (std::size_t i = 0; i < count; ++i)
        any_before = any_before || before[i] > 0.0;

    for (std::size_t i = 0; i < count; ++i) {
        double& flame = s.flame[i];
        if (flame > 0.0) {
            if (!mixtures[i].holds) {
                flame *= units::exp(-dt_s / p.flame_decay_s);
                s.kindling[i] = 0.0;
                if (flame < out_below)
                    flame = 0.0;
            } else if (flame < 1.0) {
                flame = 1.0 - (1.0 - flame) * units::exp(-dt_s / p.flame_growth_s);
                if (flame > full_above)
                    flame = 1.0;
            }
            continue;
        }
        double rate = 0.0;
        if (mixtures[i].ignitable) {
            const double richness = s.unburnt_m3[i] / p.cell_volume_m3 / range.lower_limit - 1.0;
            const double overflow = std::clamp(richness, 0.0, 1.0);
            if (i == 0)
                rate += igniter_rate(p, c, in) + in.pilot_flame / p.igniter_light_s;
            if (i > 0)
                rate += carry_over_rate(p, c, before[i - 1], c.crossover_blockage[i - 1], overflow, i);
            if (i + 1 < count)
                rate += carry_over_rate(p, c, before[i + 1], c.crossover_blockage[i], overflow, i);
        }
        s.kindling[i] = rate > 0.0 ? s.kindling[i] + rate * dt_s : 0.0;
        if (s.kindling[i] >= 1.0) {
            s.kindling[i] = 1.0;
            flame = 1.0 - units::exp(-dt_s / p.flame_growth_s);
            if (!any_before)
                s.peak_ignition_pressure_pa = 0.0;
        }
    }
}

CellFlows gather_and_flush(const Params& p, const FlammableRange& range, const Mixture& m, double flame,
                           double gathering, double air_m3_s, double& unburnt_m3, double dt_s) {
    CellFlows out;
    // Well-mixed cell flushed by air and gas, implicit Euler.
    const double flush = ((air_m3_s + m.gas_m3_s) / p.cell_volume_m3 + still_air_leak_per_s) * dt_s;
    double stored = (unburnt_m3 + gathering * dt_s) / (1.0 + flush);
    double leaving = stored * flush;

    if (flame > 0.0) {
        const double fraction = stored / p.cell_volume_m3;
        const bool lean_pocket = fraction < range.lower_limit && !m.pocket_burns;
        if (range.any && !lean_pocket) {
            const double air_allows = p.cell_volume_m3 / (1.0 + stoichiometric_air(p.fuel));
            const double reached = flame * (1.0 - units::exp(-dt_s / p.pocket_burn_s));
            const double burnt = std::min(stored, air_allows) * reached;
            stored -= burnt;
            out.burnt_from_pocket = burnt / dt_s;
        }
    }
    if (gathering <= 0.0 && stored < nothing_left_m3) {
        leaving += stored;
        stored = 0.0;
    }
    unburnt_m3 = stored;

    // The draft catches what leaves unless there is more gas than it can carry.
    constexpr double catch_ratio = 4.0;
    constexpr double hardly_any_m3_s = 1.0e-5;
    const double spilled_share = std::max(0.0, 1.0 - air_m3_s / (catch_ratio * m.gas_m3_s + hardly_any_m3_s));
    out.spilled = leaving / dt_s * spilled_share;
    out.vented = leaving / dt_s - out.spilled;
    return out;
}

double puff_pressure_pa(const Params& p, double heat_w) {
    constexpr double swell = 2.0 / 7.0 / units::standard_pressure_pa; // (gamma - 1) / gamma / p
    constexpr double discharge = 0.6;
    constexpr double hot_density_kg_m3 = 0.5;
    const double speed = heat_w * swell / (discharge * p.cell_opening_m2);
    return 0.5 * hot_density_kg_m3 * speed * speed;
}

} // namespace lightoff::combustion
