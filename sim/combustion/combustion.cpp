// SPDX-License-Identifier: MIT
#include "combustion/combustion.hpp"
#include "combustion/burner_row.hpp"
#include "combustion/mixture.hpp"

namespace lightoff::combustion {
namespace {

constexpr double cold_air_density_kg_m3 = 1.2;

/// Dry air [mol/s] in a flow of moist air [kg/s].
double dry_air_mol_s(double moist_kg_s, double humidity_ratio) {
    return moist_kg_s / ((1.0 + humidity_ratio) * units::molar_mass_air_kg_mol);
}

/// How far air blown past the flames through a crack upsets them, 0..1; a half where jet = `half_kg_s`. By
/// the squares: through one and the same crack a jet's momentum grows with the square of its flow, so that
/// what the inducer draws in hardly stirs a flame and what the blower pushes in does.
double upset_by(double jet_kg_s, double half_kg_s) {
    const double jet = jet_kg_s * jet_kg_s;
    const double half = half_kg_s * half_kg_s;
    return jet / (jet + half);
}

/// Of one burner, or summed over the row; m3/s of gas.
struct RowFlows {
    double burnt_inside = 0.0;
    double puff_inside = 0.0; ///< gathered gas that burns inside, on top of the former
    double burnt_outside = 0.0;
    double co_inside = 0.0; ///< sum of burnt_inside x ppm air-free
    double vented = 0.0;
    double spilled = 0.0;
    double let_in = 0.0; ///< of the row alone

    void add(const RowFlows& more) {
        burnt_inside += more.burnt_inside;
        puff_inside += more.puff_inside;
        burnt_outside += more.burnt_outside;
        co_inside += more.co_inside;
        vented += more.vented;
        spilled += more.spilled;
    }
};

/// What one burner does in a step.
struct BurnerStep {
    RowFlows flows;
    double unburnt_m3 = 0.0; ///< left in its cell
    double puff_pa = 0.0;
    FlameLook look;
};

/// What is the same for every burner of the row.
struct Surroundings {
    FlammableRange range;
    double cell_air_m3_s = 0.0;
    double flame_upset = 0.0;
    double stale = 0.0; ///< share of flue gas in the combustion air
};

/// Whether a burner is in nothing different from the one before it: then so is what it does.
bool like_the_one_before(const Condition& c, const State& s, const Inputs& in, std::size_t i) {
    return i > 0 && in.gas_flow_m3_s[i] == in.gas_flow_m3_s[i - 1] && s.flame[i] == s.flame[i - 1] &&
           s.unburnt_m3[i] == s.unburnt_m3[i - 1] && c.primary_blockage[i] == c.primary_blockage[i - 1] &&
           c.misalignment[i] == c.misalignment[i - 1];
}

BurnerStep step_burner(const Params& p, const Condition& c, const Surroundings& around, const Mixture& m,
                       double misalignment, double flame, double unburnt_m3, double dt_s) {
    BurnerStep out;
    out.unburnt_m3 = unburnt_m3;
    const CellFlows cell = step_cell(p, around.range, m, flame, around.cell_air_m3_s, out.unburnt_m3, dt_s);
    out.flows.vented = cell.vented;
    out.flows.spilled = cell.spilled;

    double puff_out = 0.0;
    if (cell.burnt_from_pocket > 0.0) {
        out.puff_pa = puff_pressure_pa(p, cell.burnt_from_pocket * hhv_j_m3(p.fuel));
        constexpr double half_out_pa =
            2000.0; // teaching value: up to half of a puff comes out of the opening
        puff_out = 0.5 * out.puff_pa / (out.puff_pa + half_out_pa);
    }
    if (flame <= 0.0)
        return out;

    const double outside =
        std::min(1.0, rollout_share(m.air_ratio, p.rollout_air_ratio) + p.misaligned_rollout * misalignment);
    const double inside = cell.burnt_as_it_comes * (1.0 - outside);
    out.flows.burnt_inside = inside;
    out.flows.burnt_outside = cell.burnt_as_it_comes * outside + cell.burnt_from_pocket * puff_out;
    out.flows.puff_inside = cell.burnt_from_pocket * (1.0 - puff_out);
    if (inside > 0.0) {
        const double air_ratio_inside = outside > 0.0 ? m.air_ratio / (1.0 - outside) : m.air_ratio;
        out.flows.co_inside =
            inside * co_air_free_ppm(p.co, {air_ratio_inside, misalignment, m.primary_deficit,
                                            c.exchanger_soot, around.flame_upset, around.stale});
    }
    out.look = flame_look(p, c, m, flame, misalignment, around.flame_upset);
    return out;
}

/// True where nothing changes by itself: full flame on a mixture that holds it, or neither flame nor gas.
bool is_settled(const Mixture& m, double flame) {
    return (flame == 1.0 && m.holds) || (flame == 0.0 && m.gas_m3_s <= 0.0);
}

/// Whether nothing burns, flows or has gathered in any cell, so that nothing will in this step.
bool is_empty(const State& s, const Inputs& in, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i)
        if (in.gas_flow_m3_s[i] != 0.0 || s.flame[i] != 0.0 || s.unburnt_m3[i] != 0.0)
            return false;
    return true;
}

void analyse(const Fuel& fuel, Outputs& out, double co_mol_s, bool burning) {
    const double dry_mol_s = dry(out.flue);
    if (dry_mol_s <= 0.0) {
        out.o2_dry = oxygen_in_air;
        return;
    }
    const double per_dry = 1.0 / dry_mol_s;
    out.o2_dry = out.flue.o2 * per_dry;
    out.co2_dry = out.flue.co2 * per_dry;
    out.co_dry = co_mol_s * per_dry;
    if (!burning)
        return;
    constexpr double nearly_air = 0.2085; // beyond it the correction says nothing
    if (out.o2_dry < nearly_air) {
        out.co_air_free = co_air_free(out.co_dry, out.o2_dry);
        out.excess_air = std::min(99.0, excess_air_from_o2(fuel, out.o2_dry));
    } else {
        out.excess_air = 99.0;
    }
}

void fill_flue(const Params& p, const Inputs& in, const RowFlows& row, Outputs& out) {
    const double fuel_mol_s = row.burnt_inside / standard_molar_volume_m3_mol;
    const double fresh_kg_s = std::max(0.0, in.combustion_air_kg_s) * (1.0 - in.recirculated_fraction);
    // A burning pocket uses air that came before and gathered with it.
    const double air_mol_s = std::max(dry_air_mol_s(fresh_kg_s + in.crack_jet_kg_s, in.humidity_ratio),
                                      fuel_mol_s * stoichiometric_air(p.fuel));
    out.flue = burn(p.fuel, fuel_mol_s, air_mol_s, in.humidity_ratio);
    out.flue.o2 = std::max(0.0, out.flue.o2); // rounding, where all oxygen is used
    out.flue_mass_flow_kg_s = mass(out.flue);
    if (in.recirculated_fraction > 0.0 && out.flue_mass_flow_kg_s > 0.0) {
        // What goes round has the composition of what leaves: the same gas, more of it.
        const double round_kg_s = std::max(0.0, in.combustion_air_kg_s) * in.recirculated_fraction;
        const double more = 1.0 + round_kg_s / out.flue_mass_flow_kg_s;
        out.flue = {out.flue.co2 * more, out.flue.h2o * more, out.flue.n2 * more, out.flue.o2 * more};
        out.flue_mass_flow_kg_s *= more;
    }
    out.water_vapour_mass_flow_kg_s = out.flue.h2o * molar_mass_h2o;
    out.flue_heat_capacity = heat_capacity(out.flue);
    out.latent_w = fuel_mol_s * p.fuel.water * latent_heat_water_j_mol;

    const double co_mol_s =
        row.co_inside * 1.0e-6 / standard_molar_volume_m3_mol * stoichiometric_dry_flue(p.fuel);
    analyse(p.fuel, out, co_mol_s, row.burnt_inside > 0.0);
}

/// Mixes, lights and burns in every cell; how the flames look goes into `out`.
RowFlows step_row(const Params& p, const Condition& c, State& s, const Inputs& in, double dt_s,
                  Outputs& out) {
    const auto count = static_cast<std::size_t>(p.burner_count);
    const double stoichiometric = stoichiometric_air(p.fuel);
    const FlammableRange range = flammable_range(p, stoichiometric, in.recirculated_fraction);
    const double cell_air_kg_s = std::max(0.0, in.combustion_air_kg_s) / static_cast<double>(p.burner_count);
    const double cell_fresh_m3_s =
        dry_air_mol_s(cell_air_kg_s * (1.0 - in.recirculated_fraction), in.humidity_ratio) *
        standard_molar_volume_m3_mol;

    RowMixtures mixtures;
    bool settled = true;
    for (std::size_t i = 0; i < count; ++i) {
        const double gas = in.gas_flow_m3_s[i];
        if (i > 0 && gas == in.gas_flow_m3_s[i - 1] && c.primary_blockage[i] == c.primary_blockage[i - 1]) {
            mixtures.set_like_the_one_before(i);
        } else {
            const double air_ratio = gas > 0.0 ? cell_fresh_m3_s / (gas * stoichiometric) : 0.0;
            mixtures.set(i, mixture(p, range, gas, air_ratio, c.primary_blockage[i]));
        }
        settled = settled && is_settled(mixtures[i], s.flame[i]);
    }
    if (!settled)
        spread_flames(p, c, s, in, range, mixtures, dt_s);

    const Surroundings around{range, cell_air_kg_s / cold_air_density_kg_m3, out.flame_upset,
                              in.recirculated_fraction};
    RowFlows row;
    BurnerStep burner;
    PerBurner unburnt_m3 = s.unburnt_m3;
    for (std::size_t i = 0; i < count; ++i) {
        if (!like_the_one_before(c, s, in, i))
            burner =
                step_burner(p, c, around, mixtures[i], c.misalignment[i], s.flame[i], s.unburnt_m3[i], dt_s);
        row.add(burner.flows);
        row.let_in += in.gas_flow_m3_s[i];
        unburnt_m3[i] = burner.unburnt_m3;
        out.ignition_pressure_pa = std::max(out.ignition_pressure_pa, burner.puff_pa);
        out.burner[i] = burner.look;
    }
    s.unburnt_m3 = unburnt_m3;
    return row;
}

} // namespace

Outputs step(const Params& p, const Condition& c, State& s, const Inputs& in, double dt_s) {
    const auto count = static_cast<std::size_t>(p.burner_count);
    Outputs out;
    if (in.crack_jet_kg_s > 0.0)
        out.flame_upset = upset_by(in.crack_jet_kg_s, p.crack_jet_ratio * in.combustion_air_kg_s);
    RowFlows row;
    if (!is_empty(s, in, count))
        row = step_row(p, c, s, in, dt_s, out);
    row.burnt_inside += row.puff_inside;
    const double hhv = hhv_j_m3(p.fuel);

    const FlameLook& at_rod = out.burner[count - 1];
    out.rod_flame_strength = at_rod.strength * (1.0 - 0.3 * at_rod.softness);
    out.rod_flame_coverage = std::clamp((at_rod.length - 0.2) / 0.8, 0.0, 1.0) * (1.0 - at_rod.lift) *
                             (1.0 - 0.5 * c.misalignment[count - 1]);

    out.heat_released_hhv_w = row.burnt_inside * hhv;
    out.rollout_heat_hhv_w = row.burnt_outside * hhv;
    out.vented_gas_m3_s = row.vented;
    out.spilled_gas_m3_s = row.spilled;
    out.spilled_co_m3_s = row.burnt_outside * stoichiometric_dry_flue(p.fuel) * p.co.rollout_ppm * 1.0e-6;
    constexpr double half_loud_pa = 500.0; // teaching value
    out.ignition_loudness = out.ignition_pressure_pa / (out.ignition_pressure_pa + half_loud_pa);
    fill_flue(p, in, row, out);

    s.peak_ignition_pressure_pa = std::max(s.peak_ignition_pressure_pa, out.ignition_pressure_pa);
    s.fuel_in_m3 += row.let_in * dt_s;
    s.fuel_burnt_m3 += (row.burnt_inside + row.burnt_outside) * dt_s;
    s.fuel_vented_m3 += row.vented * dt_s;
    s.fuel_spilled_m3 += row.spilled * dt_s;
    return out;
}

bool needs_substeps(const Params& p, const State& s, const Inputs& in) {
    const auto count = static_cast<std::size_t>(p.burner_count);
    bool any_flame = in.pilot_flame > 0.0 || in.igniter_surface_k >= p.igniter_lights_k;
    for (std::size_t i = 0; i < count; ++i)
        any_flame = any_flame || s.flame[i] > 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const bool gas = in.gas_flow_m3_s[i] > 0.0;
        const bool lit = s.flame[i] > 0.0;
        if (lit && s.flame[i] < 1.0)
            return true; // growing or dying
        if (gas != lit && any_flame)
            return true; // about to light, or just cut off
        if (lit && s.unburnt_m3[i] > 0.0)
            return true; // a pocket burns
    }
    return false;
}

} // namespace lightoff::combustion
