// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/cutaway/labels.hpp"
#include "gui/cutaway/scene.hpp"

namespace lightoff::cutaway {

/// How somebody has moved the drawing about.
struct CutawayView {
    float zoom = 1;   ///< 1: all of it fits
    ImVec2 pan{0, 0}; ///< design pixels
};

/// Where drawing and words go in a given area.
struct CutawayLayout {
    canvas::Transform place; ///< drawing units to pixels
    canvas::Rect drawing;    ///< pixels; ducts run to its upper edge
    canvas::Rect window;     ///< pixels that the drawing may fill; empty where there is no room for any
    std::vector<PlacedLabel> labels;
};

/// Width of an area in which the drawing fills the height, with its words beside it.
float width_for(const canvas::Canvas& canvas, float height, const CutawayScene& scene);

CutawayLayout lay_out(const canvas::Canvas& canvas, canvas::Rect area, const CutawayScene& scene,
                      const CutawayView& view = {});

/// Draws the furnace into the area: parts, then what moves, then words. What a scene of a percept does not
/// hold (make_scene: explore and debrief do) is not shown. Returns where everything went.
CutawayLayout draw_cutaway(const canvas::Canvas& canvas, canvas::Rect area, const CutawayScene& scene,
                           const CutawayView& view = {});

} // namespace lightoff::cutaway
