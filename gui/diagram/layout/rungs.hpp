// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/ladder_builder.hpp"
#include "gui/diagram/layout/stack.hpp"

namespace lightoff::diagram {

/// Draws the circuits where the stack has put them: links, spots, walks, branches and marks.
void draw_rungs(const Circuits& circuits, const Stack& stack, const Positions& positions, float width,
                LadderBuilder& out);

} // namespace lightoff::diagram
