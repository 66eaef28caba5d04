// SPDX-License-Identifier: MIT
#include "gui/explore/running_furnace.hpp"

#include "gui/explore/lanes.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace lightoff::explore {
namespace {

lesson::Past::Deed begin_of(const bench::Site& site, const bench::Action& action) {
    return [&site, action](bench::World& world) { bench::begin(site, world, action); };
}

} // namespace

RunningFurnace::RunningFurnace(const bench::Site& site, const lesson::Scenario& scenario, std::uint64_t seed)
    : site_(&site), gauges_(site.model), timed_(site, gauges_, lesson::begin_world(site, scenario, seed)),
      history_(lesson::history_of(site, scenario)), watch_(site.model), sequence_(site.model) {
    std::stable_sort(history_.begin(), history_.end(),
                     [](const auto& a, const auto& b) { return a.tick < b.tick; });
    travel_ = cutaway::travel_at_rest(world());
    look();
    settle_motion();
    while (world().tick < scenario.arrive_after_ticks) {
        tick();
    }
}

double RunningFurnace::seconds(std::uint64_t tick) const {
    return static_cast<double>(tick) * site_->model.board.tick_s;
}

std::uint64_t RunningFurnace::tick_at(double seconds) const {
    return static_cast<std::uint64_t>(std::llround(std::max(0.0, seconds) / site_->model.board.tick_s));
}

cutaway::Standing RunningFurnace::standing() const {
    return cutaway::standing_of(*site_, bench::perceive(*site_, world()));
}

cutaway::CutawayScene RunningFurnace::scene() const {
    cutaway::CutawayScene scene = cutaway::make_scene(site_->model, world(), travel_);
    const bench::WornParts worn = bench::all_wear(*site_, world());
    scene.wear = cutaway::marks_of(*site_, worn);
    scene.traces = cutaway::traces_of(*site_, worn);
    return scene;
}

cutaway::CutawayScene RunningFurnace::shown() const {
    cutaway::CutawayScene scene = this->scene();
    motion_.show_in(scene);
    show_still(scene);
    return scene;
}

void RunningFurnace::show_still(cutaway::CutawayScene& scene) const {
    if (!moves_)
        cutaway::stand_still(scene);
}

void RunningFurnace::pass_wall(double wall_s) {
    motion_.go_on(standing(), wall_s, moves_);
}

void RunningFurnace::pass(double wall_s, double speed) {
    const double tick_s = site_->model.board.tick_s;
    left_over_s_ += wall_s * speed;
    for (int i = 0; left_over_s_ >= tick_s; ++i) {
        if (i == kMostTicks) {
            left_over_s_ = 0;
            return;
        }
        left_over_s_ -= tick_s;
        tick(speed);
    }
}

void RunningFurnace::tick(double speed) {
    if (!timed_.in_the_past()) {
        do_history();
    }
    const bool is_new = timed_.tick();
    if (moves_)
        cutaway::move(travel_, site_->model, world(), site_->model.board.tick_s, speed);
    if (is_new) {
        look();
    }
}

/// What the scenario's people do; what is due waits for the hands, as in bench::History.
void RunningFurnace::do_history() {
    while (history_done_.size() < history_.size()) {
        const bench::TimedAction& next = history_[history_done_.size()];
        if (next.tick > world().tick || world().hands.busy != 0) {
            return;
        }
        timed_.act(begin_of(*site_, next.action));
        history_done_.push_back(world().tick);
    }
}

void RunningFurnace::look() {
    sequence_.look(world(), steps_);
    news_.clear();
    watch_.look(world(), news_);
    for (const bench::Milestone& milestone : news_) {
        if (const std::optional<std::string> name = flag_of(milestone)) {
            events_.push_back({seconds(milestone.tick), *name});
        }
    }
}

std::string RunningFurnace::act(std::string_view action) {
    try {
        const bench::Action wanted = bench::parse_action(*site_, action);
        const bench::Verdict verdict = bench::check(*site_, world(), wanted);
        if (!verdict.allowed) {
            return verdict.reason;
        }
        const bool back = timed_.in_the_past();
        timed_.act(begin_of(*site_, wanted));
        if (back) {
            forget_after(world().tick);
        }
        return {};
    } catch (const std::invalid_argument& error) {
        return error.what();
    }
}

void RunningFurnace::forget_after(std::uint64_t tick) {
    std::erase_if(steps_, [tick](const bench::SequenceStep& step) { return step.tick > tick; });
    const double now = seconds(tick);
    std::erase_if(events_, [now](const trace::Event& event) { return event.t_s > now; });
    std::erase_if(history_done_, [tick](std::uint64_t done) { return done > tick; });
    sequence_.resume(world());
    watch_ = bench::MilestoneWatch(site_->model);
    news_.clear();
    watch_.look(world(), news_);
}

std::size_t RunningFurnace::step_at(std::uint64_t tick) const {
    const auto after =
        std::upper_bound(steps_.begin(), steps_.end(), tick,
                         [](std::uint64_t t, const bench::SequenceStep& step) { return t < step.tick; });
    return static_cast<std::size_t>(std::max<std::ptrdiff_t>(1, after - steps_.begin())) - 1;
}

std::uint64_t RunningFurnace::end_of(std::size_t step) const {
    if (going_on(step)) {
        return timed_.newest_tick();
    }
    return std::max(steps_[step].tick, steps_[step + 1].tick - 1);
}

} // namespace lightoff::explore
