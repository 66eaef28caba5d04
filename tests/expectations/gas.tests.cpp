// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

#include <cmath>

// Pipe, valve, orifices and burners.

using namespace lightoff::test;

namespace {

/// Instruments of a combustion check on a warm furnace.
Technician measured(const std::vector<Broken>& faults) {
    Technician t = with(faults, 12.0);
    t.drive("analyser vent-connector; probe-1 supply-duct; probe-2 return-duct");
    t.drive("burner-door off; manometer-a manifold-tap; appliances off; stopwatch on; wait 4min");
    return t;
}
const Technician& sound_one() {
    static const Technician t = measured({});
    return t;
}

} // namespace

// ---- chain: gas shut

TEST_CASE("gas shut: 0 in. at the inlet tap, the igniter bright, 24 V at the valve",
          "[gas][common practice, no source]") {
    Technician t = sound();
    t.drive("gas-cock off; burner-door off; manometer-a inlet-tap; leads valve.hot valve.common");
    t.drive("thermostat-set 84F");
    t.await("The gas valve clicks");
    t.drive("wait 4s");
    CHECK(t.shows("manometer") == Approx(0.0).margin(0.02));
    CHECK(t.noticed("Igniter: brighter, yellow") >= 1);
    CHECK(t.shows("multimeter") >= 24.0);
}

TEST_CASE("gas shut: three trials, then the lamp counts 3 and glows", "[gas][common practice, no source]") {
    Technician t = sound();
    t.drive("gas-cock off; thermostat-set 84F");
    t.await("long glow", 600.0);
    CHECK(t.noticed("The gas valve clicks") == 6);
    CHECK(t.noticed("light") == 0);
    CHECK(t.lamp() == held(3));
}

// ---- chain: low inlet under load

TEST_CASE("pipe too small: 7 in. at the inlet at rest, about 3 flowing",
          "[gas][common practice, no source]") {
    Technician t = with({{"gas_pipe_undersized", 0.7}}, 12.0);
    t.drive("burner-door off; manometer-a inlet-tap");
    CHECK(t.reading("manometer") == Approx(3.0).margin(0.4));
    t.drive("thermostat-mode off; wait 30s");
    CHECK(t.reading("manometer") == Approx(7.0).margin(0.2));
}

TEST_CASE("pipe too small: about 2.5 in. at the manifold", "[gas][common practice, no source]") {
    Technician t = measured({{"gas_pipe_undersized", 0.7}});
    CHECK(t.reading("manometer") == Approx(2.5).margin(0.3));
}

TEST_CASE("pipe too small: O2 is up and the rise down", "[gas][common practice, no source]") {
    const Technician t = measured({{"gas_pipe_undersized", 0.7}});
    CHECK(t.shows("analyser oxygen") > sound_one().shows("analyser oxygen") + 1.0);
    CHECK(t.shows("thermometer T1 - T2") < sound_one().shows("thermometer T1 - T2") - 4.0);
}

TEST_CASE("pipe too small: it runs, and the lamp counts 5", "[gas][common practice, no source]") {
    Technician t = found("thin-pipe");
    CHECK(t.lamp() == counts(5));
    t.drive("burner-door off; manometer-a inlet-tap; wait 2min");
    CHECK(t.shows("manometer") < 4.0);
    CHECK(t.noticed("The burners' roar stops") == 0);
}

TEST_CASE("pipe too small: the manifold's screw turned up raises nothing",
          "[gas][common practice, no source]") {
    Technician t = with({{"gas_pipe_undersized", 0.7}}, 12.0);
    t.drive("burner-door off; manometer-a manifold-tap");
    const double before = t.reading("manometer");
    t.drive("adjust gas_valve +2");
    CHECK(t.reading("manometer") == Approx(before).margin(0.02));
}

TEST_CASE("pipe mended behind a manifold that was turned up: it overfires",
          "[gas][common practice, no source]") {
    Technician t = with({{"gas_pipe_undersized", 0.7}}, 12.0);
    t.drive("burner-door off; adjust gas_valve +4; manometer-a manifold-tap");
    REQUIRE(t.reading("manometer") < 3.0);
    t.drive("thermostat-mode off; replace gas_pipe; thermostat-mode heat");
    t.await("burners light");
    t.drive("appliances off; stopwatch on; wait 3min");
    CHECK(t.shows("manometer") > 4.2);
    CHECK(3600.0 * 2.0 / t.shows("stopwatch") * 1050.0 > 1.08 * 80000.0);
}

// ---- chain: valve coil open

TEST_CASE("valve coil open: 24 V at its terminals, 0 A, no click", "[gas][common practice, no source]") {
    Technician t = with({{"valve_coil_open"}});
    t.drive("burner-door off; manometer-a manifold-tap; clamp harness.valve_out");
    t.drive("leads valve.hot valve.common; thermostat-set 84F");
    t.await("multimeter", above(20.0));
    t.drive("wait 4s");
    CHECK(t.shows("multimeter") >= 24.0);
    CHECK(t.shows("clamp ammeter") == 0.0);
    CHECK(t.shows("manometer") == Approx(0.0).margin(0.02));
    CHECK(t.noticed("The gas valve clicks") == 0);
}

TEST_CASE("valve coil open: three warm-ups, then the lamp counts 3 and glows",
          "[gas][common practice, no source]") {
    Technician t = with({{"valve_coil_open"}});
    t.drive("burner-door off; thermostat-set 84F");
    t.await("long glow", 600.0);
    CHECK(t.noticed("Igniter: glows") == 3);
    CHECK(t.lamp() == held(3));
}

TEST_CASE("valve coil open: OL across it, its wire lifted", "[gas][common practice, no source]") {
    Technician t = with({{"valve_coil_open"}});
    t.drive("disconnect off; burner-door off; lift valve.hot");
    t.drive("meter ohms; leads valve.hot valve.common; wait 4s");
    CHECK(t.window("multimeter") == "OL");
}

// ---- signs: fire

TEST_CASE("manifold at 4.5 in.: O2 down, flue hotter, rise up", "[gas][common practice, no source]") {
    const Technician t = measured({{"regulator_high", 0.5}});
    CHECK(t.shows("manometer") == Approx(4.5).margin(0.05));
    CHECK(t.shows("analyser oxygen") < sound_one().shows("analyser oxygen") - 1.5);
    CHECK(t.shows("analyser net") > sound_one().shows("analyser net") + 30.0);
    CHECK(t.shows("thermometer T1 - T2") > sound_one().shows("thermometer T1 - T2") + 4.0);
}

TEST_CASE("manifold at 4.5 in.: the dial turns faster by the root of 4.5 over 3.5",
          "[gas][published: orifice equation, flow as the root of pressure]") {
    const Technician t = measured({{"regulator_high", 0.5}});
    REQUIRE(t.shows("manometer") == Approx(4.5).margin(0.05));
    const double faster = sound_one().shows("stopwatch") / t.shows("stopwatch");
    CHECK(faster == Approx(std::sqrt(t.shows("manometer") / sound_one().shows("manometer"))).epsilon(0.01));
}

TEST_CASE("regulator drifted low: manifold down with the inlet good, O2 up, rise down",
          "[gas][common practice, no source]") {
    Technician t = found("weak-fire");
    t.drive("analyser vent-connector; probe-1 supply-duct; probe-2 return-duct; burner-door off");
    t.drive("manometer-a inlet-tap");
    CHECK(t.reading("manometer") == Approx(7.0).margin(0.2));
    t.drive("manometer-a manifold-tap");
    CHECK(t.reading("manometer") < 2.5);
    CHECK(t.shows("analyser oxygen") > sound_one().shows("analyser oxygen") + 1.5);
    CHECK(t.shows("thermometer T1 - T2") < sound_one().shows("thermometer T1 - T2") - 4.0);
}

TEST_CASE("underfired and short of air: the rise looks normal, the clocked meter does not",
          "[gas][common practice, no source]") {
    const Technician t = measured({{"regulator_low", 0.4}, {"filter_dirty", 0.3}});
    CHECK(t.shows("thermometer T1 - T2") == Approx(sound_one().shows("thermometer T1 - T2")).margin(2.5));
    CHECK(t.shows("stopwatch") > 1.1 * sound_one().shows("stopwatch"));
    CHECK(t.shows("analyser oxygen") > sound_one().shows("analyser oxygen") + 1.5);
}

TEST_CASE("an orifice partly plugged: the manifold reads right, the dial turns slowly, O2 is up",
          "[gas][common practice, no source]") {
    const Technician t = measured({{"orifice_plugged", 0.3}});
    CHECK(t.shows("manometer") == Approx(3.5).margin(0.05));
    CHECK(t.shows("stopwatch") > 1.05 * sound_one().shows("stopwatch"));
    CHECK(t.shows("analyser oxygen") > sound_one().shows("analyser oxygen") + 0.5);
}

TEST_CASE("burners dirty: yellow flames and CO, the O2 as before", "[gas][common practice, no source]") {
    Technician t = measured({{"burners_dirty", 0.8}});
    CHECK(t.noticed("Flames: all burners yellow") >= 1);
    CHECK(t.shows("analyser CO air-free") > 100.0);
    CHECK(t.shows("analyser oxygen") == Approx(sound_one().shows("analyser oxygen")).margin(0.2));
}

TEST_CASE("crossover rusted: burners 3 and 4 stay dark for seconds, then light with a bang",
          "[gas][common practice, no source]") {
    Technician t = found("morning-boom");
    t.drive("thermostat-mode off; burner-door off; wait 5min; thermostat-mode heat");
    t.await("burners 1 and 2 blue; burners 3 and 4 no flame");
    const std::string later = "More flame lights with a ";
    t.drive("wait 10s");
    CHECK(t.noticed(later + "thump") + t.noticed(later + "bang") == 1);
    CHECK(t.noticed("Flame comes out of the burner openings") == 1);
    Technician good = sound();
    good.drive("burner-door off; thermostat-set 84F; wait 1min");
    CHECK(good.noticed("burners light") == 1);
    CHECK(good.noticed(later) == 0);
}

TEST_CASE(
    "valve hangs open: no voltage on it and 3.5 in. behind it, the lamp flutters, inducer and blower run",
    "[gas][common practice, no source]") {
    Technician t = with({{"valve_hangs_open", 1.0, 300.0}}, 8.0);
    t.drive("burner-door off; manometer-a manifold-tap; leads valve.hot valve.common; thermostat-mode off");
    t.drive("wait 5min");
    CHECK(t.shows("multimeter") < 1.0);
    CHECK(t.shows("manometer") == Approx(3.5).margin(0.1));
    CHECK(t.noticed("Inducer: runs down") + t.noticed("Blower: runs down") == 0);
    CHECK(t.lamp() == "flickers fast, without a rest");
}

TEST_CASE(
    "a leaking union: the detector finds it at the joint and not in the room, and solution bubbles there",
    "[gas][common practice, no source]") {
    Technician t = with({{"gas_pipe_leaks", 0.3}}, 30.0);
    t.drive("sniff room");
    CHECK(t.reading("gas detector") == 0.0);
    t.drive("sniff gas-union; wait 5s");
    CHECK(t.shows("gas detector") > 5.0);
    t.drive("sniff off; bubbles gas-union; wait 10s");
    CHECK(t.shows("leak-detection solution") > 5.0);
    t.drive("bubbles gas-cock; wait 10s");
    CHECK(t.shows("leak-detection solution") == 0.0);
}
