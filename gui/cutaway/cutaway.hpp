// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/cutaway/labels.hpp"
#include "gui/cutaway/scene.hpp"

namespace lightoff::cutaway {

/// Where drawing and words go in a given area.
struct CutawayLayout {
    canvas::Transform place; ///< drawing units to pixels
    canvas::Rect drawing;    ///< pixels; ducts run to its upper edge
    std::vector<PlacedLabel> labels;
};

CutawayLayout lay_out(const canvas::Canvas& canvas, canvas::Rect area, const CutawayScene& scene);

/// Draws the open furnace into the area: parts, then what moves, then words. Colours are for explore and the
/// debrief, where true values may be seen.
void draw_cutaway(const canvas::Canvas& canvas, canvas::Rect area, const CutawayScene& scene);

} // namespace lightoff::cutaway
