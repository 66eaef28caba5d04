// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/cutaway/scene.hpp"

namespace lightoff::cutaway {

/// Middle line of the hose of the pressure switch, in drawing units, from the box's port.
std::vector<ImVec2> hose_line();

/// Dirt, soot, rust, water, burnt and corroded places over the drawn parts. Each has a mark of its own, in
/// five steps, in ink: dots, fine dots, short strokes, a filled stretch of the hose, hatching, rings. Words
/// say it beside (view::worn_words).
void draw_wear(const canvas::Canvas& canvas, const canvas::Transform& place, const CutawayScene& scene);

} // namespace lightoff::cutaway
