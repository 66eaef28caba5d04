// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/replay.hpp"
#include "support/random_life.hpp"
#include "support/rig.hpp"

namespace lightoff::test {

/// An attempt in which random allowed things are done for `seconds`, recorded with a mark every 10 s.
inline lesson::Log record_random_life(std::uint64_t seed, double seconds) {
    const bench::Site& site = reference_site();
    furnace::Workspace workspace(site.model);
    lesson::Log log;
    log.seed = seed;
    bench::World world = lesson::arrive(site, call_for_heat(), seed, workspace);
    RandomHands hands(1000 + seed);
    log.last_tick = static_cast<std::uint64_t>(seconds * 20.0);
    while (world.tick < log.last_tick) {
        if (world.tick > 0 && world.tick % lesson::kMarkTicks == 0)
            log.marks.push_back({world.tick, lesson::world_hash(world)});
        if (world.tick % 20 == 7)
            if (const auto action = hands.choose(site, world)) {
                log.entries.push_back({world.tick, *action});
                bench::begin(site, world, *action);
            }
        bench::advance(site, world, workspace, 1);
    }
    log.marks.push_back({world.tick, lesson::world_hash(world)});
    return log;
}

} // namespace lightoff::test
