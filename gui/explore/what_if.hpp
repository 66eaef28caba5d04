// SPDX-License-Identifier: MIT
#pragma once
#include "faults/parameters.hpp"
#include "gui/explore/running_furnace.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

namespace lightoff::explore {

/// "What if this part were like that": a furnace beside the one that is, from the same state and with the
/// same hands at work, in which somebody has turned numbers of the Condition. What follows is left to the
/// physics.
class WhatIf {
public:
    /// `furnace` must outlive it.
    explicit WhatIf(RunningFurnace& furnace);

    const std::vector<faults::Parameter>& parameters() const { return parameters_; }
    /// Those that somebody has laid out to turn, in the order in which that was done.
    const std::vector<std::size_t>& chosen() const { return chosen_; }
    bool is_chosen(std::size_t parameter) const;
    void choose(std::size_t parameter);
    /// As it is again, and off the desk. With the last one the furnace beside goes, too.
    void put_away(std::size_t parameter);

    /// Turns one, from the moment looked at on. Why it can't be done, or nothing.
    std::string set(std::size_t parameter, double value);
    void all_healthy();
    /// As it stands at the moment looked at.
    double value(std::size_t parameter) const;
    double value_as_it_is(std::size_t parameter) const;

    /// Whether there is a furnace beside, and whether it has come to the moment looked at.
    bool exists() const { return beside_ != nullptr; }
    bool is_there() const;
    /// Goes to the moment that the furnace is looked at; what has not been yet is run, so many ticks at most.
    void follow(int most_ticks = 2 * RunningFurnace::kMostTicks);

    /// Only while it exists.
    TimedWorld& beside() { return *beside_; }
    const TimedWorld& beside() const { return *beside_; }
    std::uint64_t begins_tick() const { return beside_->first_tick(); }

    /// Which gauges differ by more than they can be read, at the moment looked at, those first that differ
    /// most for what a meter can tell; none while it is not there.
    std::vector<std::size_t> differing();

private:
    void fork();
    void tick();
    void carry_over();

    RunningFurnace* furnace_;
    std::vector<faults::Parameter> parameters_;
    std::vector<std::size_t> chosen_;
    std::unique_ptr<TimedWorld> beside_;
    std::uint64_t carried_tick_ = 0; ///< of the moment whose deeds were carried over last
    std::size_t carried_ = 0;        ///< so many of them
};

} // namespace lightoff::explore
