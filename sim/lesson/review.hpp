// SPDX-License-Identifier: MIT
#pragma once
#include "bench/hazards.hpp"
#include "bench/history.hpp"
#include "bench/notebook.hpp"
#include "evidence/investigation.hpp"
#include "lesson/playback.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace lightoff::lesson {

/// Something done to the furnace that changes how it is: a service, or a wire put elsewhere.
struct ChangeMade {
    std::uint64_t tick = 0; ///< when the hands began
    bench::Action action;
    int part = -1; ///< of the catalogue; -1: a wire
    faults::ServiceKind kind = faults::ServiceKind::replace;
    bool mended = false; ///< a real fault was there before and gone after it
    bool was_bad =
        false;           ///< replace: the old part was not as built, by a fault or by what one had done to it
    bool spoilt = false; ///< and so is the new one, later
};

/// A word of the student's that has no effect on the furnace: a claim, a tag, a line of the report.
using Statement = bench::TimedAction;

/// How the furnace ran when a reading was taken.
struct Running {
    std::uint64_t fire_ticks = 0; ///< burners on for so long, since the last change; 0: off
    bool blower = false;
    bool inducer = false;
    bool air_closed = false; ///< blower door on, filter in: the air goes the way that it should
    bool gas_open = false;
    bool alone_on_gas = false; ///< nothing else draws through the meter
};

/// What a safety was seen to do when it was provoked.
enum class Provoked : std::uint8_t { airflow_blocked, hose_off, rod_off, rollout_off, door_switch, count };

/// The facts of an attempt, gathered while it runs again. No judgement yet.
class Review : public Onlooker {
public:
    Review(const bench::Site& site, const Scenario& scenario, evidence::Bank& bank);

    void arrived(const bench::World& world) override;
    void before(const bench::World& world, const bench::Action& action) override;
    void tick(const bench::World& world) override;

    /// Whether one of the call's faults is there, at this moment or waiting to come back.
    [[nodiscard]] bool is_broken(const bench::World& world, std::size_t which) const;

    std::optional<evidence::Investigation> investigation;
    std::vector<evidence::RealFault> real; ///< in the order of the scenario
    std::vector<ChangeMade> changes;
    std::vector<Statement> statements;
    std::vector<int> steps_at_statement;   ///< lamp count when each statement was made
    std::vector<int> reached_at_statement; ///< and the most of it in the last call that had begun
    std::vector<Running> at_reading;       ///< by reading
    std::vector<std::uint8_t> was_broken;  ///< by fault, after the last thing done
    std::array<bool, static_cast<std::size_t>(Provoked::count)> provoked{};
    std::uint64_t arrived_tick = 0;
    std::uint64_t first_touch_tick = 0; ///< of doors, power or parts; 0: none
    std::uint64_t last_tick = 0;
    std::optional<std::uint64_t> mended_tick; ///< from then on nothing is wrong any more
    int steps_on_arrival = 0;
    std::uint64_t watched_ticks = 0;      ///< of the sequence under way, before the first change
    std::uint64_t powered_call_ticks = 0; ///< with power and a call, before the first change
    std::uint64_t fire_since_change = 0;  ///< longest fire after the last change
    bool cycle_ended = false;             ///< and it went out on a satisfied call, to rest
    std::size_t readings_at_last_change = 0;
    bool put_back = false; ///< at the end everything is as a customer should have it
    bool tagged = false;
    std::uint8_t told = 0;

    [[nodiscard]] const std::vector<bench::HazardEvent>& hazards() const { return watch_.events(); }
    [[nodiscard]] const bench::Notebook& notebook() const { return notebook_; }
    /// Tick of the first change; the end if there was none.
    [[nodiscard]] std::uint64_t first_change() const {
        return changes.empty() ? last_tick : changes.front().tick;
    }

    /// Readings taken with burners on after the last change.
    [[nodiscard]] std::ptrdiff_t readings_of_fire_since_change() const {
        const auto from = static_cast<std::ptrdiff_t>(readings_at_last_change);
        return std::count_if(at_reading.begin() + from, at_reading.end(),
                             [](const Running& running) { return running.fire_ticks > 0; });
    }

private:
    void watch_sequence(const bench::World& world);
    void count_steps(int lamp_count);
    void watch_safeties(const bench::World& world);
    [[nodiscard]] Running running(const bench::World& world) const;
    [[nodiscard]] bool is_as_it_belongs(const bench::World& world) const;
    [[nodiscard]] bool is_bad(const bench::World& world, const ChangeMade& change) const;
    void watch_new_parts(const bench::World& world);
    [[nodiscard]] bool all_mended(const bench::World& world) const;

    const bench::Site* site_;
    furnace::Workspace workspace_;
    furnace::Condition built_;
    furnace::Inputs found_; ///< how the customer had the thermostat
    bench::Notebook notebook_;
    bench::HazardWatch watch_;
    evidence::Bank* bank_;
    std::uint64_t fire_ticks_ = 0;
    std::uint64_t no_fire_ticks_ = 0;
    int steps_now_ = 0;
    int steps_reached_ = 0; ///< by the last call that began, also after its lamp went dark
    bool broken_before_ = false;
    bool pending_change_ = false;
};

} // namespace lightoff::lesson
