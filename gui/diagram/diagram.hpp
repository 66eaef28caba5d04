// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/diagram/diagram_view.hpp"

namespace lightoff::diagram {

/// Draws the ladder into a box of the ImGui window now being built and takes what is done there (pointer.hpp,
/// keyboard.hpp). It is paper: of the furnace's state it shows only what hands and readings have put there.
void draw_diagram(const canvas::Canvas& canvas, canvas::Rect area, const Ladder& ladder,
                  const view::Known& known, DiagramView& view, view::Wanted& wanted);

} // namespace lightoff::diagram
