// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "bench/history.hpp"
#include "bench/school_rules.hpp"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace lightoff::lesson {

enum class Kind { no_heat, poor_heat, noise, smell_or_alarm, callback, nothing_wrong, tune_up, explore };

/// How much the coach may say.
enum class Help { learning, practice, exam };

enum class Difficulty { easy, medium, hard };

/// "This number of the Condition has this value", from a tick on. Paths: furnace::condition_field.
struct ConditionChange {
    std::string path;
    double value = 0.0; ///< in the field's own unit
    std::uint64_t tick = 0;
};

/// A fault of the catalogue, and how it sets in.
struct FaultUse {
    std::string id;
    double severity = 1.0; ///< 0 to 1
    faults::Trigger onset = faults::Trigger::from_start;
    std::uint64_t tick = 0; ///< at_tick: when; when_hot and now_and_then: not before
};

/// What was left on a part by whoever worked on it before.
struct TraceLeft {
    std::string part; ///< of the catalogue
    std::string words;
};

struct HistoryAction {
    std::uint64_t tick = 0;
    std::string action; ///< bench::parse_action
};

/// A call as it is written in scenarios/calls: who complains of what, the house, the furnace, what has
/// happened before the student arrives. It lists no readings: those are computed.
struct Scenario {
    std::string title;
    std::string complaint; ///< in the customer's words
    Kind kind = Kind::explore;
    Difficulty difficulty = Difficulty::medium;
    std::string twin;      ///< name of a call with the same symptom and another cause; may be empty
    std::string equipment; ///< name of the profile
    furnace::Inputs inputs;
    double house_k = 293.15;
    std::vector<ConditionChange> overrides; ///< from the start
    std::vector<FaultUse> faults;           ///< several at once; of two that set one number the later wins
    std::vector<ConditionChange> onsets;
    std::vector<HistoryAction> history;
    std::vector<TraceLeft> traces;
    std::uint64_t arrive_after_ticks = 0;
    Help help = Help::learning;
    bench::SchoolRules school_rules;
    std::map<std::string, double> rubric_weights;
};

/// The World as it stands at tick 0, before any history: part values varied within the profile's tolerances
/// by the seed (furnace::as_built), overrides applied, faults set in or waiting, onsets laid. Throws
/// std::invalid_argument for a path or fault that this furnace does not have, or too many onsets or shorts.
bench::World begin_world(const bench::Site& site, const Scenario& scenario, std::uint64_t seed);

/// Its history for bench::History.
std::vector<bench::TimedAction> history_of(const bench::Site& site, const Scenario& scenario);

/// The same World with its history run, as the student finds it.
bench::World arrive(const bench::Site& site, const Scenario& scenario, std::uint64_t seed,
                    furnace::Workspace& workspace);

} // namespace lightoff::lesson
