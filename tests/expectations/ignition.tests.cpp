// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

// The hot-surface igniter, its wires and its relay.

using namespace lightoff::test;

namespace {

/// The meter's leads at the igniter's plug, the clamp round its wire, warm-up just begun.
Technician in_warm_up(Technician t) {
    t.drive(kOff)
        .drive("clamp harness.igniter_line; leads igniter_plug.line igniter_plug.neutral")
        .drive(kCall);
    t.await("multimeter", above(80.0));
    return t;
}

} // namespace

// ---- chain: igniter open

TEST_CASE("igniter open: 120 V at its plug, 0 A", "[ignition][common practice, no source]") {
    Technician t = in_warm_up(with({{"igniter_open"}}));
    t.drive("wait 10s");
    CHECK(t.shows("multimeter") == Approx(120.0).margin(3.0));
    CHECK(t.shows("clamp ammeter") == 0.0);
    CHECK(t.noticed("Igniter: glows") == 0);
}

TEST_CASE("igniter open: OL on the ohmmeter, the plug pulled", "[ignition][common practice, no source]") {
    Technician t = with({{"igniter_open"}});
    t.drive("disconnect off; burner-door off; unplug igniter_plug");
    t.drive("meter ohms; leads igniter_plug.line igniter_plug.neutral; wait 4s");
    CHECK(t.window("multimeter") == "OL");
}

TEST_CASE("igniter open: the valve gets 24 V and the manifold 3.5 in. for the trial, and there is no flame",
          "[ignition][common practice, no source]") {
    Technician t = with({{"igniter_open"}});
    t.drive("burner-door off; manometer-a manifold-tap; leads valve.hot valve.common; thermostat-set 84F");
    t.await("The gas valve clicks");
    t.drive("wait 4s");
    CHECK(t.shows("multimeter") >= 24.0);
    CHECK(t.shows("manometer") == Approx(3.5).margin(0.05));
    CHECK(t.await("The gas valve clicks") < 3.5); // 4 to 7 s after it opened
    CHECK(t.noticed("light") == 0);
}

TEST_CASE("igniter open: three trials, then the lamp counts 3 and glows",
          "[ignition][common practice, no source]") {
    Technician t = with({{"igniter_open"}});
    t.drive("thermostat-set 84F");
    t.await("long glow", 600.0);
    CHECK(t.noticed("The gas valve clicks") == 6); // three times open, three times shut
    CHECK(t.lamp() == held(3));
}

TEST_CASE("igniter's wire broken: the plug has no 120 V, and the igniter reads good",
          "[ignition][common practice, no source]") {
    Technician t = with({{"igniter_wire_open"}});
    t.drive("burner-door off; leads igniter_plug.line igniter_plug.neutral; thermostat-set 84F");
    t.await("Lamp: 2 flashes");
    t.drive("wait 20s");
    CHECK(t.shows("multimeter") < 60.0); // a ghost at the most
    t.drive("meter low-z-volts; wait 3s");
    CHECK(t.shows("multimeter") < 1.0);
    t.drive("disconnect off; unplug igniter_plug; meter ohms");
    CHECK(t.reading() <= 90.0);
}

// ---- aged, or good cold and open hot

TEST_CASE("igniter aged: 120 V at its plug, under 2.5 A hot, never bright, no flame, count 3",
          "[ignition][common practice, no source]") {
    Technician t = in_warm_up(found("tired-igniter"));
    t.drive("wait 17s");
    CHECK(t.shows("multimeter") > 114.0);
    CHECK(t.shows("clamp ammeter") > 0.5);
    CHECK(t.shows("clamp ammeter") < 2.5);
    t.await("long glow", 600.0);
    CHECK(t.noticed("yellow") == 0);
    CHECK(t.noticed("burners light") == 0);
    CHECK(t.lamp() == held(3));
}

TEST_CASE("igniter good cold, open hot: ohms in range cold", "[ignition][common practice, no source]") {
    Technician t = with({{"igniter_opens_hot", 0.8}});
    t.drive("disconnect off; burner-door off; unplug igniter_plug");
    t.drive("meter ohms; leads igniter_plug.line igniter_plug.neutral");
    CHECK(t.reading() >= 40.0);
    CHECK(t.reading() <= 90.0);
    CHECK(with({{"igniter_opens_hot", 0.8}}, 25.0).lamp() == held(3));
}

TEST_CASE("igniter good cold, open hot: its amps begin to rise and fall to 0 with 120 V on the plug",
          "[ignition][common practice, no source]") {
    Technician t = in_warm_up(with({{"igniter_opens_hot", 0.8}}));
    t.await("clamp ammeter", above(1.0), 5.0);
    t.drive("wait 12s");
    CHECK(t.shows("clamp ammeter") == 0.0);
    CHECK(t.shows("multimeter") > 114.0);
}

TEST_CASE("igniter good cold, open hot: cold again it reads good again",
          "[ignition][common practice, no source]") {
    Technician t = in_warm_up(found("fickle-igniter"));
    t.drive("wait 17s");
    REQUIRE(t.shows("multimeter") > 114.0);
    REQUIRE(t.shows("clamp ammeter") == 0.0);
    t.drive("thermostat-mode off; disconnect off; leads-off; wait 15min; unplug igniter_plug");
    t.drive("meter ohms; leads igniter_plug.line igniter_plug.neutral");
    CHECK(t.reading() <= 90.0);
}

TEST_CASE("low line voltage: the igniter draws less and stays darker",
          "[ignition][common practice, no source]") {
    Technician good = in_warm_up(sound());
    Technician low = in_warm_up(with({{"line_joint_burnt", 0.5}}));
    good.drive("wait 17s");
    low.drive("wait 17s");
    CHECK(low.shows("multimeter") < 100.0);
    CHECK(low.shows("clamp ammeter") < good.shows("clamp ammeter") - 0.3);
    CHECK(good.noticed("Igniter: brighter, yellow") >= 1);
    CHECK(low.noticed("Igniter: brighter, yellow") == 0);
}

TEST_CASE("igniter bent away: it glows bright, the gas comes, and nothing lights",
          "[ignition][common practice, no source]") {
    Technician t = with({{"igniter_bent_away"}});
    t.drive("burner-door off; manometer-a manifold-tap; thermostat-set 84F");
    t.await("The gas valve clicks");
    t.drive("wait 4s");
    CHECK(t.noticed("Igniter: brighter, yellow") >= 1);
    CHECK(t.shows("manometer") == Approx(3.5).margin(0.05));
    t.await("long glow", 600.0);
    CHECK(t.noticed("light") == 0);
    CHECK(t.lamp() == held(3));
}
