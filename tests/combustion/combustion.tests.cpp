// SPDX-License-Identifier: MIT
#include "combustion/combustion.hpp"
#include "combustion/mixture.hpp"
#include "reference_burners.hpp"
#include "support/csv.hpp"
#include "units/fields.hpp"
#include <catch2/catch.hpp>
#include <type_traits>

using namespace lightoff;
using namespace lightoff::combustion;
using test::BurnerBench;

namespace {

template <class T>
std::size_t visited_bytes() {
    T value{};
    std::size_t bytes = 0;
    units::for_each_value(value, [&](const auto& v) { bytes += sizeof v; });
    return bytes;
}

double gathered(const State& s) {
    double sum = 0.0;
    for (double v : s.unburnt_m3)
        sum += v;
    return sum;
}

double account_error(const State& s) {
    return s.fuel_in_m3 - s.fuel_burnt_m3 - s.fuel_vented_m3 - s.fuel_spilled_m3 - gathered(s);
}

/// Lit at the reference air, then settled with the air at `factor` of it.
BurnerBench settled_at(double factor) {
    BurnerBench b;
    b.run(4.0);
    b.inputs.igniter_surface_k = 300.0;
    b.inputs.combustion_air_kg_s *= factor;
    b.run(30.0, 0.05);
    return b;
}

} // namespace

TEST_CASE("field lists name every member") {
    CHECK(visited_bytes<State>() == sizeof(State));
    CHECK(visited_bytes<Condition>() == sizeof(Condition));
    CHECK(visited_bytes<Outputs>() == sizeof(Outputs));
    CHECK(std::is_trivially_copyable_v<State>);
}

// Settled targets of the reference furnace (common practice, no source): O2 7.5 +- 0.5, CO2 about 7.6, CO <
// 50 ppm.
TEST_CASE("reference run") {
    const BurnerBench b = settled_at(1.0);
    const Outputs& o = b.outputs;
    CHECK(100.0 * o.o2_dry == Approx(7.5).margin(0.02));
    CHECK(100.0 * o.co2_dry == Approx(7.6).margin(0.1));
    CHECK(o.excess_air == Approx(0.50).margin(0.01));
    CHECK(1e6 * o.co_air_free < 50.0);
    CHECK(1e6 * o.co_air_free > 0.0);
    CHECK(units::w_to_btuh(o.heat_released_hhv_w) == Approx(79960.0).epsilon(1e-6));
    CHECK(o.rollout_heat_hhv_w == 0.0);
    CHECK(o.vented_gas_m3_s == 0.0);
    CHECK(o.spilled_gas_m3_s == 0.0);
    CHECK(o.rod_flame_coverage == Approx(1.0));
    CHECK(o.rod_flame_strength == Approx(1.0));
    CHECK(o.burner[0].length == Approx(1.0));
    CHECK(o.burner[0].yellow == 0.0);
}

TEST_CASE("mass of air and gas comes out as flue gas") {
    const BurnerBench b = settled_at(1.0);
    const double fuel_kg_s =
        4.0 * b.inputs.gas_flow_m3_s[0] / standard_molar_volume_m3_mol * b.params.fuel.molar_mass_kg_mol;
    CHECK(b.outputs.flue_mass_flow_kg_s == Approx(b.inputs.combustion_air_kg_s + fuel_kg_s).epsilon(1e-5));
    CHECK(b.outputs.water_vapour_mass_flow_kg_s < 0.2 * b.outputs.flue_mass_flow_kg_s);
    CHECK(b.outputs.latent_w / b.outputs.heat_released_hhv_w ==
          Approx(latent_share(b.params.fuel)).epsilon(1e-9));
}

// The dynamic room against the pure functions: heat carried off at 315 F net is the stack loss at the run's
// own O2.
TEST_CASE("heat room's terms agree with the stack-loss sum") {
    const BurnerBench b = settled_at(1.0);
    const double room = units::fahrenheit_to_k(70.0);
    const double flue = room + units::fahrenheit_difference_to_k(315.0);
    const double carried = sensible_heat(b.outputs.flue_heat_capacity, room, flue) + b.outputs.latent_w;
    const FlueLoss loss = flue_loss(b.params.fuel, b.outputs.excess_air, flue, room, b.inputs.humidity_ratio);
    CHECK(1.0 - carried / b.outputs.heat_released_hhv_w == Approx(loss.efficiency()).margin(1e-6));
}

// Common practice, no source: flame within 1-3 s of gas, and it runs along the row burner by burner.
TEST_CASE("clean light-off") {
    BurnerBench b;
    const double lit = b.lighting_time(5.0);
    CHECK(lit > 1.0);
    CHECK(lit < 3.0);
    b.run(2.0);
    for (std::size_t i = 0; i < 4; ++i)
        CHECK(b.state.flame[i] == 1.0);
    CHECK(b.state.flame[4] == 0.0);
    CHECK(b.state.peak_ignition_pressure_pa < 300.0);
    CHECK(std::abs(account_error(b.state)) < 1e-9 * b.state.fuel_in_m3);
}

// Stoichiometry: no flue gas holds more CO2 than that of the fuel burnt in just its air.
TEST_CASE("gas that gathered burns with the air that gathered with it") {
    BurnerBench b;
    b.inputs.igniter_surface_k = 300.0;
    b.run(1.0);
    b.inputs.igniter_surface_k = 1500.0;
    double most_co2 = 0.0;
    for (int i = 0; i < 300; ++i) {
        b.step(0.01);
        most_co2 = std::max(most_co2, b.outputs.co2_dry);
        CHECK(b.outputs.co2_dry <= ultimate_co2(b.params.fuel) * (1.0 + 1e-12));
        CHECK(b.outputs.o2_dry >= 0.0);
    }
    CHECK(most_co2 > 0.99 * ultimate_co2(b.params.fuel)); // the pocket did want more than passes by
}

TEST_CASE("burners light in order from the igniter") {
    BurnerBench b;
    std::array<double, 4> at{};
    while (b.time_s < 5.0) {
        b.step(0.01);
        for (std::size_t i = 0; i < 4; ++i)
            if (at[i] == 0.0 && b.state.flame[i] > 0.0)
                at[i] = b.time_s;
    }
    for (std::size_t i = 1; i < 4; ++i) {
        CHECK(at[i] - at[i - 1] > 0.1);
        CHECK(at[i] - at[i - 1] < 0.4);
    }
}

TEST_CASE("igniter must be hot enough, 980 C") {
    BurnerBench cold;
    cold.inputs.igniter_surface_k = units::celsius_to_k(979.0);
    CHECK(cold.lighting_time(7.0) < 0.0);
    BurnerBench barely;
    barely.inputs.igniter_surface_k = units::celsius_to_k(985.0);
    const double late = barely.lighting_time(7.0);
    CHECK(late > 3.0);
    barely.run(1.0);
    BurnerBench sound;
    sound.lighting_time(7.0);
    sound.run(1.0);
    CHECK(barely.state.peak_ignition_pressure_pa > 2.0 * sound.state.peak_ignition_pressure_pa);
}

TEST_CASE("a pilot lights the first burner as well") {
    BurnerBench b;
    b.inputs.igniter_surface_k = 300.0;
    CHECK(b.lighting_time(5.0) < 0.0);
    b.inputs.pilot_flame = 1.0;
    CHECK(b.lighting_time(10.0) > 0.0);
}

TEST_CASE("the longer gas gathers before it lights, the louder and the more of it comes out") {
    double last_puff = 0.0;
    double last_rollout = 0.0;
    for (double delay : {0.0, 1.0, 2.0, 4.0}) {
        BurnerBench b;
        b.inputs.igniter_surface_k = 300.0;
        b.run(delay);
        b.inputs.igniter_surface_k = 1500.0;
        b.run(5.0);
        CHECK(b.hottest_puff_pa > last_puff);
        CHECK(b.rollout_j > last_rollout);
        CHECK(b.hottest_puff_pa == b.state.peak_ignition_pressure_pa);
        last_puff = b.hottest_puff_pa;
        last_rollout = b.rollout_j;
    }
}

TEST_CASE("dirty crossover: late, loud, and past a 7 s trial when it is bad") {
    BurnerBench clean;
    BurnerBench dirty;
    dirty.condition.crossover_blockage.fill(0.5);
    BurnerBench blocked;
    blocked.condition.crossover_blockage.fill(0.9);
    const double t_clean = clean.lighting_time(7.0);
    const double t_dirty = dirty.lighting_time(7.0);
    CHECK(t_dirty > t_clean + 1.0);
    CHECK(blocked.lighting_time(7.0) < 0.0);
    dirty.run(1.0);
    clean.run(1.0);
    CHECK(dirty.hottest_puff_pa > 2.0 * clean.hottest_puff_pa);
    CHECK(blocked.outputs.vented_gas_m3_s > 0.0); // unlit burners send raw gas up the vent
}

TEST_CASE("prepurge and interpurge clear gathered gas") {
    BurnerBench b;
    b.inputs.igniter_surface_k = 300.0;
    b.run(6.0);
    const double before = gathered(b.state);
    CHECK(before > 0.0005);
    b.gas_factor = 0.0;
    b.run(15.0, 0.05);
    CHECK(gathered(b.state) < 0.01 * before);
    CHECK(std::abs(account_error(b.state)) < 1e-9 * b.state.fuel_in_m3);
}

TEST_CASE("gas that stops takes the flame with it at once") {
    BurnerBench b = settled_at(1.0);
    b.gas_factor = 0.0;
    b.run(0.5);
    for (double flame : b.state.flame)
        CHECK(flame == 0.0);
    CHECK(b.outputs.heat_released_hhv_w == 0.0);
    CHECK(100.0 * b.outputs.o2_dry == Approx(20.95));
    CHECK(b.outputs.co_dry == 0.0);
}

TEST_CASE("leaking valve with no draft: gas gathers and drifts into the room") {
    BurnerBench b;
    b.inputs.igniter_surface_k = 300.0;
    b.inputs.combustion_air_kg_s = 0.0;
    b.gas_factor = 0.02;
    b.run(600.0, 0.05);
    CHECK(gathered(b.state) / (4.0 * b.params.cell_volume_m3) > 0.05);
    CHECK(b.state.fuel_spilled_m3 > 0.0);
    CHECK(b.state.fuel_vented_m3 == 0.0);
    CHECK(std::abs(account_error(b.state)) < 1e-9 * b.state.fuel_in_m3);
}

// Common practice, no source: less draft makes O2 fall, CO and rollout rise, flame long, yellow and lazy.
TEST_CASE("less and less combustion air") {
    double o2 = 1.0;
    double rollout = -1.0;
    double co = 0.0;
    for (double factor : {1.0, 0.9, 0.8, 0.75, 0.7, 0.66}) {
        const Outputs o = settled_at(factor).outputs;
        CHECK(o.o2_dry < o2);
        CHECK(o.rollout_heat_hhv_w >= rollout);
        CHECK(o.co_air_free >= 0.999 * co); // the trade's 20.9 against our 20.95 % moves a flat CO a little
        CHECK(o.heat_released_hhv_w + o.rollout_heat_hhv_w ==
              Approx(units::btuh_to_w(79960.0)).epsilon(1e-9));
        o2 = o.o2_dry;
        rollout = o.rollout_heat_hhv_w;
        co = o.co_air_free;
    }
    CHECK(1e6 * co > 400.0);
    const Outputs blocked = settled_at(0.4).outputs;
    CHECK(blocked.o2_dry < 1e-9);
    CHECK(blocked.rollout_heat_hhv_w > 0.3 * blocked.heat_released_hhv_w);
    CHECK(blocked.spilled_co_m3_s > 0.0);
    CHECK(blocked.burner[0].yellow > 0.5);
    CHECK(blocked.burner[0].softness > 0.5);
    CHECK(blocked.burner[0].length > 1.2);
    CHECK(settled_at(0.1).outputs.heat_released_hhv_w == 0.0); // smothered
    CHECK(settled_at(0.1).outputs.spilled_gas_m3_s > 0.0);
}

// Sources of the limits: ANSI Z21.47-1993 and ICM magazine 2015 (rules_and_constants.csv). The curve itself
// is a teaching curve; this only holds it to the right side of the limits.
TEST_CASE("CO against its limits") {
    const double limit = test::reference_value("rules_and_constants.csv", "CO air-free limit, flue");
    const double good_practice =
        test::reference_value("rules_and_constants.csv", "good-practice CO air-free");
    CHECK(1e6 * settled_at(1.0).outputs.co_air_free < good_practice / 2.0);
    CHECK(1e6 * settled_at(0.85).outputs.co_air_free < good_practice); // O2 about 5 %
    const Outputs starved = settled_at(0.72).outputs;
    CHECK(100.0 * starved.o2_dry == Approx(2.0).margin(0.3));
    CHECK(1e6 * starved.co_air_free > limit);
}

TEST_CASE("CO is a U against excess air") {
    const auto co = [](double factor) { return settled_at(factor).outputs.co_air_free; };
    CHECK(co(0.7) > co(0.85));
    CHECK(co(1.3) < 50e-6);
    CHECK(co(2.0) > co(1.3));
}

// Trade sign (common practice): overfire by a manifold of 4.5 in. makes O2 fall and input rise by sqrt(4.5
// / 3.5).
TEST_CASE("overfire and underfire at the same draft") {
    BurnerBench over;
    over.gas_factor = std::sqrt(4.5 / 3.5);
    over.run(20.0);
    BurnerBench under;
    under.gas_factor = std::sqrt(2.5 / 3.5);
    under.run(20.0);
    const Outputs reference = settled_at(1.0).outputs;
    CHECK(over.outputs.o2_dry < reference.o2_dry);
    CHECK(under.outputs.o2_dry > reference.o2_dry);
    CHECK(1.0 + over.outputs.excess_air == Approx((1.0 + reference.excess_air) / std::sqrt(4.5 / 3.5)));
    CHECK(1.0 + under.outputs.excess_air == Approx((1.0 + reference.excess_air) / std::sqrt(2.5 / 3.5)));
    CHECK(over.outputs.burner[0].length > 1.0);
    CHECK(under.outputs.burner[0].length < 1.0);
    CHECK(under.outputs.rod_flame_coverage > 0.7); // it still runs
    CHECK(under.outputs.rod_flame_coverage < 1.0);
}

// Trade sign (common practice): cracked exchanger, blower starts: O2 steps up, flame disturbed.
TEST_CASE("crack jet") {
    BurnerBench b = settled_at(1.0);
    const Outputs before = b.outputs;
    b.inputs.crack_jet_kg_s = 0.0015;
    b.run(0.05, 0.05);
    CHECK(b.outputs.o2_dry > before.o2_dry + 0.01);
    CHECK(b.outputs.flame_upset > 0.3);
    CHECK(b.outputs.burner[1].lift > 0.2);
    CHECK(b.outputs.rod_flame_strength < 0.85);
    CHECK(b.outputs.co_air_free > before.co_air_free);
    CHECK(b.outputs.heat_released_hhv_w == before.heat_released_hhv_w);
}

TEST_CASE("lint, impingement, soot and stale air raise CO and yellow the flame") {
    const double sound = settled_at(1.0).outputs.co_air_free;
    const auto with = [](auto change) {
        BurnerBench b;
        change(b);
        b.run(20.0);
        return b.outputs;
    };
    const Outputs lint = with([](BurnerBench& b) { b.condition.primary_blockage.fill(0.8); });
    CHECK(lint.co_air_free > sound);
    CHECK(lint.burner[0].yellow > 0.5);
    CHECK(lint.burner[0].length > 1.2);
    const Outputs bent = with([](BurnerBench& b) { b.condition.misalignment[1] = 0.7; });
    CHECK(bent.co_air_free > sound);
    CHECK(bent.rollout_heat_hhv_w > 0.0);
    CHECK(bent.burner[1].yellow > bent.burner[0].yellow);
    const Outputs soot = with([](BurnerBench& b) { b.condition.exchanger_soot = 0.8; });
    CHECK(soot.co_air_free > sound);
    const Outputs stale = with([](BurnerBench& b) { b.inputs.recirculated_fraction = 0.1; });
    CHECK(stale.co_air_free > sound);
    CHECK(stale.o2_dry < 0.075);
    const Outputs dust = with([](BurnerBench& b) { b.condition.air_dust = 1.0; });
    CHECK(dust.burner[0].yellow > 0.2);
    CHECK(dust.co_air_free == sound);
}

TEST_CASE("combustion air that is all flue gas puts the flame out") {
    BurnerBench b = settled_at(1.0);
    b.inputs.recirculated_fraction = 0.5;
    b.run(2.0);
    CHECK(b.outputs.heat_released_hhv_w == 0.0);
}

TEST_CASE("one burner with a plugged orifice stays dark and the others burn") {
    BurnerBench b;
    b.run(5.0);
    b.inputs.gas_flow_m3_s[2] = 0.0;
    for (int i = 0; i < 100; ++i)
        b.outputs = step(b.params, b.condition, b.state, b.inputs, 0.05);
    CHECK(b.state.flame[2] == 0.0);
    CHECK(b.state.flame[3] == 1.0);
    CHECK(b.outputs.heat_released_hhv_w == Approx(0.75 * units::btuh_to_w(79960.0)).epsilon(1e-6));
}

// Fuel is conserved to 1e-9 through a rough life: late light-offs, starved draft, cuts, leaks, at both step
// sizes.
TEST_CASE("fuel account closes") {
    for (double dt : {0.05, 0.01}) {
        BurnerBench b;
        b.condition.crossover_blockage = {0.9, 0.3, 0.95, 0.0};
        b.condition.misalignment[2] = 0.5;
        for (int cycle = 0; cycle < 50; ++cycle) {
            b.inputs.igniter_surface_k = cycle % 3 == 0 ? 300.0 : 1400.0;
            b.inputs.combustion_air_kg_s = 0.0005 + 0.0004 * (cycle % 31);
            b.inputs.recirculated_fraction = 0.02 * (cycle % 20);
            b.gas_factor = (cycle % 5) * 0.35;
            b.run(3.0, dt);
        }
        CHECK(b.state.fuel_in_m3 > 0.01);
        CHECK(b.state.fuel_burnt_m3 > 0.0);
        CHECK(b.state.fuel_vented_m3 > 0.0);
        CHECK(b.state.fuel_spilled_m3 > 0.0);
        CHECK(std::abs(account_error(b.state)) < 1e-9 * b.state.fuel_in_m3);
        for (double v : b.state.unburnt_m3)
            CHECK(v >= 0.0);
    }
}

// House rule: events within 0.1 s, settled readings within 0.5 % at half the tick.
TEST_CASE("step size hardly matters") {
    const auto lighting = [](double tick) {
        BurnerBench b;
        while (b.time_s < 7.0 && b.state.flame[3] < 0.5)
            b.run_ticks(tick, tick);
        return b.time_s;
    };
    CHECK(lighting(0.05) == Approx(lighting(0.025)).margin(0.1));
    CHECK(lighting(0.05) == Approx(lighting(0.01)).margin(0.1));
    BurnerBench coarse;
    coarse.run_ticks(20.0, 0.05);
    BurnerBench fine;
    fine.run_ticks(20.0, 0.025);
    CHECK(coarse.outputs.o2_dry == Approx(fine.outputs.o2_dry).epsilon(1e-9));
    CHECK(coarse.hottest_puff_pa == Approx(fine.hottest_puff_pa).epsilon(0.10));
}

TEST_CASE("substeps are asked for only while flames change") {
    BurnerBench b;
    b.inputs.igniter_surface_k = 300.0;
    CHECK_FALSE(needs_substeps(b.params, b.state, b.inputs));
    b.inputs.igniter_surface_k = 1500.0;
    b.step(0.01);
    CHECK(needs_substeps(b.params, b.state, b.inputs));
    b.run(5.0);
    CHECK_FALSE(needs_substeps(b.params, b.state, b.inputs));
    b.inputs.gas_flow_m3_s.fill(0.0);
    CHECK(needs_substeps(b.params, b.state, b.inputs));
}

// Source: fuel_properties.csv: natural gas 5-15 %, propane 2.15-9.5 %.
TEST_CASE("flammable range") {
    for (const Fuel& fuel : {natural_gas(), propane()}) {
        Params p;
        p.fuel = fuel;
        const double air = stoichiometric_air(fuel);
        const FlammableRange fresh = flammable_range(p, air, 0.0);
        CHECK(1.0 / (1.0 + air * fresh.lean) == Approx(fuel.lower_limit));
        CHECK(1.0 / (1.0 + air * fresh.rich) == Approx(fuel.upper_limit));
        const FlammableRange stale = flammable_range(p, air, 0.2);
        CHECK(stale.lean < fresh.lean);
        CHECK(stale.rich > fresh.rich);
        CHECK_FALSE(flammable_range(p, air, 0.4).any);
    }
}

TEST_CASE("propane burns in the same room") {
    BurnerBench b;
    b.params.fuel = propane();
    b.params.rated_burner_flow_m3_s = units::btuh_to_w(79960.0) / hhv_j_m3(b.params.fuel) / 4.0;
    CHECK(b.lighting_time(5.0) > 0.0);
    b.run(10.0);
    CHECK(units::w_to_btuh(b.outputs.heat_released_hhv_w) == Approx(79960.0).epsilon(1e-6));
    CHECK(b.outputs.co2_dry > 0.085);
}
