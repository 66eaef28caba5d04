// SPDX-License-Identifier: MIT
#pragma once
#include "evidence/investigation.hpp"
#include "lesson/log.hpp"
#include "lesson/rubric.hpp"
#include "lesson/scenario.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Marks for an attempt. Everything is found again from the record: what was read, what still fitted, what
/// was changed and what came of it.
namespace lightoff::lesson {

/// Where points come from, in the order in which they are read out.
enum class Section : std::uint8_t {
    look,
    step,
    isolate,
    proof,
    repair,
    behind,
    verify,
    parts,
    time,
    checks,
    conditions,
    as_found,
    corrected,
    put_back,
    expected, ///< earns nothing: what was said before it was read
    safety
};
std::string_view name_of(Section section);

/// One line of the account, at most 25 words.
struct Line {
    Section section = Section::look;
    double points = 0.0; ///< earned, or below 0 taken off
    double of = 0.0;     ///< that could be earned; 0 for what only takes off
    std::uint64_t tick = 0;
    std::string text;
};

/// An upper limit on the mark, and why.
struct Cap {
    double most = 100.0;
    std::uint64_t tick = 0;
    std::string text;
};

struct Grade {
    double mark = 0.0;   ///< 0 to 100
    double safety = 0.0; ///< 0 to 100, never averaged into the mark
    std::vector<Line> lines;
    std::vector<Cap> caps; ///< that apply, lowest first
    bool stopped = false;  ///< a stop-work hazard ended the call
    std::uint64_t arrived_tick = 0;
    std::uint64_t last_tick = 0;
    double work_minutes = 0.0; ///< at the furnace; reading and writing take none
    double par_minutes = 0.0;
    double coach_minutes = 0.0;                 ///< of the coach's way from arrival to the cause
    std::optional<std::uint64_t> isolated_tick; ///< from then on nothing but the cause fitted
    std::size_t readings = 0;
    std::vector<evidence::Step> staircase;
    std::string cause;                         ///< what is really wrong, in words
    evidence::Cause truth;                     ///< the same; of a tune-up nothing
    std::optional<std::uint64_t> mending_tick; ///< of the change that put it right
};

class Review;

/// Marks for what a Review has seen of an attempt.
Grade judge(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, Review& review);

/// `bank` is of the same scenario and seed: begin_of, real_faults. Throws std::invalid_argument if the record
/// does not belong to the scenario.
Grade grade(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, const Log& log,
            evidence::Bank& bank);

} // namespace lightoff::lesson
