// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/bench.hpp"
#include "bench/notebook.hpp"
#include "lesson/replay.hpp"
#include "support/rig.hpp"
#include "units/field_checks.hpp"

// A part that a new one has replaced keeps what it was like in that moment.

using namespace lightoff;
using namespace lightoff::test;

namespace {

class Bench {
public:
    explicit Bench(std::vector<lesson::FaultUse> faults)
        : workspace_(reference_model()), notebook_(reference_site()) {
        lesson::Scenario s = call_for_heat();
        s.faults = std::move(faults);
        world = lesson::begin_world(reference_site(), s, 0);
        for (const char* line : {"disconnect off", "burner-door off", "blower-door off"})
            act(line);
    }
    std::string refusal(const std::string& text) {
        return bench::check(reference_site(), world, bench::parse_action(reference_site(), text)).reason;
    }
    void act(const std::string& text) {
        INFO(text << ": " << refusal(text));
        REQUIRE(bench::begin(reference_site(), world, bench::parse_action(reference_site(), text)).allowed);
        while (world.hands.busy != 0) {
            bench::advance(reference_site(), world, workspace_, 1);
            notebook_.observe(world);
        }
    }
    const bench::Reading& test_old(const std::string& part) {
        act("test-old " + part);
        REQUIRE(notebook_.readings().back().taken == bench::Taken::old_part);
        return notebook_.readings().back();
    }
    bench::World world;

private:
    furnace::Workspace workspace_;
    bench::Notebook notebook_;
};

std::string text(const bench::Reading& reading) {
    return bench::tested_in_words(reference_site(), reading.part, reading.bands, reading.values);
}

} // namespace

TEST_CASE("old part: there is none before it is replaced, and some have no test") {
    Bench bench({});
    CHECK(bench.refusal("test-old igniter") == "No old hot-surface igniter lies on the bench.");
    bench.act("replace pressure_hose");
    bench.act("replace igniter_plug");
    CHECK(bench.refusal("test-old igniter_plug").find("no test on the bench") != std::string::npos);
    CHECK(bench.refusal("test-old pressure_hose").empty());
}

TEST_CASE("old part: it reads as it was when it came out, not as the new one") {
    Bench bench({{"igniter_open", 1.0}, {"blower_capacitor_weak", 1.0}, {"hose_plugged", 1.0}});
    for (const char* part : {"igniter", "blower_capacitor", "pressure_hose", "limit"})
        bench.act("replace " + std::string(part));
    CHECK(bench.test_old("igniter").values.front().has(instruments::kOverload));
    const double farad = instruments::value_of(bench.test_old("blower_capacitor").values.front()).value;
    CHECK(farad == Approx(0.35 * 15e-6).epsilon(0.1)); // the fault's end of a capacitor within its tolerance
    CHECK(text(bench.test_old("pressure_hose")).find("nothing passes") != std::string::npos);
    CHECK(text(bench.test_old("limit")).find("cold it is closed") != std::string::npos);
}

TEST_CASE("old part: a shorted cable shows its short, a sound one none") {
    Bench shorted({{"cable_shorted_r_c", 1.0}});
    shorted.act("replace thermostat_cable");
    const bench::Reading& cable = shorted.test_old("thermostat_cable");
    CHECK(instruments::value_of(cable.values[2]).value < 1.0);
    CHECK(cable.values[3].has(instruments::kOverload));
    Bench sound({});
    sound.act("replace thermostat_cable");
    CHECK(sound.test_old("thermostat_cable").values[2].has(instruments::kOverload));
}

TEST_CASE("old part: of two of a kind the last one is tested, and of many the oldest are gone") {
    Bench bench({{"igniter_open", 1.0}});
    bench.act("replace igniter");
    bench.act("replace igniter");
    CHECK_FALSE(bench.test_old("igniter").values.front().has(instruments::kOverload));
    for (const char* part : {"limit", "rollout", "filter"})
        bench.act("replace " + std::string(part));
    CHECK(bench.refusal("test-old igniter").empty());
    bench.act("replace board");
    CHECK(bench.refusal("test-old igniter") == "No old hot-surface igniter lies on the bench.");
    CHECK(bench.world.old_parts.count == bench::kMaxOldParts);
}

TEST_CASE("old part: what lies on the bench is of the World's hash, an empty bench is not") {
    bench::World world;
    const std::uint64_t empty = lesson::world_hash(world);
    bench::OldPart old;
    bench::lay_down(world.old_parts, old);
    const std::uint64_t one = lesson::world_hash(world);
    CHECK(one != empty);
    world.old_parts.part[0].band[3] = 1;
    CHECK(lesson::world_hash(world) != one);
    CHECK(units::visited_bytes(bench::OldParts{}) == sizeof(bench::OldParts));
    CHECK(units::visited_bytes(world) == sizeof(world));
}
