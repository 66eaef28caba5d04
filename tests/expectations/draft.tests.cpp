// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <utility>

// From the burner openings to the cap on the roof, and what the pressure switch makes of it.

using namespace lightoff::test;

namespace {

/// The manometer's first hose is on the inducer's side of the tee, the meter's leads across the pressure
/// switch, and the inducer has come up to speed.
Technician at_the_hose(Technician t) {
    t.drive(kOff).drive("manometer-a hose-tee-inducer; leads pressure_switch.in pressure_switch.out");
    t.drive(kCall);
    t.await("Inducer: a steady whirr");
    return t;
}

/// The meter's leads at the inducer's plug, the clamp round its wire, 20 s of a call gone by.
Technician at_the_inducer(Technician t) {
    t.drive(kOff).drive("manometer-a hose-tee-inducer; clamp harness.inducer_line");
    t.drive("leads inducer_plug.line inducer_plug.neutral").drive(kCall).drive("wait 20s");
    return t;
}

struct Flue {
    double suction, oxygen, carbon_monoxide;
};
/// Tee and flue of a warm furnace.
Flue flue_with(const std::vector<Broken>& faults) {
    Technician t = with(faults);
    t.drive("analyser vent-connector; burner-door off; manometer-a hose-tee-inducer; thermostat-set 84F");
    t.await("burners light");
    t.drive("wait 12min");
    return {-t.shows("manometer"), t.shows("analyser oxygen"), t.shows("analyser CO air-free")};
}
const Flue& sound_flue() {
    static const Flue flue = flue_with({});
    return flue;
}

constexpr double kFullSuction_inwc = 0.90; ///< cold, of a furnace that is sound

} // namespace

// ---- chain: plugged hose

TEST_CASE("plugged hose: the lamp counts 1 and glows", "[draft][common practice, no source]") {
    CHECK(found("plugged-hose").lamp() == held(1));
}

TEST_CASE("plugged hose: 0 on the switch side, full suction on the inducer side of the plug",
          "[draft][common practice, no source]") {
    Technician t = at_the_hose(found("plugged-hose"));
    CHECK(t.reading("manometer") < -kFullSuction_inwc);
    t.drive("manometer-a hose-tee-switch");
    CHECK(t.reading("manometer") == Approx(0.0).margin(0.02));
}

TEST_CASE("plugged hose: the inducer runs at full speed, and 24 V stand across the pressure switch",
          "[draft][common practice, no source]") {
    Technician t = at_the_hose(found("plugged-hose"));
    CHECK(t.reading() > 24.0);
    t.drive("tachometer inducer-shaft");
    CHECK(t.reading("tachometer") > 2800.0);
}

TEST_CASE("plugged hose: the igniter gets nothing", "[draft][common practice, no source]") {
    Technician t = found("plugged-hose");
    t.drive(kOff)
        .drive("leads igniter_plug.line igniter_plug.neutral; clamp harness.igniter_line")
        .drive(kCall);
    t.await("Inducer: a steady whirr");
    t.drive("wait 45s");
    CHECK(t.shows("multimeter") < 1.0);
    CHECK(t.shows("clamp ammeter") < 0.05);
    CHECK(t.noticed("Igniter: glows") == 0);
}

TEST_CASE("plugged hose: cleared, the furnace lights", "[draft][common practice, no source]") {
    Technician t = found("plugged-hose");
    REQUIRE(t.lamp() == held(1));
    t.drive(kOff).drive("take-off pressure_hose; clean pressure_hose; put-back pressure_hose").drive(kCall);
    t.await("burners light", 60.0);
}

// ---- chain: plugged port

TEST_CASE("plugged port: the lamp counts 1 and glows", "[draft][common practice, no source]") {
    CHECK(with({{"port_plugged"}}, 25.0).lamp() == held(1));
}

TEST_CASE("plugged port: every tee in the hose reads 0 until the port is rodded",
          "[draft][common practice, no source]") {
    Technician t = at_the_hose(with({{"port_plugged"}}));
    CHECK(t.reading("manometer") == Approx(0.0).margin(0.02));
    t.drive("manometer-a hose-tee-switch");
    CHECK(t.reading("manometer") == Approx(0.0).margin(0.02));
    CHECK(t.reading() > 24.0);
    t.drive("take-off pressure_hose; clean collector_port; put-back pressure_hose; disconnect off; "
            "disconnect on");
    t.await("Inducer: a steady whirr");
    CHECK(t.reading("manometer") < -kFullSuction_inwc);
    t.await("burners light");
}

TEST_CASE("plugged port: with the hose off, the eye sees the rust in it",
          "[draft][common practice, no source]") {
    Technician t = with({{"port_plugged"}});
    t.drive("disconnect off; burner-door off; take-off pressure_hose; look collector_port");
    CHECK(t.noticed("filled with rust") == 1);
}

// ---- chain: vent blocked

TEST_CASE("vent part-blocked: it starts, and drops out hot", "[draft][common practice, no source]") {
    Technician t = at_the_hose(found("warm-vent"));
    const double cold = t.reading("manometer");
    CHECK(cold < -0.60); // the switch's set point: it closes
    CHECK(cold > -0.75);
    t.await("burners light");
    CHECK(t.await("The burners' roar stops", 1200.0) > 120.0);
    CHECK(t.reading("manometer") > cold + 0.05);
    CHECK(t.reading() > 24.0); // across the switch
}

TEST_CASE("vent part-blocked: the lamp counts 4 or 5 and glows", "[draft][common practice, no source]") {
    const std::string lamp = found("warm-vent").lamp();
    CHECK((lamp == held(4) || lamp == held(5)));
}

TEST_CASE("vent blocked in full: no suction at the tee, the lamp counts 1 and glows",
          "[draft][common practice, no source]") {
    Technician t = at_the_hose(with({{"vent_blocked"}}));
    CHECK(t.reading("manometer") > -0.10);
    CHECK(t.reading() > 24.0);
    CHECK(t.noticed("Inducer: a steady whirr, full") == 1);
    t.drive("wait 10min");
    CHECK(t.lamp() == held(1));
}

TEST_CASE("vent blocked in full: the inducer pushes the vent connector above the room",
          "[draft][common practice, no source]") {
    Technician t = with({{"vent_blocked"}});
    t.drive("manometer-a vent-connector; thermostat-set 84F");
    t.await("Inducer: a steady whirr");
    CHECK(t.reading("manometer") > 0.1);
}

// ---- chain: inducer dead

TEST_CASE("inducer open: 120 V at its lead, 0 A, no suction, count 1",
          "[draft][common practice, no source]") {
    Technician t = at_the_inducer(with({{"inducer_open"}}));
    CHECK(t.reading() > 114.0);
    CHECK(t.shows("clamp ammeter") < 0.05);
    CHECK(t.shows("manometer") == Approx(0.0).margin(0.05));
    CHECK(t.noticed("Inducer:") == 0); // neither whirr nor hum
    CHECK(with({{"inducer_open"}}, 25.0).lamp() == held(1));
}

TEST_CASE("inducer seized: 120 V at its lead, a hum, two to three times the amps, no suction, count 1",
          "[draft][common practice, no source]") {
    Technician sound_one = at_the_inducer(sound());
    Technician t = at_the_inducer(with({{"inducer_seized"}}));
    CHECK(t.reading() > 114.0);
    const double times = t.shows("clamp ammeter") / sound_one.shows("clamp ammeter");
    CHECK(times >= 2.0);
    CHECK(times <= 3.0);
    CHECK(t.noticed("Inducer: a flat hum") == 1);
    CHECK(t.shows("manometer") == Approx(0.0).margin(0.05));
    CHECK(with({{"inducer_seized"}}, 25.0).lamp() == held(1));
}

TEST_CASE("inducer dragging: fewer rpm, more amps, less suction", "[draft][common practice, no source]") {
    const auto run = [](const std::vector<Broken>& faults) {
        Technician t = at_the_hose(with(faults));
        t.drive("tachometer inducer-shaft; clamp harness.inducer_line; wait 5s");
        return t;
    };
    const Technician good = run({});
    const Technician bad = run({{"inducer_dragging", 0.5}});
    CHECK(bad.shows("tachometer") < good.shows("tachometer") - 50.0);
    CHECK(bad.shows("clamp ammeter") > good.shows("clamp ammeter") + 0.05);
    CHECK(bad.shows("manometer") > good.shows("manometer") + 0.05);
}

// ---- chain: pressure switch stuck closed

TEST_CASE("pressure switch stuck closed: the inducer never starts, the lamp flutters",
          "[draft][common practice, no source]") {
    Technician t = with({{"pressure_switch_stuck_closed"}});
    t.drive("thermostat-set 84F; wait 3min");
    CHECK(t.noticed("Inducer:") == 0);
    CHECK(t.lamp() == "flickers fast, without a rest");
}

TEST_CASE("pressure switch stuck closed: 24 V on both its sides", "[draft][common practice, no source]") {
    Technician t = with({{"pressure_switch_stuck_closed"}}, 3.0);
    t.drive("burner-door off; leads pressure_switch.in valve.common; wait 2s");
    CHECK(t.noticed("The inducer's shaft stands still") == 1);
    CHECK(t.reading() > 24.0);
    t.drive("leads pressure_switch.out valve.common");
    CHECK(t.reading() > 24.0);
}

TEST_CASE("a plug formed under suction holds the switch closed: the next call does not start",
          "[draft][common practice, no source]") {
    Technician t = with({{"hose_plugged", 1.0, 300.0}}, 6.0);
    t.drive("burner-door off; manometer-a hose-tee-switch; thermostat-mode off; wait 3min");
    CHECK(t.reading("manometer") < -0.53); // trapped, with the inducer at rest
    t.drive("manometer-a hose-tee-inducer");
    CHECK(t.reading("manometer") == Approx(0.0).margin(0.05));
    t.forget();
    t.drive("thermostat-mode heat; wait 1min");
    CHECK(t.noticed("Inducer: a whirr rises") == 0);
    CHECK(t.lamp() == "flickers fast, without a rest");
}

// ---- what else the hose tells

TEST_CASE("a kinked hose only delays: the switch closes late, at the full suction",
          "[draft][common practice, no source]") {
    const auto closes_s = [](const std::vector<Broken>& faults) {
        Technician t = with(faults);
        t.drive(kOff).drive("manometer-a hose-tee-switch; leads pressure_switch.in pressure_switch.out");
        t.drive(kCall);
        t.await("Inducer: a whirr rises");
        const double s = t.await("multimeter", below(1.0));
        t.await("burners light");
        t.drive("wait 10min");
        return std::pair{s, t.reading("manometer")};
    };
    const auto [good_s, good_inwc] = closes_s({});
    const auto [late_s, late_inwc] = closes_s({{"hose_kinked", 0.5}});
    CHECK(late_s > good_s + 5.0);
    CHECK(late_inwc == Approx(good_inwc).margin(0.01));
}

TEST_CASE("water in the hose takes its height off the suction",
          "[draft][published: definition of the inch of water column]") {
    Technician t = with({{"hose_water", 0.5}}); // 3 mm + half of 12 mm more
    t.drive("burner-door off; manometer-a hose-tee-inducer; manometer-b hose-tee-switch; thermostat-set 84F");
    t.await("Inducer: a steady whirr");
    CHECK(-t.reading("manometer") == Approx(9.0 / 25.4).margin(0.01));
}

TEST_CASE("measuring heals: the hose pulled off to be looked at has lost its water",
          "[draft][common practice, no source]") {
    Technician t = with({{"hose_water", 0.9}}, 25.0);
    CHECK(t.lamp() == held(1));
    t.drive(kOff).drive("take-off pressure_hose; put-back pressure_hose").drive(kCall);
    t.await("burners light", 60.0);
}

TEST_CASE("a cracked hose shows less suction at the switch than a sound one",
          "[draft][common practice, no source]") {
    Technician t = at_the_hose(with({{"hose_cracked", 0.5}}));
    t.drive("manometer-a hose-tee-switch");
    CHECK(t.reading("manometer") > -0.60);
    CHECK(t.reading() > 24.0); // the switch stays open
}

TEST_CASE("the pressure switch is a messenger: a new one on a plugged port changes nothing",
          "[draft][common practice, no source]") {
    Technician t = with({{"port_plugged"}}, 25.0);
    t.drive(kOff).drive("replace pressure_switch").drive(kCall).drive("wait 15min");
    CHECK(t.noticed("burners light") == 0);
    CHECK(t.lamp() == held(1));
}

// ---- signs: what the path does to suction and flue

TEST_CASE("vent restricted: suction and O2 are down, and CO is not up yet",
          "[draft][common practice, no source]") {
    const Flue vent = flue_with({{"vent_blocked", 0.5}});
    CHECK(vent.suction < sound_flue().suction - 0.05);
    CHECK(vent.oxygen < sound_flue().oxygen - 0.5);
    CHECK(vent.carbon_monoxide < 50.0);
}

TEST_CASE("exchanger restricted: suction is UP, O2 down, CO up", "[draft][common practice, no source]") {
    const Flue exchanger = flue_with({{"exchanger_blocked", 0.3}});
    CHECK(exchanger.suction > sound_flue().suction + 0.02);
    CHECK(exchanger.oxygen < sound_flue().oxygen - 1.0);
    CHECK(exchanger.carbon_monoxide > sound_flue().carbon_monoxide + 100.0);
}

TEST_CASE("exchanger blocked: no oxygen left in the flue, and the pressure switch does not catch it",
          "[draft][common practice, no source]") {
    Technician t = with({{"exchanger_blocked", 0.4}});
    t.drive(kOff).drive("manometer-a hose-tee-switch; leads pressure_switch.in pressure_switch.out");
    t.drive("analyser vent-connector").drive(kCall);
    t.await("burners light");
    t.drive("wait 5min");
    CHECK(t.shows("analyser oxygen") < 2.0);
    CHECK(t.shows("analyser CO air-free") > 400.0);
    CHECK(t.shows("multimeter") < 0.2); // closed
    CHECK(t.shows("manometer") < -0.60);
}

namespace {

/// Tee on either side of the blower's start, flames and O2 after it; the furnace is warm.
struct Step {
    double oxygen, suction_before, suction_after;
    int lifted;
};
Step blower_starts(const std::vector<Broken>& faults) {
    Technician t = with(faults, 12.0);
    t.drive("analyser vent-connector; burner-door off; manometer-a hose-tee-inducer");
    t.drive("thermostat-mode off; wait 4min; thermostat-mode heat");
    t.await("burners light");
    t.drive("wait 20s");
    t.await("A relay clicks"); // the blower's
    Step step{};
    step.suction_before = -t.shows("manometer");
    t.forget();
    t.drive("wait 4s");
    step.suction_after = -t.shows("manometer");
    t.drive("wait 8min");
    step.oxygen = t.shows("analyser oxygen");
    step.lifted = t.noticed("lifted off the burner");
    return step;
}

double flame_ua_with_blower(const std::vector<Broken>& faults) {
    Technician t = with(faults);
    t.drive(kOffBoth).drive(kFlameInSeries).drive(kCall);
    t.await("burners light");
    t.drive("wait 25s");
    const double before = t.shows("multimeter");
    t.await("Blower: a steady whirr");
    t.drive("wait 3s");
    return t.shows("multimeter") - before;
}

} // namespace

TEST_CASE("cracked exchanger: the flames lift when the blower starts",
          "[draft][common practice, no source]") {
    CHECK(blower_starts({}).lifted == 0);
    CHECK(blower_starts({{"exchanger_cracked", 0.6}}).lifted >= 1);
}

TEST_CASE("cracked exchanger: the flame current falls when the blower starts",
          "[draft][common practice, no source]") {
    CHECK(std::fabs(flame_ua_with_blower({})) < 0.1);
    CHECK(flame_ua_with_blower({{"exchanger_cracked", 0.6}}) < -0.3);
}

TEST_CASE("cracked exchanger: with the blower on, the tee loses a little more than on a sound one",
          "[draft][common practice, no source]") {
    const Step good = blower_starts({});
    const Step bad = blower_starts({{"exchanger_cracked", 0.7}});
    CHECK(bad.suction_before - bad.suction_after > good.suction_before - good.suction_after + 0.002);
    CHECK(bad.suction_after > 0.95 * good.suction_after);
}

TEST_CASE("cracked exchanger: O2 stands higher with the blower on than on a sound one",
          "[draft][common practice, no source]") {
    CHECK(blower_starts({{"exchanger_cracked", 0.7}}).oxygen >= blower_starts({}).oxygen + 0.2);
}
