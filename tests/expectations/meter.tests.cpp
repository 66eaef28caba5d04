// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>

// What a meter makes of a circuit that is loaded, live, parallel, charged or cut.

using namespace lightoff::test;

namespace {

Technician at_the_board() {
    Technician t = sound();
    t.drive("blower-door off; tape on");
    return t;
}

} // namespace

TEST_CASE("W cut off beside a live wire: 3 to 15 V of ghost on 10 Mohm, under 1 V on low impedance",
          "[meters][common practice, no source]") {
    Technician t = with({{"w_wire_open"}}, 1.0);
    t.drive("blower-door off; tape on; lift board.W; leads board.W.lug board.C");
    CHECK(t.reading() >= 3.0);
    CHECK(t.reading() <= 15.0);
    t.drive("meter low-z-volts");
    CHECK(t.reading() < 1.0);
}

TEST_CASE("a wire cut off beside 120 V: 5 to 60 V of ghost on 10 Mohm, under 1 V on low impedance",
          "[meters][common practice, no source]") {
    Technician t = sound();
    t.drive("burner-door off; unplug igniter_plug; leads igniter_plug.line.lug cabinet.metal; thermostat-set "
            "84F");
    t.await("Inducer: a steady whirr");
    CHECK(t.reading() >= 5.0);
    CHECK(t.reading() <= 60.0);
    t.drive("meter low-z-volts");
    CHECK(t.reading() < 1.0);
}

TEST_CASE("ohms across the open pressure switch in its circuit: the paths beside it, not OL",
          "[meters][common practice, no source]") {
    Technician t = sound();
    t.drive("disconnect off; burner-door off; meter ohms; leads pressure_switch.in pressure_switch.out");
    CHECK(t.reading() < 50e3);
    t.drive("lift pressure_switch.in; wait 4s");
    CHECK(t.window("multimeter") == "OL");
}

TEST_CASE("ohms across an open valve coil in its circuit: the board's resistors, OL only with a wire lifted",
          "[meters][common practice, no source]") {
    Technician t = with({{"valve_coil_open"}});
    t.drive("disconnect off; burner-door off; meter ohms; leads valve.hot valve.common");
    CHECK(t.reading() < 50e3);
    t.drive("lift valve.hot; wait 4s");
    CHECK(t.window("multimeter") == "OL");
}

TEST_CASE("ohms on a live circuit: a number that jumps, negative at times, or OL, and nothing blows",
          "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("meter ohms; leads board.R board.C");
    std::set<std::string> seen;
    bool negative = false;
    for (int i = 0; i < 30; ++i) {
        t.drive("wait 1s");
        seen.insert(t.window("multimeter"));
        negative = negative || t.window("multimeter").front() == '-';
    }
    CHECK(seen.size() >= 5);
    CHECK(negative);
    CHECK(t.noticed("The number of the multimeter jumps") >= 1);
    t.drive("meter ac-volts");
    CHECK(t.reading() > 24.0); // the meter is as before
}

TEST_CASE("microamps put across 24 V: the meter's fuse is gone, it reads 0, and volts still read",
          "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("meter dc-microamps; leads board.R board.C; wait 3s");
    CHECK(t.shows("multimeter") == Approx(0.0).margin(0.03));
    CHECK(t.lamp() == kWink); // the furnace's fuse has held
    t.drive("meter ac-volts");
    CHECK(t.reading() > 24.0);
}

TEST_CASE("a meter with its fuse blown, in series with a sound flame: 0 uA, and no flame is proved",
          "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("meter dc-microamps; leads board.R board.C; wait 2s; leads-off; meter off");
    t.drive(kOff).drive(kFlameInSeries).drive(kCall);
    t.await("burners light");
    t.drive("wait 3s");
    CHECK(t.shows("multimeter") == Approx(0.0).margin(0.03));
    t.await("long glow", 600.0);
    CHECK(t.lamp() == held(3));
}

TEST_CASE("with new fuses in the meter the same flame reads its microamps again",
          "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("meter dc-microamps; leads board.R board.C; wait 2s; leads-off; meter off; meter-fuses");
    t.drive(kOff).drive(kFlameInSeries).drive(kCall);
    t.await("burners light");
    t.drive("wait 10s");
    CHECK(t.shows("multimeter") > 1.0);
}

TEST_CASE("amps put across the line: the meter's fuse is gone, it reads 0 A, and the furnace has its 120 V",
          "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("meter ac-amps; leads board.line board.neutral; wait 3s");
    CHECK(t.shows("multimeter") == 0.0);
    t.drive("meter ac-volts");
    CHECK(t.reading() > 114.0);
}

TEST_CASE("amps put across 24 V: the furnace's 3 A fuse goes first", "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("meter ac-amps; leads board.R board.C; wait 3s; look board_fuse");
    CHECK(t.noticed("the link is gone") == 1);
    CHECK(t.lamp() == "dark");
}

TEST_CASE("the non-contact tester glows at 120 V and is blind to 24 V",
          "[meters][common practice, no source]") {
    Technician t = at_the_board();
    t.drive("tester board.line; wait 1s");
    CHECK(t.shows("voltage tester") == 1.0);
    t.drive("tester board.R; wait 1s");
    CHECK(t.shows("voltage tester") == 0.0);
}

TEST_CASE("continuity beeps through a closed limit and not through a coil",
          "[meters][common practice, no source]") {
    Technician t = sound();
    t.drive("disconnect off; burner-door off; meter continuity; leads limit.in limit.out; wait 2s");
    CHECK(t.noticed("The multimeter beeps") == 1);
    t.drive("leads valve.hot valve.common; wait 2s");
    CHECK(t.noticed("The multimeter stops beeping") == 1);
}

TEST_CASE("a run capacitor lifted while it runs: hundreds of volts DC on it till it is discharged",
          "[meters][common practice, no source]") {
    Technician t = sound();
    t.drive("thermostat-fan on");
    t.await("Blower: a steady whirr");
    t.drive("blower-door off; tape on; wait 30s; lift blower_capacitor.a; disconnect off");
    t.drive("meter dc-volts; leads blower_capacitor.a blower_capacitor.b");
    CHECK(std::fabs(t.reading()) > 200.0); // the crest of what it had
    t.drive("meter capacitance; wait 3s");
    CHECK(t.window("multimeter") == "OL"); // refused
    t.drive("discharge blower_capacitor; meter dc-volts");
    CHECK(t.reading() == Approx(0.0).margin(0.05));
    t.drive("meter capacitance");
    CHECK(t.reading() == Approx(15.0).epsilon(0.06));
}
