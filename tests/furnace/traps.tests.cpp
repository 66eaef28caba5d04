// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"
#include "units/convert.hpp"

#include <string>
#include <utility>
#include <vector>

// Readings that mislead somebody in a hurry: each is right, and each has more than one cause. Common practice
// without a single published source (CP).

using lightoff::test::Rig;
namespace units = lightoff::units;

namespace {

const std::string kTrial = "board, burner: Trial for ignition, igniter on";

bool is_locked_out(const Rig& r) {
    return r.board_state() == "soft_lockout";
}

bool runs(Rig& r, double limit_s = 200.0) {
    return r.run_until(limit_s, [](const Rig& rig) { return rig.board_state() == "run"; }).has_value();
}

void cycle_power(Rig& r) {
    r.act("breaker off");
    r.run(3.0);
    r.act("breaker on");
}

} // namespace

TEST_CASE("trap: 0 V across a switch means closed or no feed") {
    Rig r;
    r.open("harness.limit_out");
    r.set("draft.sense_line.hose_off", 1.0);
    r.run(60.0);
    CHECK_FALSE(r.senses("limit"));
    CHECK(r.world.state.draft.sense_line.closed == 0); // the pressure switch is open ...
    CHECK(r.read("across the pressure switch") < 0.5); // ... and reads 0
    CHECK(r.read("across the limit") < 0.5); // so does the closed limit: the wire to it is the fault
    CHECK(r.volts("board.limit_feed", "board.C") > 24.0);
    CHECK(r.volts("limit.in", "board.C") < 0.5);
    CHECK(r.volts("limit.out", "board.C") < 0.5);
}

TEST_CASE("trap: 24 V that collapses under load through a burnt terminal") {
    Rig r;
    r.set("wiring/transformer.lead_hot/series_resistance", 40.0);
    r.run(4.0);
    CHECK(r.read("control, R-C") > 24.0); // a volt-meter at standby sees a good supply
    CHECK(r.lamp() == "wink");
    r.run(300.0);
    CHECK(r.count_of(kTrial) >= 2);
    CHECK(r.count_of("first burner lights") == 0);
    CHECK(r.count_of("board has control power") >= 2); // it dies with the valve's load, again and again

    Rig in_trial;
    in_trial.set("wiring/transformer.lead_hot/series_resistance", 40.0);
    REQUIRE(in_trial.run_until(100.0, [](const Rig& rig) { return rig.board_state() == "trial_lit"; }));
    in_trial.run(0.1);
    CHECK(in_trial.read("control, R-C") < 20.0);
    CHECK(in_trial.volts("transformer.hot", "transformer.common") > 24.0);

    Rig at_the_valve; // the same in the valve's own wire: full voltage at the board, too little at the valve
    at_the_valve.set("wiring/harness.valve_out/series_resistance", 60.0);
    REQUIRE(at_the_valve.run_until(100.0, [](const Rig& rig) { return rig.board_state() == "trial_lit"; }));
    at_the_valve.run(2.0);
    CHECK(at_the_valve.volts("board.valve_feed", "board.C") > 24.0);
    CHECK(at_the_valve.read("gas valve") < 18.0);
    CHECK(at_the_valve.world.state.gas.valve_position == 0.0);
    at_the_valve.open("harness.valve_back"); // with the load off nothing is wrong to be seen
    at_the_valve.run(0.5);
    CHECK(at_the_valve.volts("valve.hot", "board.C") > 24.0);
}

TEST_CASE("trap: the limit reads closed by the time you arrive") {
    Rig r;
    r.set("air.ducts.filter_loading", 30.0);
    REQUIRE(r.run_until(3600.0, is_locked_out));
    r.run(1200.0);
    CHECK(r.count_of("limit opens") == 5);
    CHECK(r.read("across the limit") < 0.2);
    CHECK(r.volts("limit.out", "board.C") > 24.0);
    CHECK(r.lamp() == "held");
    CHECK(r.lamp_count() == 5); // how far it came is what is left to read
}

TEST_CASE("trap: opening the door erases the memory of the last stop") {
    Rig r;
    r.set("gas.cock_open", 0.0);
    REQUIRE(r.run_until(600.0, is_locked_out));
    r.run(10.0);
    CHECK(r.lamp_count() == 3);
    r.act("blower-door off");
    r.run(1.0);
    CHECK(r.lamp() == "dark");
    r.act("door-switch on");
    r.run(8.0);
    CHECK_FALSE(is_locked_out(r));
    CHECK(r.lamp() != "held");
    CHECK(r.lamp_count() < 3);
}

TEST_CASE("trap: low blower amps are no good motor's badge") {
    Rig sound;
    sound.run(600.0);
    for (const auto& [path, value] : {std::pair<const char*, double>{"air.blower.wheel_packing", 0.6},
                                      {"air.ducts.filter_loading", 10.0},
                                      {"air.ducts.registers_closed", 0.8}}) {
        INFO(path);
        Rig r;
        r.set(path, value);
        r.run(600.0);
        CHECK(r.read("blower current") < sound.read("blower current") - 0.3);
        CHECK(r.read("airflow") < 0.85 * sound.read("airflow"));
    }
}

TEST_CASE("trap: underfired and low on air, the rise looks normal: clock the meter first") {
    Rig sound;
    sound.run(900.0);
    Rig r;
    r.set("gas.regulator_drift", -units::inwc_to_pa(1.0));
    r.set("air.ducts.filter_loading", 6.0);
    r.run(900.0);
    CHECK(r.read("temperature rise") == Approx(sound.read("temperature rise")).margin(2.5));
    CHECK(r.read("dial time") > 1.1 * sound.read("dial time"));
    CHECK(r.read("oxygen") > sound.read("oxygen") + 1.5);
    CHECK(r.read("return static") < sound.read("return static") - 0.1);
}

TEST_CASE("trap: a manifold turned up does not cure a low inlet, and overfires once the inlet is mended") {
    Rig r;
    r.set("gas.pipe_restriction", 0.9);
    r.run(300.0);
    const double before = r.read("manifold pressure");
    CHECK(before < 3.0);
    r.set("gas.regulator_adjust", units::inwc_to_pa(0.8));
    r.run(60.0);
    CHECK(r.read("manifold pressure") == Approx(before).margin(0.05));
    r.set("gas.pipe_restriction", 0.0);
    r.run(300.0);
    CHECK(r.read("manifold pressure") > 4.2);
    CHECK(r.read("input rate") > 1.08 * 80000.0);
}

TEST_CASE("trap: igniter good cold, open hot") {
    Rig r;
    r.set("heat.igniter_crack_opens_above", 500.0);
    r.run(2.0);
    CHECK(r.world.state.signals.heat.igniter_ohm > 40.0); // what an ohmmeter sees with the plug pulled
    CHECK(r.world.state.signals.heat.igniter_ohm < 90.0);
    REQUIRE(r.run_until(60.0, [](const Rig& rig) { return rig.drives("igniter"); }));
    r.run(0.5);
    CHECK(r.read("igniter current") > 1.0);
    r.run(15.0);
    CHECK(r.read("igniter plug") > 115.0);
    CHECK(r.read("igniter current") < 0.01);
    REQUIRE(r.run_until(600.0, is_locked_out));
    CHECK(r.lamp_count() == 3);
    r.run(600.0);
    CHECK(r.world.state.signals.heat.igniter_ohm < 90.0); // cold again, good again
}

TEST_CASE("trap: no flame current has many causes; polishing the rod cures one") {
    struct Cause {
        const char* name;
        void (*apply)(Rig&);
        bool polishing_cures;
    };
    const std::vector<Cause> causes = {
        {"coated", [](Rig& r) { r.set("wiring/rod.surface/series_resistance", 1e8); }, true},
        {"lead open", [](Rig& r) { r.open("harness.flame"); }, false},
        {"rod on ground", [](Rig& r) { r.bridge("rod.tip", "cabinet.metal", 1.0); }, false},
        {"insulator cracked", [](Rig& r) { r.bridge("rod.lead", "cabinet.metal", 2e5); }, false},
        {"burner not grounded", [](Rig& r) { r.open("burner.ground"); }, false},
        {"last burner not lit", [](Rig& r) { r.set("gas.orifice_plugging[3]", 1.0); }, false},
    };
    for (const Cause& cause : causes) {
        INFO(cause.name);
        Rig r;
        cause.apply(r);
        REQUIRE(r.run_until(600.0, is_locked_out));
        CHECK(r.lamp_count() == 3);
        CHECK(r.count_of("first burner lights") == 3);
        r.set("wiring/rod.surface/series_resistance", 0.0); // polished
        cycle_power(r);
        CHECK(runs(r) == cause.polishing_cures);
    }
}

TEST_CASE("trap: the pressure switch is a messenger") {
    // Three furnaces whose pressure switch is sound and stays open; a new one would change nothing.
    for (const auto& [path, value] : {std::pair<const char*, double>{"draft.path.vent_blockage", 0.95},
                                      {"draft.inducer.bearing_drag_added", 0.12},
                                      {"draft.sense_line.port_plug", 1.0}}) {
        INFO(path);
        Rig r;
        r.set(path, value);
        r.run(60.0);
        CHECK_FALSE(r.senses("pressure_switch"));
        CHECK(r.read("across the pressure switch") > 24.0);
        CHECK(units::pa_to_inwc(r.world.state.signals.draft.switch_suction_pa) < 0.60);
    }
}

TEST_CASE("trap: a furnace that is clean and trips its limit has a weak limit") {
    Rig r;
    r.set("heat.limit_set_point_shift", -32.0);
    REQUIRE(r.run_until(1200.0, [](const Rig& rig) { return rig.world.state.heat.limit_open != 0; }));
    CHECK(r.read("temperature rise") < 60.0); // the air is not at fault
    CHECK(r.read("external static") < 0.6);
    CHECK(r.lamp_count() == 5);
}

TEST_CASE("trap: idle speed taps of a running motor are live; two taps fed at once burn it") {
    Rig r;
    r.run(300.0);
    const double idle_v = r.read("idle tap, high");
    CHECK(idle_v > 60.0); // coupled windings
    CHECK(idle_v < 150.0);
    const double sound_a = r.read("blower current");
    const double sound_k = r.world.state.heat.temperature.blower_winding;
    r.bridge("board.blower_heat", "board.blower_cool", 0.02);
    r.run(120.0);
    CHECK(r.read("blower current") > 1.5 * sound_a);
    CHECK(r.world.state.heat.temperature.blower_winding > sound_k + 20.0);
    CHECK(r.run_until(1800.0, [](const Rig& rig) { return rig.world.state.heat.blower_overload_open != 0; }));
}

TEST_CASE("relay welded or dead: what moves, and what does not (CP)") {
    SECTION("blower relay welded: the blower never stops, and the lamp does not count it") {
        Rig r;
        r.set("relay/board.coil_blower_heat/lowest_position", 1.0);
        r.run(4.0);
        CHECK(r.read("blower speed") > 900.0);
        CHECK(r.board_state() == "standby");
        CHECK(r.lamp() == "wink");
    }
    SECTION("blower relay dead: no voltage at the motor, the limit opens") {
        Rig r;
        r.set("relay/board.coil_blower_heat/highest_position", 0.0);
        r.run(90.0);
        CHECK(r.drives("blower_heat"));
        CHECK(r.volts("board.blower_heat", "board.neutral") < 1.0);
        CHECK(r.run_until(300.0, [](const Rig& rig) { return rig.world.state.heat.limit_open != 0; }));
    }
    SECTION("inducer relay dead: no voltage at its lead") {
        Rig r;
        r.set("relay/board.coil_inducer/highest_position", 0.0);
        r.run(40.0);
        CHECK(r.board_state() == "prove_draft");
        CHECK(r.read("inducer plug") < 1.0);
        CHECK(r.lamp_count() == 1);
    }
    SECTION("igniter relay dead: no voltage at the plug in warm-up, three trials") {
        Rig r;
        r.set("relay/board.coil_igniter/highest_position", 0.0);
        REQUIRE(r.run_until(60.0, [](const Rig& rig) { return rig.drives("igniter"); }));
        r.run(5.0);
        CHECK(r.read("igniter plug") < 1.0);
        REQUIRE(r.run_until(600.0, is_locked_out));
        CHECK(r.lamp_count() == 3);
    }
    SECTION("gas valve's relay welded: the board finds it, steady lamp, no gas without draft") {
        Rig r;
        r.set("relay/board.coil_gas_valve/lowest_position", 1.0);
        r.run(120.0);
        CHECK(r.lamp() == "steady");
        CHECK(r.world.state.gas.valve_position == 0.0);
        CHECK(r.count_of("first burner lights") == 0);
    }
}
