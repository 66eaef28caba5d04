// SPDX-License-Identifier: MIT
#pragma once
#include "bench/history.hpp"
#include "bench/milestones.hpp"
#include "bench/sequence.hpp"
#include "gui/cutaway/motion.hpp"
#include "gui/explore/timed_world.hpp"
#include "gui/trace/strip_chart.hpp"
#include "lesson/scenario.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace lightoff::explore {

/// The furnace of a scenario as it is: it runs in fixed steps, does what hands do, and keeps what the window
/// shows of its past. Knows no clock and no window: whoever owns it says how much time has gone by.
class RunningFurnace {
public:
    /// Site and scenario must outlive it.
    RunningFurnace(const bench::Site& site, const lesson::Scenario& scenario, std::uint64_t seed = 0);
    RunningFurnace(const RunningFurnace&) = delete;
    RunningFurnace& operator=(const RunningFurnace&) = delete;

    /// Lets `wall_s` pass at `speed` times real time, in whole ticks; the rest is kept for the next call.
    /// Never more than kMostTicks at once: a machine that can't keep up falls behind instead of standing
    /// still.
    void pass(double wall_s, double speed);
    /// Wall time goes by even while the furnace is held: doors and lamp come to their places.
    void pass_wall(double wall_s);
    void settle_motion() { motion_.jump(standing()); }
    /// One tick; `speed` only slows the marks that show movement.
    void tick(double speed = 1.0);

    /// Begins an action, as scripts write it. Returns the reason if it is refused, else nothing. In the past
    /// it makes what came after undone.
    std::string act(std::string_view action);

    const bench::Site& site() const { return *site_; }
    const furnace::Model& model() const { return site_->model; }
    /// The moment looked at: the newest unless somebody went back.
    const bench::World& world() const { return timed_.world(); }
    TimedWorld& timed() { return timed_; }
    const TimedWorld& timed() const { return timed_; }
    const bench::Gauges& gauges() const { return gauges_; }
    furnace::Workspace& workspace() { return timed_.workspace(); }
    const trace::Recording& recording() const { return timed_.recording(); }
    const std::vector<trace::Event>& events() const { return events_; }
    cutaway::CutawayScene scene() const; ///< as it is
    /// As the window shows it: doors and lamp on their way, and nothing moving if nothing is to.
    cutaway::CutawayScene shown() const;
    /// Nothing moves, but what is to be seen does come and go; see cutaway::stand_still.
    void set_motion(bool moves) { moves_ = moves; }
    /// Stops another scene where this one is stopped.
    void show_still(cutaway::CutawayScene& scene) const;
    /// A door or the lamp is not yet where it belongs.
    bool on_the_way() const { return motion_.moves(); }
    const cutaway::Travel& travel() const { return travel_; }
    double now_s() const { return seconds(world().tick); }
    double seconds(std::uint64_t tick) const;
    std::uint64_t tick_at(double seconds) const;

    /// The sequence so far; never empty.
    const std::vector<bench::SequenceStep>& steps() const { return steps_; }
    /// The step of a moment.
    std::size_t step_at(std::uint64_t tick) const;
    /// Its last moment: the newest one if it is still going on. There everything that it has brought about is
    /// to be seen, and what proves it.
    std::uint64_t end_of(std::size_t step) const;
    bool going_on(std::size_t step) const { return step + 1 == steps_.size(); }
    void go_to(std::uint64_t tick) { timed_.go_to(tick); }

    static constexpr int kMostTicks = 200;

private:
    void do_history();
    void look();
    void forget_after(std::uint64_t tick);
    cutaway::Standing standing() const;

    const bench::Site* site_;
    bench::Gauges gauges_;
    TimedWorld timed_;
    std::vector<bench::TimedAction> history_; ///< of the scenario, in order
    std::vector<std::uint64_t> history_done_; ///< when each so far was begun
    bench::MilestoneWatch watch_;
    bench::SequenceWatch sequence_;
    std::vector<bench::Milestone> news_;
    std::vector<bench::SequenceStep> steps_;
    std::vector<trace::Event> events_;
    cutaway::Travel travel_;
    cutaway::Motion motion_;
    bool moves_ = true;
    double left_over_s_ = 0;
};

} // namespace lightoff::explore
