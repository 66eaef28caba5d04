// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/picking.hpp"

namespace lightoff::diagram {

/// Arrows move the sheet, + and - zoom, Home fits; Enter puts the cursor on a point, arrows then step from
/// point to point (with Shift by pin and lug), Enter picks it, Escape leaves; K walks the wire: each step
/// puts the red lead on the next point.
void take_keys(const Sheet& sheet, DiagramView& view, view::Wanted& wanted);

} // namespace lightoff::diagram
