// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "lesson/replay.hpp"
#include "support/random_life.hpp"
#include "support/rig.hpp"
#include "units/random.hpp"

#include <cstring>

// The same bits however the time is cut, from whatever copy and workspace.

using lightoff::bench::World;
using lightoff::test::Rig;
namespace bench = lightoff::bench;
namespace furnace = lightoff::furnace;

namespace {

bool same(const World& a, const World& b) {
    return std::memcmp(&a, &b, sizeof(World)) == 0;
}

/// Set going: a thermostat turned up, and a fault that sets in later.
World start(std::uint64_t seed = 5) {
    World world = lightoff::lesson::begin_world(lightoff::test::reference_site(),
                                                lightoff::test::call_for_heat(), seed);
    world.inputs.set_point_k = 296.0;
    bench::Onset onset;
    onset.tick = 6000;
    onset.value = 0.9;
    onset.field = static_cast<std::uint32_t>(
        furnace::condition_field(lightoff::test::reference_model(), "air.ducts.registers_closed"));
    bench::set_onsets(world, std::vector<bench::Onset>{onset});
    return world;
}

World run_whole(std::uint64_t ticks) {
    const bench::Site& site = lightoff::test::reference_site();
    furnace::Workspace workspace(site.model);
    World world = start();
    bench::advance(site, world, workspace, ticks);
    return world;
}

constexpr std::uint64_t kTicks = 12000; // ten minutes

} // namespace

TEST_CASE("advance gives the same bits however it is cut") {
    const bench::Site& site = lightoff::test::reference_site();
    const World whole = run_whole(kTicks);
    for (std::uint64_t round = 0; round < 8; ++round) {
        furnace::Workspace workspace(site.model);
        World cut = start();
        std::uint64_t i = 0;
        while (cut.tick < kTicks) {
            const std::uint64_t most = round < 2 ? 1 + round : 700;
            const std::uint64_t piece = lightoff::units::random_bits(11, round, ++i) % (most + 1);
            bench::advance(site, cut, workspace, std::min(piece, kTicks - cut.tick));
        }
        INFO("round " << round << ", " << i << " pieces");
        CHECK(same(whole, cut));
    }
}

TEST_CASE("a copy goes on like its original") {
    const bench::Site& site = lightoff::test::reference_site();
    const World whole = run_whole(kTicks);
    furnace::Workspace workspace(site.model);
    World original = start();
    for (std::uint64_t at : {1ULL, 900ULL, 950ULL, 1570ULL, 5999ULL, 6001ULL, 9000ULL}) {
        bench::advance(site, original, workspace, at - original.tick);
        World copy = original;
        furnace::Workspace own(site.model);
        bench::advance(site, copy, own, kTicks - copy.tick);
        CHECK(same(whole, copy));
    }
    bench::advance(site, original, workspace, kTicks - original.tick);
    CHECK(same(whole, original));
}

TEST_CASE("a workspace holds nothing that changes a result") {
    const bench::Site& site = lightoff::test::reference_site();
    const World whole = run_whole(kTicks);

    SECTION("cold in every tick") {
        World world = start();
        while (world.tick < 2000) {
            furnace::Workspace cold(site.model);
            bench::advance(site, world, cold, 1);
        }
        CHECK(same(world, run_whole(2000)));
    }
    SECTION("used for other Worlds in between") {
        furnace::Workspace shared(site.model);
        World world = start();
        World other = start(6);
        other.inputs.line_voltage_v = 104.0;
        other.condition.draft.path.vent_blockage = 0.8;
        while (world.tick < kTicks) {
            bench::advance(site, world, shared, 37);
            bench::advance(site, other, shared, 11);
            other.inputs.blower_door_on ^= 1U;
            other.inputs.attachments[2] = {3, static_cast<std::int32_t>(4 + world.tick % 60), 10e6, 0.0, 0.0};
            if (kTicks - world.tick < 37)
                bench::advance(site, world, shared, kTicks - world.tick);
        }
        CHECK(same(whole, world));
    }
    SECTION("read from in between") {
        furnace::Workspace shared(site.model);
        World world = start();
        while (world.tick < kTicks) {
            bench::advance(site, world, shared, 100);
            static_cast<void>(bench::readouts(site.model, world, shared));
        }
        CHECK(same(whole, world));
    }
}

TEST_CASE("actions at any tick: cuts and copies make no difference") {
    const bench::Site& site = lightoff::test::reference_site();
    for (std::uint64_t life = 1; life <= 5; ++life) {
        INFO("life " << life);
        furnace::Workspace workspace(site.model);
        furnace::Workspace other_workspace(site.model);
        World world = start(life);
        World other = world;
        lightoff::test::RandomHands hands(life);
        for (int i = 0; i < 400; ++i) {
            if (const auto action = hands.choose(site, world)) {
                CHECK(bench::begin(site, world, *action).allowed);
                CHECK(bench::begin(site, other, *action).allowed);
            }
            const std::uint64_t ticks = 1 + hands.random(60);
            bench::advance(site, world, workspace, ticks);
            for (std::uint64_t t = 0; t < ticks; ++t)
                bench::advance(site, other, other_workspace, 1);
        }
        CHECK(same(world, other));
    }
}

TEST_CASE("seeds make different furnaces, the same seed the same") {
    Rig a(1);
    Rig b(1);
    Rig c(2);
    for (Rig* rig : {&a, &b, &c})
        rig->run(60.0);
    CHECK(same(a.world, b.world));
    CHECK_FALSE(same(a.world, c.world));
}
