// SPDX-License-Identifier: MIT
#include "lesson/past.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::lesson {

Past::Past(const bench::Site& site, const bench::World& begin)
    : site_(&site), copies_{begin}, newest_(begin.tick) {}

void Past::act(bench::World& world, Deed deed) {
    deed(world);
    done_.push_back({world.tick, std::move(deed)});
}

std::vector<Past::Deed> Past::deeds_at(std::uint64_t tick) const {
    std::vector<Deed> deeds;
    auto next = std::lower_bound(done_.begin(), done_.end(), tick,
                                 [](const Done& done, std::uint64_t t) { return done.tick < t; });
    for (; next != done_.end() && next->tick == tick; ++next)
        deeds.push_back(next->deed);
    return deeds;
}

void Past::redo(bench::World& world) const {
    for (const Deed& deed : deeds_at(world.tick))
        deed(world);
}

void Past::pass(bench::World& world, furnace::Workspace& workspace) {
    bench::advance(*site_, world, workspace, 1);
    if (world.tick <= newest_) {
        redo(world);
        return;
    }
    newest_ = world.tick;
    keep(world);
}

void Past::keep(const bench::World& world) {
    if (world.tick < copies_.back().tick + every_)
        return;
    copies_.push_back(world);
    if (copies_.size() <= kMostCopies)
        return;
    std::vector<bench::World> kept;
    for (std::size_t i = 0; i < copies_.size(); i += 2)
        kept.push_back(copies_[i]);
    copies_ = std::move(kept);
    every_ *= 2;
}

bench::World Past::at(std::uint64_t tick, furnace::Workspace& workspace) const {
    tick = std::clamp(tick, first_tick(), newest_);
    const auto after =
        std::upper_bound(copies_.begin(), copies_.end(), tick,
                         [](std::uint64_t wanted, const bench::World& copy) { return wanted < copy.tick; });
    bench::World world = *(after - 1);
    redo(world);
    while (world.tick < tick) {
        bench::advance(*site_, world, workspace, 1);
        redo(world);
    }
    return world;
}

void Past::forget_after(std::uint64_t tick) {
    if (tick >= newest_)
        return;
    newest_ = std::max(tick, first_tick());
    std::erase_if(copies_, [this](const bench::World& copy) { return copy.tick > newest_; });
    std::erase_if(done_, [this](const Done& done) { return done.tick > newest_; });
}

} // namespace lightoff::lesson
