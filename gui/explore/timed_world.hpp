// SPDX-License-Identifier: MIT
#pragma once
#include "bench/gauges.hpp"
#include "gui/trace/recording.hpp"
#include "lesson/past.hpp"

#include <cstdint>
#include <vector>

namespace lightoff::explore {

/// A World that runs, and that can be looked back on: its past, a recording of all its gauges, and the moment
/// that is looked at. Knows no clock and no window.
class TimedWorld {
public:
    /// All of them must outlive it. `begin` is the first moment.
    TimedWorld(const bench::Site& site, const bench::Gauges& gauges, const bench::World& begin);

    /// The moment looked at.
    const bench::World& world() const { return world_; }
    std::uint64_t newest_tick() const { return past_.newest_tick(); }
    std::uint64_t first_tick() const { return past_.first_tick(); }
    bool in_the_past() const { return world_.tick < newest_tick(); }
    const lesson::Past& past() const { return past_; }
    const trace::Recording& recording() const { return recording_; }
    furnace::Workspace& workspace() { return workspace_; }
    /// Of all gauges at the moment looked at.
    const std::vector<double>& readings();

    /// On by one tick; true if it has never been before.
    bool tick();
    /// To the nearest moment that there is.
    void go_to(std::uint64_t tick);
    /// In the past whatever came after is forgotten.
    void act(lesson::Past::Deed deed);
    void forget_after(std::uint64_t tick);

private:
    void record();

    const bench::Gauges* gauges_;
    double tick_s_;
    lesson::Past past_;
    bench::World world_;
    furnace::Workspace workspace_;
    trace::Recording recording_;
    std::vector<double> readings_;
    bool read_ = false; ///< `readings_` are those of the moment looked at
    std::vector<float> sample_;
};

} // namespace lightoff::explore
