// SPDX-License-Identifier: MIT
#include "lesson/film.hpp"

#include <algorithm>

namespace lightoff::lesson {

void Film::see(const bench::World& world) {
    last_tick_ = world.tick;
    if (!frames_.empty() && world.tick < frames_.back().tick + every_ticks_)
        return;
    frames_.push_back(world);
    if (frames_.size() <= kMostFrames)
        return;
    std::vector<bench::World> kept;
    for (std::size_t i = 0; i < frames_.size(); i += 2)
        kept.push_back(frames_[i]);
    frames_ = std::move(kept);
    every_ticks_ *= 2;
}

bench::World Film::at(const bench::Site& site, std::uint64_t tick, furnace::Workspace& workspace) const {
    tick = std::clamp(tick, first_tick(), last_tick());
    const auto after =
        std::upper_bound(frames_.begin(), frames_.end(), tick,
                         [](std::uint64_t wanted, const bench::World& frame) { return wanted < frame.tick; });
    bench::World world = *(after - 1);
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
