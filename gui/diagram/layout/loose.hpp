// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/ladder_builder.hpp"

namespace lightoff::diagram {

/// What no run took: test points in rows below everything, so that they can be reached, and wires straight
/// from end to end. Returns the depth with them.
Depth draw_loose(const Circuits& circuits, float width, Depth depth, Positions& positions,
                 LadderBuilder& out);

} // namespace lightoff::diagram
