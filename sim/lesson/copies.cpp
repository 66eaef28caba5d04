// SPDX-License-Identifier: MIT
#include "lesson/copies.hpp"

#include <algorithm>

namespace lightoff::lesson {

void Copies::offer(const bench::World& world) {
    if (!kept_.empty() && world.tick < kept_.back().tick + every_ticks_)
        return;
    kept_.push_back(world);
    if (kept_.size() <= most_)
        return;
    std::vector<bench::World> every_second;
    for (std::size_t i = 0; i < kept_.size(); i += 2)
        every_second.push_back(kept_[i]);
    kept_ = std::move(every_second);
    every_ticks_ *= 2;
}

void Copies::forget_after(std::uint64_t tick) {
    std::erase_if(kept_, [tick](const bench::World& copy) { return copy.tick > tick; });
}

const bench::World& Copies::last_until(std::uint64_t tick) const {
    const auto after =
        std::upper_bound(kept_.begin(), kept_.end(), tick,
                         [](std::uint64_t wanted, const bench::World& copy) { return wanted < copy.tick; });
    return after == kept_.begin() ? *after : *(after - 1);
}

} // namespace lightoff::lesson
