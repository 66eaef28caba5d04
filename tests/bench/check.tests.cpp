// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/random_life.hpp"
#include "support/rig.hpp"

#include <cmath>
#include <cstring>

// check is pure and says why not; begin does nothing that check refuses; an action takes its time.

using lightoff::test::Rig;
namespace bench = lightoff::bench;
namespace instruments = lightoff::instruments;

namespace {

std::string reason(const Rig& rig, const std::string& text) {
    return bench::check(rig.site, rig.world, bench::parse_action(rig.site, text)).reason;
}

} // namespace

TEST_CASE("a refusal says why, and changes nothing") {
    Rig rig;
    const bench::World before = rig.world;
    for (const std::string text :
         {"burner-door on", "blower-door on", "breaker on", "disconnect on", "gas-cock on", "filter on",
          "door-switch on", "leads board.R board.C", "leads-off", "leads limit.in limit.out"}) {
        INFO(text);
        const auto verdict = bench::begin(rig.site, rig.world, bench::parse_action(rig.site, text));
        CHECK_FALSE(verdict.allowed);
        CHECK(verdict.reason.size() > 10);
    }
    CHECK(std::memcmp(&before, &rig.world, sizeof before) == 0);
    CHECK(
        reason(rig, "leads board.R board.C").find("is in the blower compartment; take its door off first.") !=
        std::string::npos);
}

TEST_CASE("an action takes its time, while the furnace runs on, and the hands are busy") {
    Rig rig;
    rig.run(1.0);
    const auto verdict = bench::begin(rig.site, rig.world, bench::parse_action(rig.site, "blower-door off"));
    REQUIRE(verdict.allowed);
    CHECK(verdict.duration_ticks == 100);
    CHECK(reason(rig, "breaker off") == "Your hands are busy; wait until that is done.");
    bench::advance(rig.site, rig.world, rig.workspace, 100);
    CHECK(rig.world.inputs.blower_door_on == 1);
    bench::advance(rig.site, rig.world, rig.workspace, 1);
    CHECK(rig.world.inputs.blower_door_on == 0);
    CHECK(rig.world.hands.busy == 0);
    rig.run(1.0);
    CHECK(rig.world.state.board.powered == 0); // the door switch has opened
    rig.act("door-switch on");
    rig.run(2.0);
    CHECK(rig.world.state.board.powered == 1);
}

TEST_CASE("the manometer is zeroed while it is on, the meter's fuses are changed with its leads off") {
    Rig rig;
    CHECK(reason(rig, "zero") == "The manometer is off.");
    rig.act("blower-door off");
    rig.act("leads board.R board.C");
    CHECK(reason(rig, "meter-fuses") == "Take the multimeter's leads off first.");
    rig.act("leads-off");
    rig.act("meter-fuses");
    rig.act("manometer-a room");
    rig.act("manometer-b room");
    rig.run(60.0);
    rig.act("zero");
    rig.run(2.0);
    CHECK(std::abs(instruments::value_of(rig.world.bag.manometer.display).value) < 0.3); // Pa: a digit
}

TEST_CASE("the gas cock: its handle is what is seen and turned") {
    Rig rig;
    rig.run(120.0);
    REQUIRE(rig.board_state() == "run");
    rig.act("gas-cock off");
    rig.run(5.0);
    CHECK(rig.board_state() != "run");
    CHECK(reason(rig, "gas-cock off") == "The gas cock is already shut.");
    rig.act("gas-cock on");
    CHECK(rig.world.inputs.gas_cock_open == 1);

    // A cock whose plug stays shut looks like any other.
    Rig stuck;
    stuck.set("gas.cock_open", 0.0);
    stuck.run(120.0);
    CHECK(stuck.count_of("first burner lights") == 0);
    CHECK(reason(stuck, "gas-cock off").empty());
    CHECK(reason(stuck, "gas-cock on") == "The gas cock is already open.");
}

TEST_CASE("what a furnace does not have can't be turned or measured at") {
    const bench::Site site =
        lightoff::test::site_with(lightoff::files::read_equipment(lightoff::files::read_document(
            std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/equipment/natural-draft-standing-pilot.json")));
    const Rig rig(0, lightoff::test::call_for_heat(), site);
    for (const std::string text : {"spin inducer", "tachometer inducer-shaft", "manometer-a hose-tee-inducer",
                                   "manometer-b hose-tee-switch", "probe-1 inducer-motor-shell"}) {
        INFO(text);
        CHECK_THROWS_AS(bench::parse_action(site, text), std::invalid_argument);
        const bench::Action action = bench::parse_action(lightoff::test::reference_site(), text);
        CHECK(bench::check(site, rig.world, action).reason == "There is no such thing here.");
    }
    CHECK_NOTHROW(bench::parse_action(site, "spin blower"));
}

TEST_CASE("the ends of the thermostat's range come back from their text") {
    const bench::Site& site = lightoff::test::reference_site();
    for (const char* text : {"thermostat-set 40F", "thermostat-set 95F"}) {
        const bench::Action end = bench::parse_action(site, text);
        CHECK(bench::parse_action(site, bench::format_action(site, end)) == end);
    }
    for (const char* text : {"thermostat-set 39.9F", "thermostat-set 95.1F"})
        CHECK_THROWS(bench::parse_action(site, text));
}

TEST_CASE("text of an action comes back as the same action") {
    const bench::Site& site = lightoff::test::reference_site();
    lightoff::test::RandomHands hands(9);
    Rig rig;
    rig.world.inputs.burner_door_on = 0;
    rig.world.inputs.blower_door_on = 0;
    int tried = 0;
    for (int i = 0; i < 2000; ++i) {
        const auto action = hands.choose(site, rig.world);
        if (!action)
            continue;
        const std::string text = bench::format_action(site, *action);
        INFO(text);
        if (action->verb == bench::Verb::leads && action->target == static_cast<std::uint16_t>(action->value))
            continue;
        CHECK(bench::parse_action(site, text) == *action);
        ++tried;
    }
    CHECK(tried > 200);
}
