// SPDX-License-Identifier: MIT
#include "gui/explore/what_if.hpp"

#include "furnace/tolerance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace lightoff::explore {
namespace {

/// Turns a number by hand: no onset moves it any more.
lesson::Past::Deed turn_of(const bench::Site& site, const faults::Parameter& parameter, double value) {
    return [&site, parameter, value](bench::World& world) {
        faults::set(site.catalogue, parameter, value, world.condition);
        for (std::size_t i = 0; i < world.onset_count; ++i) {
            if (parameter.bridge < 0 && world.onsets[i].field == parameter.field) {
                world.onsets[i].field = bench::kNoField;
            }
        }
    };
}

/// Lets the onsets of another World move it again.
lesson::Past::Deed release_of(const faults::Parameter& parameter, const bench::World& as_it_is) {
    return [parameter, onsets = as_it_is.onsets](bench::World& world) {
        for (std::size_t i = 0; i < world.onset_count; ++i) {
            if (parameter.bridge < 0 && onsets[i].field == parameter.field) {
                world.onsets[i] = onsets[i];
            }
        }
    };
}

} // namespace

WhatIf::WhatIf(RunningFurnace& furnace)
    : furnace_(&furnace),
      parameters_(faults::parameters_of(furnace.model(), furnace.site().catalogue,
                                        furnace::as_built(furnace.model(), furnace.world().seed))) {}

bool WhatIf::is_chosen(std::size_t parameter) const {
    return std::find(chosen_.begin(), chosen_.end(), parameter) != chosen_.end();
}

void WhatIf::choose(std::size_t parameter) {
    if (!is_chosen(parameter)) {
        chosen_.push_back(parameter);
    }
}

void WhatIf::put_away(std::size_t parameter) {
    if (exists() && chosen_.size() > 1) {
        set(parameter, value_as_it_is(parameter));
        beside_->act(release_of(parameters_[parameter], furnace_->world()));
    }
    std::erase(chosen_, parameter);
    if (chosen_.empty()) {
        beside_.reset();
    }
}

/// A new one from the moment looked at, turned as the old one was.
void WhatIf::fork() {
    std::vector<double> values;
    for (const std::size_t parameter : chosen_) {
        values.push_back(exists() ? faults::value_of(furnace_->site().catalogue, parameters_[parameter],
                                                     beside_->world().condition)
                                  : value_as_it_is(parameter));
    }
    const bool had_one = exists();
    beside_ = std::make_unique<TimedWorld>(furnace_->site(), furnace_->gauges(), furnace_->world());
    carried_tick_ = furnace_->world().tick;
    carried_ = furnace_->timed().past().deeds_at(carried_tick_).size();
    for (std::size_t i = 0; had_one && i < chosen_.size(); ++i) {
        if (values[i] != value_as_it_is(chosen_[i])) {
            beside_->act(turn_of(furnace_->site(), parameters_[chosen_[i]], values[i]));
        }
    }
}

std::string WhatIf::set(std::size_t parameter, double value) {
    choose(parameter);
    const std::uint64_t now = furnace_->world().tick;
    if (!exists() || now < begins_tick()) {
        fork();
    }
    while (!is_there()) {
        follow();
    }
    try {
        beside_->act(turn_of(furnace_->site(), parameters_[parameter], value));
    } catch (const std::invalid_argument& error) {
        return error.what();
    }
    return {};
}

void WhatIf::all_healthy() {
    for (const std::size_t parameter : chosen_) {
        if (exists()) {
            set(parameter, parameters_[parameter].healthy);
        }
    }
}

double WhatIf::value(std::size_t parameter) const {
    if (!exists() || furnace_->world().tick < begins_tick()) {
        return value_as_it_is(parameter);
    }
    return faults::value_of(furnace_->site().catalogue, parameters_[parameter], beside_->world().condition);
}

double WhatIf::value_as_it_is(std::size_t parameter) const {
    return faults::value_of(furnace_->site().catalogue, parameters_[parameter], furnace_->world().condition);
}

bool WhatIf::is_there() const {
    return exists() && beside_->world().tick == furnace_->world().tick;
}

void WhatIf::tick() {
    if (beside_->tick()) {
        carry_over();
    }
}

/// What hands do to the furnace that is they do to this one. An act begun twice is refused the second time.
void WhatIf::carry_over() {
    const std::uint64_t now = beside_->world().tick;
    const std::vector<lesson::Past::Deed> deeds = furnace_->timed().past().deeds_at(now);
    for (std::size_t i = carried_tick_ == now ? carried_ : 0; i < deeds.size(); ++i) {
        beside_->act(deeds[i]);
    }
    carried_tick_ = now;
    carried_ = deeds.size();
}

void WhatIf::follow(int most_ticks) {
    if (!exists()) {
        return;
    }
    const std::uint64_t newest = furnace_->timed().newest_tick();
    if (beside_->newest_tick() > newest) {
        beside_->forget_after(newest); // the furnace that is went another way
    }
    const std::uint64_t wanted = furnace_->world().tick;
    if (wanted > beside_->newest_tick()) {
        beside_->go_to(beside_->newest_tick());
        for (int i = 0; i < most_ticks && beside_->world().tick < wanted; ++i) {
            tick();
        }
    } else {
        beside_->go_to(wanted);
    }
    if (!beside_->in_the_past()) {
        carry_over();
    }
}

std::vector<std::size_t> WhatIf::differing() {
    std::vector<std::size_t> differing;
    if (!is_there()) {
        return differing;
    }
    const std::vector<double>& as_is = furnace_->timed().readings();
    const std::vector<double>& what_if = beside_->readings();
    for (std::size_t i = 0; i < as_is.size(); ++i) {
        if (bench::differ(furnace_->gauges().list()[i], as_is[i], what_if[i])) {
            differing.push_back(i);
        }
    }
    // A thing that stands another way says most.
    const auto weight = [&](std::size_t i) {
        const bench::Gauge& gauge = furnace_->gauges().list()[i];
        const double least = std::max(bench::accuracy(gauge, as_is[i]), bench::accuracy(gauge, what_if[i]));
        return gauge.words.empty() ? std::abs(what_if[i] - as_is[i]) / least
                                   : std::numeric_limits<double>::max();
    };
    std::stable_sort(differing.begin(), differing.end(),
                     [&](std::size_t a, std::size_t b) { return weight(a) > weight(b); });
    return differing;
}

} // namespace lightoff::explore
