// SPDX-License-Identifier: MIT
#pragma once
#include "files/kept_attempts.hpp"
#include "lesson/scenario.hpp"

#include <optional>
#include <string>
#include <vector>

namespace lightoff::desk {

/// A call that can be taken.
struct Call {
    std::string name; ///< "plugged-hose"
    std::string title;
    std::string complaint;
    lesson::Kind kind = lesson::Kind::no_heat;
    lesson::Difficulty difficulty = lesson::Difficulty::medium;
    std::vector<files::KeptAttempt> attempts; ///< of it, oldest first

    /// The last attempt that is not finished; null if there is none.
    [[nodiscard]] const files::KeptAttempt* open_attempt() const;
    /// The best mark so far.
    [[nodiscard]] std::optional<double> best() const;
    /// "new", "left open", "best 94.8"
    [[nodiscard]] std::string how_it_went() const;
};

/// All calls of the data folder with the attempts that are kept, easy ones first. What can't be read is told
/// in `problems`, one sentence each.
std::vector<Call> all_calls(const std::string& attempts_folder, std::vector<std::string>& problems);

/// What the list is narrowed down by.
struct Wish {
    std::string words; ///< all of them must stand in title or complaint
    std::optional<lesson::Kind> kind;
    std::optional<lesson::Difficulty> difficulty;
    enum class Done { any, fresh, open, finished } done = Done::any;
};
bool fits(const Call& call, const Wish& wish);

std::string difficulty_text(lesson::Difficulty difficulty);

} // namespace lightoff::desk
