// SPDX-License-Identifier: MIT
#pragma once
#include <optional>
#include <span>
#include <vector>

namespace lightoff::trace {

/// A flag stands at x with its name beside it: pixels.
struct Flag {
    float x = 0;
    float width = 0; // of the name with its gaps
};

struct FlagPlace {
    std::optional<int> row; // 0 lies nearest the paper; none: no room for the name, the flag stands alone
    bool leftwards = false; // the name lies left of its flag
};

/// Finds a row for each name so that no name lies over another and no flag's stem, which runs from its row
/// down to the paper, crosses a name. `flags` in rising x. Names lie between the two ends; one without room
/// at the right of its flag turns left.
std::vector<FlagPlace> place_flags(std::span<const Flag> flags, float left_end, float right_end, int rows);

} // namespace lightoff::trace
