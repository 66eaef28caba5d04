// SPDX-License-Identifier: MIT
#include "bench/history.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::bench {

History::History(const Site& site, std::vector<TimedAction> steps) : site_(&site), steps_(std::move(steps)) {
    std::stable_sort(steps_.begin(), steps_.end(),
                     [](const TimedAction& a, const TimedAction& b) { return a.tick < b.tick; });
}

void History::run(World& world, furnace::Workspace& workspace, std::uint64_t until_tick) {
    while (world.tick < until_tick) {
        while (next_ < steps_.size() && steps_[next_].tick <= world.tick && world.hands.busy == 0)
            begin(*site_, world, steps_[next_++].action);
        std::uint64_t stop = until_tick;
        if (next_ < steps_.size())
            stop = std::clamp(steps_[next_].tick, world.tick + 1, until_tick);
        advance(*site_, world, workspace, stop - world.tick);
    }
}

} // namespace lightoff::bench
