// SPDX-License-Identifier: MIT
#include "rig.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace lightoff;
using test::DraftRig;

// How the readings move when a part goes bad: common practice, no source.

namespace {

/// Gas of a restricted furnace is hotter: less excess air makes a hotter flame, and the share of the flame's
/// heat that leaves with the gas stays about the same. A stand-in for the heat room: temperature over room
/// goes with 1 / sqrt(flue flow), anchored at the healthy furnace and no higher than with just enough air.
void run_hot(DraftRig& rig, double seconds) {
    const draft::Inputs healthy = test::hot_inputs();
    for (int i = 0; i < static_cast<int>(seconds / 0.05); ++i) {
        rig.inputs = healthy;
        const double flue = std::clamp(rig.out.flue_kg_s, 0.0076, 0.0135);
        const double hotter = std::sqrt(0.01115 / flue);
        rig.inputs.exchanger_gas_k = healthy.room_k + hotter * (healthy.exchanger_gas_k - healthy.room_k);
        rig.inputs.collector_gas_k = healthy.room_k + hotter * (healthy.collector_gas_k - healthy.room_k);
        rig.inputs.vent_gas_k = healthy.room_k + hotter * (healthy.vent_gas_k - healthy.room_k);
        rig.step(0.05);
    }
}

DraftRig hot_rig(const draft::Condition& condition = {}) {
    DraftRig rig;
    rig.condition = condition;
    rig.run(20.0);
    run_hot(rig, 40.0);
    return rig;
}

/// Blockage of the vent that leaves a cold suction of `inwc`, by bisection.
double vent_blockage_for(double inwc) {
    double low = 0.0;
    double high = 1.0;
    for (int i = 0; i < 30; ++i) {
        DraftRig rig;
        rig.condition.path.vent_blockage = 0.5 * (low + high);
        rig.run(20.0);
        (rig.port_inwc() > inwc ? low : high) = 0.5 * (low + high);
    }
    return low;
}

} // namespace

TEST_CASE("vent restricted: suction down, air down") {
    const DraftRig sound = hot_rig();
    draft::Condition condition;
    condition.path.vent_blockage = 0.75;
    const DraftRig blocked = hot_rig(condition);
    CHECK(blocked.out.port_suction_pa < 0.95 * sound.out.port_suction_pa);
    CHECK(blocked.out.combustion_air_kg_s < 0.97 * sound.out.combustion_air_kg_s);
    condition.path.vent_blockage = 0.0;
    condition.path.vent_extra_length_m = 30.0;
    const DraftRig too_long = hot_rig(condition);
    CHECK(too_long.out.port_suction_pa < sound.out.port_suction_pa);
    CHECK(too_long.out.combustion_air_kg_s < sound.out.combustion_air_kg_s);
}

TEST_CASE("a vent fault that leaves 0.60 to 0.70 in. w.c. cold starts, and drops out hot") {
    for (const double cold_inwc : {0.615, 0.63, 0.65, 0.67, 0.69, 0.70}) {
        INFO("cold suction " << cold_inwc);
        DraftRig rig;
        rig.condition.path.vent_blockage = vent_blockage_for(cold_inwc);
        rig.wait_for_switch(true, 30.0);
        rig.run(20.0);
        CHECK(rig.port_inwc() == Approx(cold_inwc).margin(0.002));
        CHECK(rig.out.switch_closed == 1);
        run_hot(rig, 60.0);
        CHECK(rig.out.switch_closed == 0);
    }
}

TEST_CASE("vent blocked in full: never proves, and the gas that is let in comes back into the room") {
    DraftRig rig;
    rig.condition.path.vent_blockage = 1.0;
    rig.run(30.0);
    CHECK(std::abs(rig.port_inwc()) < 0.02);
    CHECK(rig.out.switch_closed == 0);
    rig.inputs = test::hot_inputs();
    rig.run(10.0);
    CHECK(rig.out.spillage_kg_s > 0.5 * rig.inputs.gas_kg_s);
    CHECK(rig.out.combustion_air_kg_s == 0.0);
}

TEST_CASE("exchanger restricted: suction UP, air down, and the switch does not catch it") {
    double suction_pa = hot_rig().out.port_suction_pa;
    double air_kg_s = hot_rig().out.combustion_air_kg_s;
    for (const double blockage : {0.2, 0.4, 0.6, 0.8}) {
        draft::Condition condition;
        condition.path.exchanger_blockage = blockage;
        const DraftRig rig = hot_rig(condition);
        CHECK(rig.out.port_suction_pa > suction_pa);
        CHECK(rig.out.combustion_air_kg_s < air_kg_s);
        CHECK(rig.out.switch_closed == 1);
        suction_pa = rig.out.port_suction_pa;
        air_kg_s = rig.out.combustion_air_kg_s;
    }
}

TEST_CASE("burner openings blocked: the same as the exchanger") {
    const DraftRig sound = hot_rig();
    draft::Condition condition;
    condition.path.burner_blockage = 0.75;
    const DraftRig blocked = hot_rig(condition);
    CHECK(blocked.out.port_suction_pa > sound.out.port_suction_pa);
    CHECK(blocked.out.combustion_air_kg_s < sound.out.combustion_air_kg_s);
}

TEST_CASE("cracked exchanger, blower starts: total air UP, air at the burners and suction down a little") {
    draft::Condition condition;
    condition.path.crack_area_m2 = 1e-4; // a crack of 1 cm2
    DraftRig rig = hot_rig(condition);
    const draft::Outputs before = rig.out;
    rig.inputs.blower_pressure_pa = 110.0; // 0.44 in. w.c. around the exchanger
    rig.run(5.0);
    const draft::Outputs after = rig.out;
    CHECK(after.leak_air_kg_s > 2.0 * before.leak_air_kg_s);
    CHECK(after.combustion_air_kg_s < 0.97 * before.combustion_air_kg_s);
    CHECK(after.port_suction_pa < before.port_suction_pa);
    CHECK(after.port_suction_pa > 0.95 * before.port_suction_pa);
    // The flue carries more air for its fuel, so O2 rises.
    CHECK(after.combustion_air_kg_s + after.leak_air_kg_s >
          before.combustion_air_kg_s + before.leak_air_kg_s);
    // The leak balances the drop across the crack (Bernoulli, Cd 0.6).
    const double density = draft::air_density_kg_m3(rig.inputs.barometric_pa, rig.inputs.room_k);
    const double burner_end_pa =
        0.5 * std::pow(after.combustion_air_kg_s, 2) / density *
        (std::pow(rig.params.path.door_area_m2, -2) + std::pow(rig.params.path.burner_area_m2, -2));
    CHECK(after.leak_air_kg_s ==
          Approx(0.6 * 1e-4 * std::sqrt(2.0 * density * (110.0 + burner_end_pa))).epsilon(1e-6));
}

TEST_CASE("a sound exchanger does not feel the blower") {
    DraftRig rig = hot_rig();
    const draft::Outputs before = rig.out;
    rig.inputs.blower_pressure_pa = 110.0;
    rig.run(5.0);
    CHECK(rig.out.combustion_air_kg_s == Approx(before.combustion_air_kg_s).epsilon(1e-6));
}

TEST_CASE("a slow inducer: suction down, switch late or never") {
    DraftRig sound;
    DraftRig weak;
    weak.motor.strength = 0.7;
    const double sound_s = sound.wait_for_switch(true, 60.0);
    CHECK(weak.wait_for_switch(true, 60.0) > sound_s + 1.0);
    sound.run(20.0);
    weak.run(20.0);
    CHECK(weak.out.port_suction_pa < sound.out.port_suction_pa);

    DraftRig dragging;
    dragging.condition.inducer.bearing_drag_added_nm = 0.045;
    dragging.run(60.0);
    CHECK(dragging.rpm() < sound.rpm() - 200.0);
    CHECK(dragging.out.port_suction_pa < 0.9 * sound.out.port_suction_pa);
}

TEST_CASE("a corroded wheel: suction down, motor faster") {
    DraftRig sound;
    DraftRig eaten;
    eaten.condition.inducer.wheel_effectiveness = 0.6;
    sound.run(20.0);
    eaten.run(20.0);
    CHECK(eaten.out.port_suction_pa < 0.8 * sound.out.port_suction_pa);
    CHECK(eaten.out.inducer_speed_rad_s > sound.out.inducer_speed_rad_s);
}

TEST_CASE("wind on an exposed cap lowers suction and air, a gust can drop a marginal furnace") {
    DraftRig rig = hot_rig();
    const draft::Outputs calm = rig.out;
    rig.condition.path.wind_exposure = 1.0;
    rig.inputs.wind_pa = 40.0; // 8 m/s
    rig.run(10.0);
    CHECK(rig.out.port_suction_pa < calm.port_suction_pa - 20.0);
    CHECK(rig.out.combustion_air_kg_s < calm.combustion_air_kg_s);
    rig.inputs.wind_pa = 90.0; // 12 m/s
    CHECK(rig.wait_for_switch(false, 10.0) < 10.0);
}

TEST_CASE("a burner door in place costs the burners a little air, not a trade's reading") {
    DraftRig rig = hot_rig();
    const double with_door = rig.out.combustion_air_kg_s;
    rig.inputs.burner_door_on = false;
    rig.run(5.0);
    CHECK(rig.out.combustion_air_kg_s > with_door);
    CHECK(rig.out.combustion_air_kg_s < 1.02 * with_door);
}
