// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/stack.hpp"
#include "gui/diagram/layout/supply.hpp"

namespace lightoff::diagram {

/// The control board: round its rails and round every stretch of a run that stays within it. None if there
/// is nothing of it.
std::vector<Block> board_outline(const Circuits& circuits, const Supply& supply, const Stack& stack,
                                 const Positions& positions, float width);

} // namespace lightoff::diagram
