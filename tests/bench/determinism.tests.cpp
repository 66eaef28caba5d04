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
    World world = lightoff::lesson::begin_world(lightoff::test::reference_model(),
                                                lightoff::test::call_for_heat(), seed);
    world.inputs.set_point_k = 296.0;
    const bench::Onset onset{
        6000, 0.9, furnace::condition_field(lightoff::test::reference_model(), "air.ducts.registers_closed")};
    bench::set_onsets(world, std::vector<bench::Onset>{onset});
    return world;
}

World run_whole(std::uint64_t ticks) {
    const furnace::Model& model = lightoff::test::reference_model();
    furnace::Workspace workspace(model);
    World world = start();
    bench::advance(model, world, workspace, ticks);
    return world;
}

constexpr std::uint64_t kTicks = 12000; // ten minutes

} // namespace

TEST_CASE("advance gives the same bits however it is cut") {
    const furnace::Model& model = lightoff::test::reference_model();
    const World whole = run_whole(kTicks);
    for (std::uint64_t round = 0; round < 8; ++round) {
        furnace::Workspace workspace(model);
        World cut = start();
        std::uint64_t i = 0;
        while (cut.tick < kTicks) {
            const std::uint64_t most = round < 2 ? 1 + round : 700;
            const std::uint64_t piece = lightoff::units::random_bits(11, round, ++i) % (most + 1);
            bench::advance(model, cut, workspace, std::min(piece, kTicks - cut.tick));
        }
        INFO("round " << round << ", " << i << " pieces");
        CHECK(same(whole, cut));
    }
}

TEST_CASE("a copy goes on like its original") {
    const furnace::Model& model = lightoff::test::reference_model();
    const World whole = run_whole(kTicks);
    furnace::Workspace workspace(model);
    World original = start();
    for (std::uint64_t at : {1ULL, 900ULL, 950ULL, 1570ULL, 5999ULL, 6001ULL, 9000ULL}) {
        bench::advance(model, original, workspace, at - original.tick);
        World copy = original;
        furnace::Workspace own(model);
        bench::advance(model, copy, own, kTicks - copy.tick);
        CHECK(same(whole, copy));
    }
    bench::advance(model, original, workspace, kTicks - original.tick);
    CHECK(same(whole, original));
}

TEST_CASE("a workspace holds nothing that changes a result") {
    const furnace::Model& model = lightoff::test::reference_model();
    const World whole = run_whole(kTicks);

    SECTION("cold in every tick") {
        World world = start();
        while (world.tick < 2000) {
            furnace::Workspace cold(model);
            bench::advance(model, world, cold, 1);
        }
        CHECK(same(world, run_whole(2000)));
    }
    SECTION("used for other Worlds in between") {
        furnace::Workspace shared(model);
        World world = start();
        World other = start(6);
        other.inputs.line_voltage_v = 104.0;
        other.condition.draft.path.vent_blockage = 0.8;
        while (world.tick < kTicks) {
            bench::advance(model, world, shared, 37);
            bench::advance(model, other, shared, 11);
            other.inputs.blower_door_on ^= 1U;
            other.inputs.attachments[2] = {3, static_cast<std::int32_t>(4 + world.tick % 60), 10e6, 0.0, 0.0};
            if (kTicks - world.tick < 37)
                bench::advance(model, world, shared, kTicks - world.tick);
        }
        CHECK(same(whole, world));
    }
    SECTION("read from in between") {
        furnace::Workspace shared(model);
        World world = start();
        while (world.tick < kTicks) {
            bench::advance(model, world, shared, 100);
            static_cast<void>(bench::readouts(model, world, shared));
        }
        CHECK(same(whole, world));
    }
}

TEST_CASE("actions at any tick: cuts and copies make no difference") {
    const furnace::Model& model = lightoff::test::reference_model();
    for (std::uint64_t life = 1; life <= 5; ++life) {
        INFO("life " << life);
        furnace::Workspace workspace(model);
        furnace::Workspace other_workspace(model);
        World world = start(life);
        World other = world;
        lightoff::test::RandomHands hands(life);
        for (int i = 0; i < 400; ++i) {
            if (const auto action = hands.choose(model, world)) {
                CHECK(bench::begin(model, world, *action).allowed);
                CHECK(bench::begin(model, other, *action).allowed);
            }
            const std::uint64_t ticks = 1 + hands.random(60);
            bench::advance(model, world, workspace, ticks);
            for (std::uint64_t t = 0; t < ticks; ++t)
                bench::advance(model, other, other_workspace, 1);
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
