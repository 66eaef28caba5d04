// SPDX-License-Identifier: MIT
#pragma once
#include "bench/milestones.hpp"
#include "gui/cutaway/scene.hpp"
#include "gui/trace/recording.hpp"
#include "gui/trace/strip_chart.hpp"
#include "lesson/scenario.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace lightoff::explore {

/// A World that runs in fixed steps, with what the window keeps of its past. Knows no clock and no window:
/// whoever owns it says how much time has gone by.
class RunningFurnace {
public:
    /// Model and scenario must outlive it.
    RunningFurnace(const bench::Site& site, const lesson::Scenario& scenario, std::uint64_t seed = 0);

    /// Lets `wall_s` pass at `speed` times real time, in whole ticks; the rest is kept for the next call.
    /// Never more than kMostTicks at once: a machine that can't keep up falls behind instead of standing
    /// still.
    void pass(double wall_s, double speed);
    /// One tick; `speed` only slows the marks that show movement.
    void tick(double speed = 1.0);

    /// Begins an action, as scripts write it. Returns the reason if it is refused, else nothing.
    std::string act(std::string_view action);

    const furnace::Model& model() const { return site_->model; }
    const bench::World& world() const { return world_; }
    furnace::Workspace& workspace() { return workspace_; }
    const trace::Recording& recording() const { return recording_; }
    const std::vector<trace::Event>& events() const { return events_; }
    cutaway::CutawayScene scene() const { return cutaway::make_scene(site_->model, world_, travel_); }
    double now_s() const;

    static constexpr int kMostTicks = 200;

private:
    void record();

    const bench::Site* site_;
    bench::World world_;
    furnace::Workspace workspace_;
    bench::History history_;
    bench::MilestoneWatch watch_;
    std::vector<bench::Milestone> news_;
    trace::Recording recording_;
    std::vector<trace::Event> events_;
    cutaway::Travel travel_;
    double left_over_s_ = 0;
};

} // namespace lightoff::explore
