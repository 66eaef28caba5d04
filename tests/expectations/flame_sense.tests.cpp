// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

#include <cmath>

// Flame rectification: the rod, its lead, the burner's ground, line and neutral.

using namespace lightoff::test;

namespace {

/// The meter in series with the flame, a call on its way.
Technician in_series(Technician t) {
    t.drive(kOffBoth).drive(kFlameInSeries).drive(kCall);
    return t;
}

double flame_ua(const std::string& fault, double severity) {
    Technician t = in_series(with({{fault, severity}}));
    t.await("burners light");
    t.drive("wait 3s");
    return t.shows("multimeter");
}

} // namespace

// ---- chain: rod coated

TEST_CASE("rod coated: all burners light, and go out again", "[flame sense][common practice, no source]") {
    Technician t = found("coated-rod");
    t.drive(kOff).drive(kCall);
    t.await("Flames: all burners blue", 120.0);
    t.await("The burners' roar stops", 8.0);
}

TEST_CASE("rod coated: the meter in series reads 0.1 to 0.5 uA",
          "[flame sense][common practice, no source]") {
    Technician t = in_series(found("coated-rod"));
    t.await("burners light");
    t.drive("wait 3s");
    CHECK(t.shows("multimeter") >= 0.1);
    CHECK(t.shows("multimeter") <= 0.5);
}

TEST_CASE("rod coated: the valve shuts at the END of each of three trials, then the lamp counts 3 and glows",
          "[flame sense][common practice, no source]") {
    Technician t = with({{"rod_coated", 0.9}});
    t.drive("thermostat-set 84F");
    for (int trial = 0; trial < 3; ++trial) {
        t.await("The gas valve clicks");
        CHECK(t.await("The gas valve clicks") == Approx(7.0).margin(0.2)); // 4 to 7 s
    }
    CHECK(t.noticed("burners light") == 3);
    t.await("long glow");
    CHECK(t.lamp() == held(3));
}

TEST_CASE("rod coated: polished, it proves the flame", "[flame sense][common practice, no source]") {
    Technician t = found("coated-rod");
    t.drive(kOff).drive("clean flame_rod").drive(kCall);
    t.await("Blower: a steady whirr", 180.0);
    CHECK(t.lamp() == counts(5));
}

// ---- chain: reversed polarity

TEST_CASE("reversed polarity: all burners light, 0 uA with a clean rod, count 3",
          "[flame sense][common practice, no source]") {
    Technician t = found("swapped-lines");
    CHECK(t.lamp() == held(3));
    t.drive(kOffBoth).drive(kFlameInSeries).drive("look flame_rod");
    CHECK(t.noticed("grey and bright") == 1);
    t.drive(kCall);
    t.await("burners light");
    t.drive("wait 3s");
    CHECK(std::fabs(t.shows("multimeter")) < 0.05);
    t.drive("wait 2s");
    CHECK(t.noticed("Flames: all burners blue") == 1);
}

TEST_CASE("reversed polarity: line to ground 0 V, neutral to ground 120 V, and 120 V between them",
          "[flame sense][common practice, no source]") {
    Technician t = found("swapped-lines");
    t.drive(kOffBoth).drive("leads board.line cabinet.metal; disconnect on");
    CHECK(t.reading() < 2.0);
    t.drive("leads board.neutral cabinet.metal");
    CHECK(t.reading() == Approx(120.0).margin(6.0));
    t.drive("leads board.line board.neutral");
    CHECK(t.reading() == Approx(120.0).margin(6.0));
}

TEST_CASE("reversed polarity: parts stay live with the door switch open",
          "[flame sense][common practice, no source]") {
    Technician t = found("swapped-lines");
    t.drive("blower-door off; leads board.blower_neutral cabinet.metal; wait 5s");
    CHECK(t.lamp() == "dark");
    CHECK(t.reading() > 114.0);
}

// ---- other reasons for no flame current

TEST_CASE("rod on ground, lead broken, burners not grounded: each reads under 0.1 uA with the burners lit",
          "[flame sense][common practice, no source]") {
    CHECK(flame_ua("rod_grounded", 1.0) < 0.1);
    CHECK(flame_ua("rod_lead_open", 1.0) < 0.1);
    CHECK(flame_ua("burner_ground_poor", 1.0) < 0.1);
}

TEST_CASE("insulator cracked: volts AC on the rod's lead sag to ground, and the DC microamps are gone",
          "[flame sense][common practice, no source]") {
    const auto ac_v = [](const std::vector<Broken>& faults) {
        Technician t = with(faults);
        t.drive("blower-door off; tape on; leads board.flame cabinet.metal");
        return t.reading();
    };
    CHECK(ac_v({{"rod_insulator_cracked", 0.9}}) < 0.3 * ac_v({}));
    CHECK(flame_ua("rod_insulator_cracked", 0.9) < 0.5);
}

TEST_CASE("no flame current: polishing the rod cures the coat and none of the other causes",
          "[flame sense][common practice, no source]") {
    const auto lights_after_polishing = [](const std::string& fault, double severity) {
        Technician t = with({{fault, severity}}, 25.0);
        CHECK(t.lamp() == held(3));
        t.drive(kOff).drive("clean flame_rod").drive(kCall).drive("wait 90s");
        return t.noticed("Blower: a whirr rises") > 0;
    };
    CHECK(lights_after_polishing("rod_coated", 0.9));
    for (const char* other : {"rod_grounded", "rod_insulator_cracked", "rod_lead_open", "burner_ground_poor",
                              "flame_input_dead"}) {
        INFO(other);
        CHECK_FALSE(lights_after_polishing(other, 1.0));
    }
}

TEST_CASE("ground wire off: pipe and vent bond the cabinet, and the flame is proved as before",
          "[flame sense][common practice, no source]") {
    CHECK(flame_ua("ground_open", 1.0) >= 2.0);
    Technician t = with({{"ground_open"}}, 5.0);
    CHECK(t.lamp() == counts(5));
    t.drive("disconnect off; blower-door off; look ground_wire");
    CHECK(t.noticed("the green wire's ring hangs beside its screw") == 1);
}

// ---- what the meter does to the circuit

TEST_CASE("the sense terminal reads 80 to 100 V AC against neutral on a 10 Mohm meter",
          "[flame sense][common practice, no source]") {
    Technician t = sound();
    t.drive("blower-door off; tape on; leads board.flame board.neutral");
    CHECK(t.reading() >= 80.0);
    CHECK(t.reading() <= 100.0);
}

TEST_CASE("on low impedance the sense voltage is loaded away to a tenth of a volt: 3 of 3,303 kohm",
          "[flame sense][published: Ohm's law, voltage divider]") {
    Technician t = sound();
    t.drive("blower-door off; tape on; meter low-z-volts; leads board.flame board.neutral");
    CHECK(t.reading() == Approx(120.0 * 3.0 / 3303.0).epsilon(0.06));
}

TEST_CASE("in flame the rod is some volts negative on DC", "[flame sense][common practice, no source]") {
    Technician t = sound();
    t.drive(kOffBoth).drive("meter dc-volts; leads board.flame board.neutral").drive(kCall);
    t.await("burners light");
    t.drive("wait 5s");
    CHECK(t.shows("multimeter") < -5.0);
    CHECK(t.window("multimeter").front() == '-');
}
