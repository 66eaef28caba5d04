// SPDX-License-Identifier: MIT
#include "gui/explore/timed_world.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::explore {
namespace {

/// For each lane: half an hour at 20 samples a second before the first merging, a quarter of a megabyte.
constexpr std::size_t kCells = std::size_t{1} << 15;

} // namespace

TimedWorld::TimedWorld(const bench::Site& site, const bench::Gauges& gauges, const bench::World& begin)
    : gauges_(&gauges), tick_s_(site.model.board.tick_s), past_(site, begin), world_(begin),
      workspace_(site.model), recording_(gauges.list().size(), kCells) {
    record();
}

const std::vector<double>& TimedWorld::readings() {
    if (!read_) {
        gauges_->read(world_, workspace_, readings_);
    }
    read_ = true;
    return readings_;
}

bool TimedWorld::tick() {
    const bool is_new = !in_the_past();
    past_.pass(world_, workspace_);
    read_ = false;
    if (is_new) {
        record();
    }
    return is_new;
}

void TimedWorld::go_to(std::uint64_t tick) {
    tick = std::clamp(tick, first_tick(), newest_tick());
    if (tick == world_.tick) {
        return;
    }
    // A few ticks on are sooner passed than looked up.
    if (tick > world_.tick && tick - world_.tick < lesson::Past::kCopyTicks / 2) {
        while (world_.tick < tick) {
            past_.pass(world_, workspace_);
        }
    } else {
        world_ = past_.at(tick, workspace_);
    }
    read_ = false;
}

void TimedWorld::act(lesson::Past::Deed deed) {
    forget_after(world_.tick);
    past_.act(world_, std::move(deed));
    read_ = false;
}

void TimedWorld::forget_after(std::uint64_t tick) {
    go_to(std::min(world_.tick, tick));
    if (tick < newest_tick()) {
        past_.forget_after(tick);
        recording_.clear_after((static_cast<double>(tick) + 0.5) * tick_s_);
    }
}

void TimedWorld::record() {
    const std::vector<double>& values = readings();
    sample_.assign(values.begin(), values.end());
    recording_.append(static_cast<double>(world_.tick) * tick_s_, sample_);
}

} // namespace lightoff::explore
