// SPDX-License-Identifier: MIT
#include "gui/explore/running_furnace.hpp"

#include "gui/explore/lanes.hpp"

#include <stdexcept>

namespace lightoff::explore {

RunningFurnace::RunningFurnace(const bench::Site& site, const lesson::Scenario& scenario, std::uint64_t seed)
    : site_(&site), world_(lesson::begin_world(site, scenario, seed)), workspace_(site.model),
      history_(site, lesson::history_of(site, scenario)), watch_(site.model), recording_(kLaneCount) {
    travel_ = cutaway::travel_at_rest(world_);
    watch_.look(world_, news_);
    record();
    while (world_.tick < scenario.arrive_after_ticks) {
        tick();
    }
}

double RunningFurnace::now_s() const {
    return static_cast<double>(world_.tick) * site_->model.board.tick_s;
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
    history_.run(world_, workspace_, world_.tick + 1);
    cutaway::move(travel_, site_->model, world_, site_->model.board.tick_s, speed);
    record();
}

void RunningFurnace::record() {
    recording_.append(now_s(), sample_of(site_->model, world_, workspace_));
    news_.clear();
    watch_.look(world_, news_);
    for (const bench::Milestone& milestone : news_) {
        if (const std::optional<std::string> name = flag_of(milestone)) {
            events_.push_back({static_cast<double>(milestone.tick) * site_->model.board.tick_s, *name});
        }
    }
}

std::string RunningFurnace::act(std::string_view action) {
    try {
        return bench::begin(*site_, world_, bench::parse_action(*site_, action)).reason;
    } catch (const std::invalid_argument& error) {
        return error.what();
    }
}

} // namespace lightoff::explore
