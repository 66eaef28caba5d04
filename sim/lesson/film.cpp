// SPDX-License-Identifier: MIT
#include "lesson/film.hpp"

#include <algorithm>

namespace lightoff::lesson {

void Film::see(const bench::World& world) {
    last_tick_ = world.tick;
    frames_.offer(world);
}

bench::World Film::at(const bench::Site& site, std::uint64_t tick, furnace::Workspace& workspace) const {
    tick = std::clamp(tick, first_tick(), last_tick());
    bench::World world = frames_.last_until(tick);
    auto next =
        std::lower_bound(entries_.begin(), entries_.end(), world.tick,
                         [](const Log::Entry& entry, std::uint64_t from) { return entry.tick < from; });
    while (world.tick < tick) {
        for (; next != entries_.end() && next->tick == world.tick; ++next)
            bench::begin(site, world, next->action);
        const std::uint64_t stop = next == entries_.end() ? tick : std::min(tick, next->tick);
        bench::advance(site, world, workspace, stop - world.tick);
    }
    return world;
}

} // namespace lightoff::lesson
