// SPDX-License-Identifier: MIT
#include "lesson/past.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::lesson {

Past::Past(const bench::Site& site, const bench::World& begin) : site_(&site), newest_(begin.tick) {
    copies_.offer(begin);
}

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
    copies_.offer(world);
}

bench::World Past::at(std::uint64_t tick, furnace::Workspace& workspace) const {
    tick = std::clamp(tick, first_tick(), newest_);
    bench::World world = copies_.last_until(tick);
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
    copies_.forget_after(newest_);
    std::erase_if(done_, [this](const Done& done) { return done.tick > newest_; });
}

} // namespace lightoff::lesson
