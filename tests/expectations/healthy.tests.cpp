// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

#include <cmath>

// The reference furnace as it should be.

using namespace lightoff::test;

namespace {

constexpr double kWarm_min = 12.0;

/// Warm, running, with the analyser in the vent for two minutes.
Technician at_the_vent() {
    static const Technician there = [] {
        Technician t = sound(kWarm_min);
        t.drive("analyser vent-connector; wait 2min");
        return t;
    }();
    return there;
}

} // namespace

TEST_CASE("at rest R to C reads 24 to 28 V, and the lamp winks", "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("blower-door off; tape on; leads board.R board.C");
    CHECK(t.reading() >= 24.0);
    CHECK(t.reading() <= 28.0);
    CHECK(t.lamp() == kWink);
}

TEST_CASE("the board has 114 to 126 V from line to neutral, with everything running",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("blower-door off; tape on; leads board.line board.neutral");
    t.await("Blower: a steady whirr");
    CHECK(t.reading() >= 114.0);
    CHECK(t.reading() <= 126.0);
}

TEST_CASE("line to ground reads 120 V, neutral to ground under 2 V",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("blower-door off; tape on; leads board.line cabinet.metal");
    t.await("Blower: a steady whirr");
    CHECK(t.reading() == Approx(120.0).margin(6.0));
    t.drive("leads board.neutral cabinet.metal");
    CHECK(t.reading() < 2.0);
}

TEST_CASE("while the thermostat calls, W to C reads what R to C reads",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("blower-door off; tape on; leads board.R board.C");
    const double r_to_c = t.reading();
    t.drive("leads board.W board.C");
    CHECK(t.reading() == Approx(r_to_c).margin(0.3));
    CHECK(r_to_c > 24.0);
}

TEST_CASE("at rest the pressure switch is open, with the full 24 V across it",
          "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("burner-door off; leads pressure_switch.in pressure_switch.out");
    CHECK(t.reading() > 24.0);
}

TEST_CASE("running, rollout switch, limit and pressure switch read under 0.1 V each",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("burner-door off; leads rollout.in rollout.out");
    CHECK(t.reading() < 0.1);
    t.drive("leads limit.in limit.out");
    CHECK(t.reading() < 0.1);
    t.drive("leads pressure_switch.in pressure_switch.out");
    CHECK(t.reading() < 0.1);
}

TEST_CASE("the pressure switch closes 2 to 15 s after the inducer starts",
          "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("burner-door off; leads pressure_switch.in pressure_switch.out; thermostat-set 84F");
    t.await("Inducer: a whirr rises");
    const double took_s = t.await("multimeter", below(1.0));
    CHECK(took_s >= 2.0);
    CHECK(took_s <= 15.0);
}

TEST_CASE(
    "cold, the tee shows the switch's 0.60 in. with a third to spare; hot, a fifth to a quarter is gone",
    "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("burner-door off; manometer-a hose-tee-inducer; thermostat-set 84F");
    t.await("Inducer: a steady whirr");
    const double cold = -t.reading("manometer");
    CHECK(cold > 0.80);
    t.drive("wait 15min");
    const double hot = -t.reading("manometer");
    CHECK(hot / cold >= 0.75);
    CHECK(hot / cold <= 0.80);
}

TEST_CASE("an igniter pulled off its plug reads 40 to 90 ohm cold", "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("disconnect off; burner-door off; unplug igniter_plug");
    t.drive("meter ohms; leads igniter_plug.line igniter_plug.neutral");
    CHECK(t.reading() >= 40.0);
    CHECK(t.reading() <= 90.0);
}

TEST_CASE("the igniter has 120 V, and its current rises as it heats, to 3 to 4.5 A",
          "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("burner-door off; clamp harness.igniter_line");
    t.drive("leads igniter_plug.line igniter_plug.neutral; thermostat-set 84F");
    t.await("multimeter", above(100.0));
    t.drive("wait 1s");
    const double first_a = t.shows("clamp ammeter");
    t.drive("wait 16s");
    CHECK(t.shows("multimeter") == Approx(120.0).margin(3.0));
    CHECK(t.shows("clamp ammeter") > first_a + 0.5);
    CHECK(t.shows("clamp ammeter") >= 3.0);
    CHECK(t.shows("clamp ammeter") <= 4.5);
}

TEST_CASE("from the call to the flame 39 to 43 s go by, to the blower 30 to 45 s more",
          "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("burner-door off; thermostat-set 84F");
    const double called_s = t.now_s();
    t.await("The gas valve clicks");
    t.await("burners light"); // a light-off is heard out for 1.5 s before it is called one
    const double lit_s = t.now_s();
    CHECK(lit_s - called_s >= 39.0);
    CHECK(lit_s - called_s <= 43.0);
    t.await("Blower: a whirr rises");
    CHECK(t.now_s() - lit_s >= 28.5);
    CHECK(t.now_s() - lit_s <= 45.0);
}

TEST_CASE("satisfied, the fire stops at once, the inducer 5 to 15 s later, the blower after 90 to 180 s",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("wait 5s; thermostat-mode off");
    const double off_s = t.now_s();
    t.await("The burners' roar stops");
    CHECK(t.now_s() - off_s < 1.0);
    t.await("Inducer: runs down");
    CHECK(t.now_s() - off_s >= 5.0);
    CHECK(t.now_s() - off_s <= 17.0);
    t.await("Blower: runs down");
    CHECK(t.now_s() - off_s >= 90.0);
    CHECK(t.now_s() - off_s <= 182.0);
}

TEST_CASE("the meter in series with the flame reads 2 to 6 uA", "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive(kOffBoth).drive(kFlameInSeries).drive(kCall);
    t.await("burners light");
    CHECK(t.reading() >= 2.0);
    CHECK(t.reading() <= 6.0);
}

TEST_CASE("the gas stands at 5 to 10.5 in. at the inlet tap, and holds up with every appliance on",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("burner-door off; manometer-a inlet-tap");
    const double flowing = t.reading("manometer");
    CHECK(flowing == Approx(7.0).margin(0.1));
    t.drive("thermostat-mode off; wait 30s");
    const double still = t.reading("manometer");
    CHECK(still >= 5.0);
    CHECK(still <= 10.5);
    CHECK(still - flowing < 0.3);
}

TEST_CASE("the manifold tap reads 3.5 in.", "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("burner-door off; manometer-a manifold-tap");
    CHECK(t.reading("manometer") == Approx(3.5).margin(0.05));
}

TEST_CASE("the clocked meter gives the rating plate's input within 2 %",
          "[healthy][published: NFPA 54-1996 Table XIII]") {
    Technician t = sound(kWarm_min);
    t.drive("appliances off; stopwatch on; wait 3min");
    const double cfh = 3600.0 * 2.0 / t.shows("stopwatch"); // 2 ft3 dial
    CHECK(cfh * 1050.0 == Approx(80000.0).epsilon(0.02));
}

TEST_CASE("the rise is on the rating plate, 40 to 70 F", "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("probe-1 supply-duct; probe-2 return-duct; wait 1min");
    CHECK(t.reading("thermometer T1 - T2") >= 40.0);
    CHECK(t.reading("thermometer T1 - T2") <= 70.0);
}

TEST_CASE("a probe in sight of the exchanger reads the supply air too hot",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("probe-1 supply-duct; wait 1min");
    const double out_of_sight = t.reading("thermometer T1");
    t.drive("probe-1 supply-plenum; wait 1min");
    CHECK(t.reading("thermometer T1") > out_of_sight + 2.0);
}

TEST_CASE("both hoses of the manometer read the external static: the plate's half an inch at the most",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("manometer-a supply-static");
    const double supply = t.reading("manometer");
    t.drive("manometer-a room; manometer-b return-static");
    const double below_the_room = t.reading("manometer"); // port 2 is taken off
    t.drive("manometer-a supply-static");
    const double both = t.reading("manometer");
    CHECK(supply > 0.0);
    CHECK(below_the_room > 0.0);
    CHECK(both == Approx(supply + below_the_room).margin(0.01)); // the magnitudes add
    CHECK(both == Approx(0.48).margin(0.02));
    CHECK(both <= 0.50);
}

TEST_CASE("the vent connector draws 0.02 to 0.05 in.", "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("manometer-a vent-connector");
    CHECK(t.reading("manometer") <= -0.02);
    CHECK(t.reading("manometer") >= -0.05);
}

TEST_CASE("the flue shows 6 to 9 % O2", "[healthy][common practice, no source]") {
    Technician t = at_the_vent();
    CHECK(t.reading("analyser oxygen") >= 6.0);
    CHECK(t.reading("analyser oxygen") <= 9.0);
}

TEST_CASE("the flue shows under 100 ppm CO air-free",
          "[healthy][published: ICM magazine, Sep/Oct 2015, p. 19]") {
    Technician t = at_the_vent();
    CHECK(t.reading("analyser CO air-free") < 100.0);
}

TEST_CASE("the flue takes 17 % of the input or more, so the analyser shows no efficiency above 83 %",
          "[healthy][published: ANSI Z21.47-1993 Table XII footnote]") {
    Technician t = at_the_vent();
    CHECK(t.reading("analyser efficiency") <= 83.0);
    CHECK(t.reading("analyser efficiency") > 78.0); // an ordinary furnace of this kind: common practice
}

TEST_CASE("the blower draws no more than its nameplate's 7 A", "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("blower-door off; tape on; clamp blower.lead_common");
    t.await("Blower: a steady whirr");
    CHECK(t.reading("clamp ammeter") > 3.0);
    CHECK(t.reading("clamp ammeter") <= 7.0);
}

TEST_CASE("the run capacitor, pulled and discharged, reads its 15 uF within 6 %",
          "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("disconnect off; blower-door off; lift blower_capacitor.a; discharge blower_capacitor");
    t.drive("meter capacitance; leads blower_capacitor.a blower_capacitor.b");
    CHECK(t.reading() == Approx(15.0).epsilon(0.06));
}

TEST_CASE("under load the capacitor's 2652 x amps / volts come to its 15 uF within 6 %",
          "[healthy][published: I = 2 pi f C V at 60 Hz]") {
    Technician t = sound(kWarm_min);
    t.drive("blower-door off; tape on; clamp blower.lead_capacitor_a; leads blower_capacitor.a "
            "blower_capacitor.b");
    t.await("Blower: a steady whirr");
    const double volts = t.reading();
    CHECK(2652.0 * t.reading("clamp ammeter") / volts == Approx(15.0).epsilon(0.06));
}

TEST_CASE("the gas valve has 24 V while it burns, and its coil some tens of ohms",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("burner-door off; leads valve.hot valve.common");
    CHECK(t.reading() >= 24.0);
    t.drive("thermostat-mode off; disconnect off; lift valve.hot; meter ohms");
    CHECK(t.reading() >= 10.0);
    CHECK(t.reading() <= 99.0);
}

TEST_CASE("the alarm on the belt shows 0 ppm CO", "[healthy][common practice, no source]") {
    Technician t = found("all-is-well");
    CHECK(t.reading("CO alarm") == 0.0);
}

TEST_CASE("a clean furnace never trips its limit", "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive("thermostat-set 84F");
    t.await("burners light");
    t.drive("wait 60min");
    CHECK(t.noticed("The burners' roar stops") == 0);
}

TEST_CASE("the flame rod's lead pulled off in the run: the fire is out within 2 s, and it tries again",
          "[healthy][common practice, no source]") {
    Technician t = sound();
    t.drive(kOffBoth).drive(kCall);
    t.await("Blower: a steady whirr");
    t.drive("lift board.flame");
    CHECK(t.await("The burners' roar stops") <= 2.0);
    t.await("burners light");
    CHECK(t.await("The burners' roar stops") < 8.0); // no flame is proved: the trial ends
}

TEST_CASE("the hose pulled off in the run: the fire is out at once, the inducer runs on",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("burner-door off; leads pressure_switch.in pressure_switch.out");
    t.forget();
    t.drive("take-off pressure_hose; wait 1s");
    CHECK(t.noticed("The burners' roar stops") == 1);
    t.drive("wait 20s");
    CHECK(t.noticed("Inducer: runs down") == 0);
    CHECK(t.reading() > 24.0);
    t.drive("put-back pressure_hose");
    t.await("burners light"); // restarts by itself
}

TEST_CASE("the blower door off in the run: everything is dead behind its switch",
          "[healthy][common practice, no source]") {
    Technician t = sound(kWarm_min);
    t.drive("blower-door off; wait 1s");
    CHECK(t.noticed("The burners' roar stops") == 1);
    t.drive("leads board.line cabinet.metal");
    CHECK(t.reading() < 1.0);
    t.drive("leads door_switch.in cabinet.metal");
    CHECK(t.reading() > 114.0); // its supply side is live
    CHECK(t.lamp() == "dark");
}
