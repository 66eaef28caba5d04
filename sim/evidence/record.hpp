// SPDX-License-Identifier: MIT
#pragma once
#include "bench/notebook.hpp"
#include "evidence/begin.hpp"
#include "evidence/sensed.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace lightoff::evidence {

/// The doors and switches as they stand: what the next test has to begin from.
struct Stance {
    bool burner_door_on = true;
    bool blower_door_on = true;
    bool door_switch_in = true; ///< by its door, by hand or by tape
    bool power_on = true;       ///< disconnect and breaker
};
Stance stance_of(const furnace::Inputs& inputs);

/// One thing perceived, that a hypothesis has to give too.
struct Observation {
    std::uint64_t tick = 0;
    int reading = 0; ///< number in the notebook, from 1; 0: a stretch of the senses ended at `tick`
    std::uint64_t since =
        0; ///< reading: nothing was done to the furnace or the instruments from this tick on
    Sensed sensed{};
    std::uint8_t controls = 0;      ///< a look: how the controls stood, bits by faults::Control
    std::uint8_t seen_controls = 0; ///< a look: bits of those that belong to the part looked at
};

/// How the controls of an appliance stand, bits by faults::Control.
std::uint8_t controls_of(const furnace::Inputs& inputs);

/// What was done and perceived in an attempt, from arrival on.
class Record {
public:
    Record(const bench::Site& site, const bench::World& arrived);

    void act(const bench::Action& action);
    void observe(const bench::World& world);

    [[nodiscard]] std::uint64_t arrival() const { return arrival_; }
    [[nodiscard]] std::uint64_t now() const { return now_; }
    [[nodiscard]] const std::vector<TimedAction>& actions() const { return actions_; }
    /// In the order of their ticks; the first is the moment of arrival.
    [[nodiscard]] const std::vector<Observation>& observations() const { return observations_; }
    [[nodiscard]] const bench::Notebook& notebook() const { return notebook_; }
    /// As it was when a reading was taken; 0: on arrival.
    [[nodiscard]] const Stance& stance_at(int reading) const {
        return stances_[static_cast<std::size_t>(reading)];
    }
    [[nodiscard]] const Stance& stance_now() const { return stance_now_; }

private:
    const bench::Site* site_;
    bench::Notebook notebook_;
    std::uint64_t arrival_;
    std::uint64_t now_;
    std::vector<TimedAction> actions_;
    std::vector<Observation> observations_;
    std::vector<Stance> stances_;
    Stance stance_now_;
    Sensed stretch_{};
};

} // namespace lightoff::evidence
