// SPDX-License-Identifier: MIT
#pragma once
#include "bench/captions.hpp"
#include "bench/milestones.hpp"
#include "lesson/film.hpp"
#include "lesson/grade.hpp"
#include "lesson/review.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// A finished attempt laid out for talking it over: what was done, read, noticed and risked on one line of
/// time, what could have been known when, and the grade, which comes last.
namespace lightoff::lesson {

/// Every readout of the furnace twice a second, for the lanes of a chart. True values.
struct Tracks {
    static constexpr std::uint64_t kEveryTicks = 10;
    struct Lane {
        std::string name;
        std::string unit;
        std::string group;
    };
    std::vector<Lane> lanes;
    std::vector<std::uint64_t> ticks;
    std::vector<float> values; ///< by moment, then by lane

    [[nodiscard]] float value(std::size_t moment, std::size_t lane) const {
        return values[moment * lanes.size() + lane];
    }
};

/// What happened, without judgement.
struct Story {
    std::uint64_t arrived_tick = 0;
    std::uint64_t last_tick = 0;
    std::vector<bench::Reading> readings; ///< number n is at n - 1
    std::vector<bench::Caption> captions; ///< since arrival
    std::vector<bench::Milestone> milestones;
    std::vector<bench::HazardEvent> hazards;
    std::vector<ChangeMade> changes;
    std::vector<Statement> statements;
    Tracks tracks;
    Film film;
};

/// A test of the coach's way.
struct CoachStep {
    double minutes = 0.0; ///< of work since arrival, when it is done
    std::string test;
    std::size_t still_fitting = 0;
};

/// When nothing but the cause was left.
struct Knew {
    std::uint64_t tick = 0;
    int reading = 0; ///< that did it; 0: no reading but eyes, ears, nose or hand
};

/// The first choice that told little, or changed something too early, and what would have told more then.
struct BetterTest {
    std::uint64_t tick = 0;      ///< the attempt may be taken up from here
    int reading = 0;             ///< the choice; 0: it was a change
    std::size_t change = 0;      ///< which one
    std::uint64_t made_tick = 0; ///< when it was read, or when hands began to change something
    std::size_t still_fitting = 0;
    evidence::Worth worth; ///< of the reading
    evidence::Offer offer; ///< best of what there was
};

struct Debrief {
    Story story;
    Grade grade;
    bool has_staircase = false; ///< not of a tune-up: that is no search for one cause
    std::size_t fitting_on_arrival = 0;
    std::vector<CoachStep> coach; ///< empty where several things are wrong
    std::optional<Knew> knew;
    std::optional<BetterTest> better;
    std::vector<evidence::Worth> worths; ///< of the readings until then; by reading
    std::string twin;                    ///< a call with the same symptom and another cause; may be empty
};

enum class DebriefStage : std::uint8_t {
    furnaces, ///< the hypothesis furnaces are built
    replay,   ///< the attempt runs again
    judging   ///< what fitted when, what would have told more
};

/// Told now and then how far a stage has come, 0 to 1; judging is most often done before it comes to 1. May
/// throw to break off.
using DebriefProgress = std::function<void(DebriefStage, double)>;

/// Runs the attempt again and judges it. `bank` is of the same scenario and seed. Throws
/// std::invalid_argument if the record does not belong to the scenario. Tens of seconds the first time with a
/// bank.
Debrief make_debrief(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, const Log& log,
                     evidence::Bank& bank, const DebriefProgress& progress = {});

/// The first choice in the record that was worth too little.
std::optional<BetterTest> find_better(evidence::Investigation& investigation, const Story& story,
                                      const Grade& grade, const std::vector<evidence::Worth>& worths);

} // namespace lightoff::lesson
