// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/stack.hpp"
#include "gui/diagram/layout/supply.hpp"

namespace lightoff::diagram {

/// L and N down the circuits of the supply voltage, from where the supply meets them, R and C down those of
/// the low voltage.
std::vector<RailLine> rail_lines(const Circuits& circuits, const Supply& supply, const Stack& stack,
                                 const Positions& positions, float width);

/// Where the supply's wiring ends on the board, beside the rail.
ImVec2 last_before_rail(const Run& run, const Positions& positions);

} // namespace lightoff::diagram
