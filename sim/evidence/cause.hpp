// SPDX-License-Identifier: MIT
#pragma once
#include <compare>

namespace lightoff::evidence {

/// What may be wrong: one fault of the catalogue, two at once, or nothing.
struct Cause {
    int fault = -1; ///< place in faults::Catalogue::faults; -1: nothing is wrong
    int with = -1;  ///< a second fault at the same time, the greater number; -1: none
    friend auto operator<=>(const Cause&, const Cause&) = default;
};

inline constexpr Cause kNothingWrong{};

} // namespace lightoff::evidence
