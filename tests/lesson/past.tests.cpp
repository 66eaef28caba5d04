// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/difference.hpp"
#include "lesson/past.hpp"
#include "recorded_life.hpp"

// A running World's own past: any moment again, bit for bit, for as long as it may get.

namespace bench = lightoff::bench;
namespace lesson = lightoff::lesson;
using lesson::Past;

TEST_CASE("a past so long that copies are thinned out gives each moment again") {
    const bench::Site& site = lightoff::test::reference_site();
    bench::World world = lesson::begin_world(site, lightoff::test::call_for_heat(), 3);
    lightoff::furnace::Workspace workspace(site.model);
    Past past(site, world);
    const auto act = [&site](const char* words) {
        return [&site, action = bench::parse_action(site, words)](bench::World& w) {
            bench::begin(site, w, action);
        };
    };
    past.act(world, act("thermostat-set 72F"));
    std::vector<bench::World> seen;
    const std::uint64_t end = Past::kCopyTicks * (Past::kMostCopies + 40);
    while (world.tick < end) {
        past.pass(world, workspace);
        if (world.tick == 20001)
            past.act(world, act("disconnect off"));
        if (world.tick == 24003)
            past.act(world, act("disconnect on"));
        if (world.tick % 7001 == 0 || world.tick == 20001)
            seen.push_back(world);
    }
    CHECK(past.newest_tick() == end);
    for (const bench::World& then : seen) {
        const auto difference = bench::first_difference(then, past.at(then.tick, workspace));
        if (difference)
            FAIL_CHECK(bench::describe(*difference));
    }
    CHECK(past.deeds_at(20001).size() == 1);

    past.forget_after(20500);
    CHECK(past.newest_tick() == 20500);
    CHECK(past.deeds_at(24003).empty());
    CHECK(past.at(end, workspace).tick == 20500);
    CHECK(past.at(20500, workspace).inputs.disconnect_on == 0);
}
