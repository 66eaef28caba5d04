// SPDX-License-Identifier: MIT
#include "bench/difference.hpp"
#include "furnace/condition_paths.hpp"
#include "gui/explore/parameter_words.hpp"
#include "gui/explore_session.hpp"

#include <cmath>

// What-if: sliders turn numbers of the Condition in a furnace beside; readings follow from the physics.

using namespace lightoff;
using explore::RunningFurnace;
using explore::WhatIf;
using platform::Key;
using test::call_for_heat;
using Session = test::ExploreSession;

namespace {

std::size_t parameter_at(const WhatIf& what_if, const std::string& path) {
    for (std::size_t i = 0; i < what_if.parameters().size(); ++i) {
        if (what_if.parameters()[i].path == path) {
            return i;
        }
    }
    FAIL("no parameter " << path);
    return 0;
}

/// A furnace and one beside it.
struct Pair {
    RunningFurnace as_is{call_for_heat().site, call_for_heat().scenario};
    WhatIf what_if{as_is};

    void run_to(double seconds) {
        while (as_is.now_s() < seconds) {
            as_is.tick();
            what_if.follow();
        }
    }
    double now(const std::string& gauge) { return as_is.timed().readings()[as_is.gauges().find(gauge)]; }
    double then(const std::string& gauge) { return what_if.beside().readings()[as_is.gauges().find(gauge)]; }
    bool differs(const std::string& gauge) {
        const std::vector<std::size_t> all = what_if.differing();
        return std::find(all.begin(), all.end(), as_is.gauges().find(gauge)) != all.end();
    }
};

} // namespace

TEST_CASE("every number of the Condition that this furnace has is a parameter, found by typing its name") {
    RunningFurnace furnace(call_for_heat().site, call_for_heat().scenario);
    WhatIf what_if(furnace);
    const std::vector<sheet::Entry> entries = explore::parameter_entries(what_if.parameters());
    CHECK(entries.size() == what_if.parameters().size());
    const auto found = [&](const std::string& typed) {
        return std::count_if(entries.begin(), entries.end(),
                             [&](const sheet::Entry& entry) { return sheet::matches(entry, typed); });
    };
    std::size_t in_use = 0;
    for (const furnace::ConditionPath& path : furnace::condition_paths(call_for_heat().site.model)) {
        // Burners and settings that it does not have; bridges stand as shorts, by the nodes that touch.
        const bool spare =
            path.path.starts_with("wiring.bridges") || path.path.find("[4]") != std::string::npos ||
            path.path.find("[5]") != std::string::npos || path.path.find("[6]") != std::string::npos ||
            path.path.find("[7]") != std::string::npos || path.path == "board.choice[2]" ||
            path.path == "board.choice[3]";
        if (path.in_use && !spare) {
            ++in_use;
            CAPTURE(path.path);
            CHECK(found(path.path) >= 1);
        }
    }
    CHECK(what_if.parameters().size() == in_use + call_for_heat().site.catalogue.bridges.size());
    CHECK(found("hose plug") >= 1);
    CHECK(found("Filter clogged") + found("filter loading") >= 1);
    CHECK(found("no such thing") == 0);
}

TEST_CASE("a slider leads from its healthy value to its ends and back, and stays where it was put") {
    RunningFurnace furnace(call_for_heat().site, call_for_heat().scenario);
    WhatIf what_if(furnace);
    for (const faults::Parameter& p : what_if.parameters()) {
        CAPTURE(p.path, p.healthy, p.low, p.high);
        CHECK(std::isfinite(p.low));
        CHECK(std::isfinite(p.high));
        CHECK(p.low != p.high);
        CHECK(p.at(p.share_of(p.healthy)) == p.healthy); // exactly
        CHECK(p.at(1.0) == p.high);
        for (const double share : {0.0, 0.1, 0.33, 0.5, 0.77, 1.0}) {
            const double value = p.at(share);
            CHECK(p.at(p.share_of(value)) == Approx(value).epsilon(1e-9));
            CHECK_FALSE(explore::parameter_text(p, value).empty());
        }
        // Its faults lie on it.
        CHECK(p.share_of(p.low) <= p.share_of(p.high));
    }
    for (const faults::Fault& fault : call_for_heat().site.catalogue.faults) {
        for (const faults::Change& change : fault.changes) {
            for (const faults::Parameter& p : what_if.parameters()) {
                if (p.bridge < 0 && p.field == change.field) {
                    CAPTURE(fault.id, p.path);
                    CHECK(p.at(p.share_of(change.most)) == Approx(change.most).epsilon(0.03));
                }
            }
        }
    }
}

TEST_CASE("with every slider at its healthy value nothing differs, to the last bit") {
    Pair pair;
    pair.run_to(30);
    for (std::size_t i = 0; i < pair.what_if.parameters().size(); ++i) {
        REQUIRE(pair.what_if.set(i, pair.what_if.parameters()[i].healthy).empty());
    }
    pair.run_to(200); // through ignition
    REQUIRE(pair.what_if.is_there());
    CHECK_FALSE(bench::first_difference(pair.as_is.world(), pair.what_if.beside().world()));
    CHECK(pair.what_if.differing().empty());
}

// Signs of an overfired furnace: common practice; input by the square root of the pressures is the orifice
// law (NFPA 54, annex on orifices, from memory).
TEST_CASE(
    "more manifold pressure: clocked rate, temperature rise and stack up, oxygen down, wiring as it was") {
    Pair pair;
    pair.run_to(400);
    const double more_pa = units::inwc_to_pa(1.0);
    REQUIRE(pair.what_if.set(parameter_at(pair.what_if, "gas.regulator_drift"), more_pa).empty());
    pair.run_to(900);
    const double ratio = pair.then("manifold pressure") / pair.now("manifold pressure");
    CHECK(ratio == Approx(4.5 / 3.5).epsilon(0.02));
    CHECK(pair.then("input rate") / pair.now("input rate") == Approx(std::sqrt(ratio)).epsilon(0.01));
    CHECK(pair.then("dial time") < pair.now("dial time"));
    CHECK(pair.then("temperature rise") > pair.now("temperature rise") + 3);
    CHECK(pair.then("oxygen") < pair.now("oxygen") - 0.5);
    CHECK(pair.then("flue gas over room") > pair.now("flue gas over room"));
    for (const char* linked :
         {"manifold pressure", "input rate", "dial time", "temperature rise", "oxygen"}) {
        CAPTURE(linked);
        CHECK(pair.differs(linked));
    }
    for (const char* unlinked : {"control, R-C", "line, L-N at the board", "gas valve", "igniter plug",
                                 "pressure switch", "limit", "progress lamp", "outdoors", "blower speed"}) {
        CAPTURE(unlinked);
        CHECK_FALSE(pair.differs(unlinked));
    }
}

TEST_CASE("every slider at every place leaves a furnace that can be") {
    RunningFurnace furnace(call_for_heat().site, call_for_heat().scenario);
    while (furnace.now_s() < 100) {
        furnace.tick();
    }
    WhatIf what_if(furnace);
    furnace::Workspace workspace(furnace.model());
    std::vector<double> readings;
    for (const faults::Parameter& p : what_if.parameters()) {
        for (const double share : {0.0, 0.5, 1.0}) {
            bench::World world = furnace.world();
            faults::set(call_for_heat().site.catalogue, p, p.at(share), world.condition);
            bench::advance(call_for_heat().site, world, workspace, 30);
            furnace.gauges().read(world, workspace, readings);
            CAPTURE(p.path, share, p.at(share));
            CHECK(std::all_of(readings.begin(), readings.end(), [](double v) { return std::isfinite(v); }));
        }
    }
}

TEST_CASE("it forks from the moment looked at, can be looked back on, and goes with the last slider") {
    Pair pair;
    pair.run_to(100);
    const std::size_t drift = parameter_at(pair.what_if, "gas.regulator_drift");
    const std::size_t filter = parameter_at(pair.what_if, "air.ducts.filter_loading");
    pair.as_is.go_to(pair.as_is.tick_at(70));
    REQUIRE(pair.what_if.set(drift, 200).empty());
    CHECK(pair.what_if.begins_tick() == pair.as_is.tick_at(70));
    CHECK(pair.what_if.value(drift) == 200);
    CHECK(pair.what_if.value_as_it_is(drift) == 0);
    pair.as_is.go_to(pair.as_is.timed().newest_tick());
    for (int i = 0; i < 10 && !pair.what_if.is_there(); ++i) {
        pair.what_if.follow(); // it runs after, a piece at a time
    }
    REQUIRE(pair.what_if.is_there());
    const bench::World first_time = pair.what_if.beside().world();
    pair.as_is.go_to(pair.as_is.tick_at(80));
    pair.what_if.follow();
    pair.as_is.go_to(pair.as_is.timed().newest_tick());
    pair.what_if.follow();
    CHECK_FALSE(bench::first_difference(first_time, pair.what_if.beside().world()));
    // Before the fork there is nothing beside.
    pair.as_is.go_to(pair.as_is.tick_at(60));
    pair.what_if.follow();
    CHECK_FALSE(pair.what_if.is_there());
    CHECK(pair.what_if.differing().empty());
    CHECK(pair.what_if.value(drift) == 0);
    // A turn there begins anew, with the others as they were.
    REQUIRE(pair.what_if.set(filter, 5).empty());
    CHECK(pair.what_if.begins_tick() == pair.as_is.tick_at(60));
    CHECK(pair.what_if.value(drift) == 200);
    CHECK(pair.what_if.value(filter) == 5);
    pair.what_if.all_healthy();
    CHECK(pair.what_if.value(drift) == 0);
    CHECK_FALSE(bench::first_difference(pair.as_is.world(), pair.what_if.beside().world()));
    pair.what_if.put_away(drift);
    CHECK(pair.what_if.exists());
    pair.what_if.put_away(filter);
    CHECK_FALSE(pair.what_if.exists());
}

TEST_CASE("hands work at both furnaces") {
    Pair pair;
    pair.run_to(100);
    const std::size_t filter = parameter_at(pair.what_if, "air.ducts.filter_loading");
    REQUIRE(pair.what_if.set(filter, pair.what_if.parameters()[filter].healthy).empty());
    CHECK(pair.as_is.act("gas-cock off").empty());
    pair.what_if.follow();
    pair.run_to(130);
    CHECK(pair.as_is.world().inputs.gas_cock_open == 0);
    CHECK_FALSE(bench::first_difference(pair.as_is.world(), pair.what_if.beside().world()));
    // And if somebody goes back and does another thing.
    pair.as_is.go_to(pair.as_is.tick_at(110));
    CHECK(pair.as_is.act("thermostat-mode off").empty());
    pair.what_if.follow();
    pair.run_to(160);
    CHECK_FALSE(bench::first_difference(pair.as_is.world(), pair.what_if.beside().world()));
}

TEST_CASE("a parameter is found by typing, laid out, turned by mouse and by keyboard, and put back") {
    Session s{call_for_heat().scenario};
    WhatIf& what_if = s.window.what_if();
    while (s.now_s() < 100) {
        s.window.furnace().tick();
    }
    s.window.set_paused(true);
    s.window.show(explore::View::WhatIf);
    s.frame();
    CHECK(s.shows("Choose a parameter"));
    // Into the field by Tab, then letters; keys of the page do nothing meanwhile.
    for (int i = 0; i < 40 && s.find("filter loading") == nullptr; ++i) {
        s.tap(Key::Tab);
        s.type("filter loading");
        s.frame();
    }
    REQUIRE(s.find("filter loading") != nullptr);
    CHECK(ImGui::GetIO().WantTextInput);
    const double speed = s.window.speed();
    s.tap(Key::Digit4);
    CHECK(s.window.speed() == speed);
    s.click("filter loading");
    const std::size_t filter = parameter_at(what_if, "air.ducts.filter_loading");
    REQUIRE(what_if.is_chosen(filter));
    CHECK_FALSE(what_if.exists());
    // By keyboard: Tab to the slider, the arrow turns it.
    s.click("Healthy");
    CHECK(what_if.exists());
    CHECK(what_if.value(filter) == what_if.parameters()[filter].healthy);
    ImGui::GetIO().MousePos = {-1, -1};
    bool turned = false;
    for (int i = 0; i < 80 && !turned; ++i) {
        s.tap(Key::Tab);
        s.tap(Key::Right);
        turned = what_if.value(filter) != what_if.parameters()[filter].healthy;
    }
    CHECK(turned);
    for (int i = 0; i < 10; ++i) {
        s.tap(Key::Right);
    }
    CHECK(what_if.value(filter) > 1.2 * what_if.parameters()[filter].healthy);
    s.tap(Key::Home);
    CHECK(what_if.value(filter) == what_if.parameters()[filter].healthy);
    s.click("Put away");
    CHECK_FALSE(what_if.exists());
}

TEST_CASE("what differs is marked in the readings, in the steps and on the paper") {
    Session s{call_for_heat().scenario};
    WhatIf& what_if = s.window.what_if();
    while (s.now_s() < 400) {
        s.window.furnace().tick();
    }
    s.window.set_paused(true);
    CHECK_FALSE(s.shows("what if"));
    REQUIRE(what_if.set(parameter_at(what_if, "gas.regulator_drift"), units::inwc_to_pa(0.5)).empty());
    s.window.set_paused(false);
    s.let_pass(20);
    s.window.set_paused(true);
    REQUIRE(what_if.is_there());
    const std::size_t manifold = s.window.furnace().gauges().find("manifold pressure");
    const std::string two = canvas::figure(what_if.beside().readings()[manifold], 2);
    const std::string three = canvas::figure(what_if.beside().readings()[manifold], 3);
    s.window.show(explore::View::Readings);
    CHECK(s.shows(two));
    CHECK(s.shows("what if")); // over the second column of the paper
    s.window.show(explore::View::WhatIf);
    CHECK(s.shows(three));
    CHECK(s.shows("+0.5"));
    CHECK(s.shows("As it is"));
    s.tap(Key::W);
    s.frame();
}

TEST_CASE("any quantity is put on the paper by typing its name, and taken off again") {
    Session s{call_for_heat().scenario};
    s.window.set_paused(true);
    s.frame();
    const std::size_t before = s.window.lanes().chosen.size();
    s.tap(Key::T);
    CHECK(s.window.lanes().open);
    const std::size_t oxygen = s.window.furnace().gauges().find("oxygen");
    const auto is_on = [&] {
        const std::vector<std::size_t>& chosen = s.window.lanes().chosen;
        return std::find(chosen.begin(), chosen.end(), oxygen) != chosen.end();
    };
    CHECK_FALSE(is_on());
    s.window.lanes().search = "oxygen";
    s.click("oxygen, %");
    CHECK(is_on());
    CHECK(s.window.lanes().chosen.size() == before + 1);
    s.click("oxygen, %");
    CHECK_FALSE(is_on());
    s.tap(Key::T);
    CHECK_FALSE(s.window.lanes().open);
}
