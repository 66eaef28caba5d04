// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/transform.hpp"
#include "gui/diagram/ladder.hpp"
#include "gui/view/known.hpp"

#include <vector>

namespace lightoff::diagram {

/// What the pane keeps between frames.
struct DiagramView {
    canvas::Transform place; ///< drawing units to pixels
    canvas::Rect fitted_to;  ///< area that it was fitted to; another area fits it again unless it was moved
    bool moved = false;      ///< by hand, since it was fitted
    view::Wanted::Lead lead_in_hand = view::Wanted::Lead::none; ///< set by the page: the next point gets it
    bool shows_all = false;       ///< set by a page that is no attempt: `carried` is drawn, nothing is walked
    std::vector<Carried> carried; ///< by node
    int cursor = -1;              ///< spot that the keyboard is on; -1: arrow keys move the sheet
    bool walking = false;         ///< arrow keys take the red lead along
    bool take_keyboard = false;   ///< set by the page: the pane gets the keyboard in the next frame
    bool has_keyboard = false;
    bool dragging = false;

    /// The whole ladder in an area.
    void fit_to(canvas::Rect area, const Ladder& ladder);
    /// Fits again if the area is another one, unless the sheet was moved by hand.
    void keep_fitted(canvas::Rect area, const Ladder& ladder);
    /// Pixels.
    void pan(ImVec2 by);
    /// Between the least and the most zoom; what lies at `about` (pixels) stays there.
    void zoom_by(canvas::Rect area, const Ladder& ladder, ImVec2 about, float factor);
};

} // namespace lightoff::diagram
