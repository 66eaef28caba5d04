// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"

#include <cmath>
#include <map>

// Step check: with half the tick every interval between events stays within max(0.1 s, 0.5 %), every settled
// reading within 0.5 %.

using lightoff::test::Rig;

namespace {

const lightoff::bench::Site& half_tick_site() {
    static const lightoff::bench::Site site = lightoff::test::site_with(lightoff::files::read_equipment(
        lightoff::files::read_document(lightoff::test::kReferenceEquipment), 0.025));
    return site;
}

/// Scenarios and actions count in whole ticks: the same seconds are twice as many of them. An action that
/// keeps the hands busy for 40 ticks begins 40 ticks later, so that it is done in the same second.
lightoff::lesson::Scenario half_tick_scenario() {
    lightoff::lesson::Scenario scenario = lightoff::test::call_for_heat();
    for (auto& action : scenario.history)
        action.tick = 2 * action.tick + 40;
    return scenario;
}

struct Pair {
    Rig whole;
    Rig half{0, half_tick_scenario(), half_tick_site()};

    template <class Do>
    void both(Do what) {
        what(whole);
        what(half);
    }

    /// The events of one run, in its order, each against the event before: the other run's interval between
    /// the same two.
    void compare_events() const {
        std::map<std::string, int> seen;
        double before_s = *whole.time_of("thermostat closes R-W");
        double half_before_s = *half.time_of("thermostat closes R-W");
        std::size_t compared = 0;
        for (const auto& m : whole.milestones) {
            const int nth = ++seen[m.text];
            const double at_s = *whole.time_of(m.text, 0.0, nth);
            if (at_s <= before_s)
                continue;
            INFO(m.text << ", time " << nth << ", at " << at_s << " s");
            const auto half_at_s = half.time_of(m.text, 0.0, nth);
            REQUIRE(half_at_s);
            const double interval_s = at_s - before_s;
            CHECK(*half_at_s - half_before_s ==
                  Approx(interval_s).margin(std::max(0.1, 0.005 * interval_s) + 1e-9));
            before_s = at_s;
            half_before_s = *half_at_s;
            ++compared;
        }
        CHECK(compared > 3);
        CHECK(std::abs(static_cast<double>(whole.milestones.size()) -
                       static_cast<double>(half.milestones.size())) < 0.5);
    }

    void compare_readings() {
        const auto a = lightoff::bench::readouts(whole.model, whole.world, whole.workspace);
        const auto b = lightoff::bench::readouts(half.model, half.world, half.workspace);
        REQUIRE(a.size() == b.size());
        for (std::size_t i = 0; i < a.size(); ++i) {
            INFO(a[i].name);
            CHECK(b[i].value == Approx(a[i].value).epsilon(0.005).margin(1e-9));
        }
    }
};

} // namespace

TEST_CASE("half the tick: the tick is halved") {
    CHECK(half_tick_site().model.board.tick_s == 0.025);
    Rig half(0, half_tick_scenario(), half_tick_site());
    half.run(10.0);
    CHECK(half.world.tick == 400);
}

TEST_CASE("half the tick: a cycle has the same events") {
    Pair pair;
    pair.both([](Rig& r) { r.run(3600.0); });
    pair.compare_events();
}

TEST_CASE("half the tick: settled readings") {
    Pair pair;
    SECTION("warm-up, igniter hot") {
        pair.both([](Rig& r) { r.run(45.0); });
    }
    SECTION("steady run") {
        pair.both([](Rig& r) { r.run(900.0); });
    }
    SECTION("fan only") {
        pair.both([](Rig& r) {
            r.world.inputs.thermostat_mode = lightoff::control::ThermostatMode::off;
            r.world.inputs.thermostat_fan = lightoff::control::FanSwitch::on;
            r.run(300.0);
        });
    }
    pair.compare_readings();
}

TEST_CASE("half the tick: faults have the same events") {
    Pair pair;
    SECTION("no airflow: the limit cycles") {
        pair.both([](Rig& r) {
            r.open("blower.lead_common");
            r.run(1200.0);
        });
        CHECK(pair.whole.count_of("limit opens") >= 1);
    }
    SECTION("no gas: trials, then lockout") {
        pair.both([](Rig& r) {
            r.set("gas.cock_open", 0.0);
            r.run(600.0);
        });
        CHECK(pair.whole.board_state() == "soft_lockout");
    }
    SECTION("rod lead off in the run") {
        pair.both([](Rig& r) {
            r.run(200.0);
            r.open("harness.flame");
            r.run(300.0);
        });
    }
    SECTION("vent restricted: drops out hot") {
        pair.both([](Rig& r) {
            r.set("draft.path.vent_blockage", 0.84);
            r.run(900.0);
        });
        CHECK(pair.whole.count_of("pressure switch opens") >= 1);
    }
    SECTION("thermostat wires shorted: the fuse melts") {
        pair.both([](Rig& r) {
            r.run(20.0);
            r.bridge("thermostat.R.lug", "thermostat.C.lug", 0.002);
            r.run(60.0);
        });
        CHECK(pair.whole.count_of("control fuse melts") == 1);
    }
    SECTION("blower's capacitor open: the overload opens") {
        pair.both([](Rig& r) {
            r.open("blower_capacitor.element");
            r.run(1800.0);
        });
    }
    pair.compare_events();
}
