// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/diagram/ladder.hpp"
#include "gui/view/known.hpp"

#include <optional>
#include <span>

namespace lightoff::diagram {

/// What the pane keeps between frames.
struct DiagramView {
    canvas::Transform place; ///< drawing units to pixels
    canvas::Rect fitted_to;  ///< area that it was fitted to; another area fits it again unless it was moved
    bool moved = false;      ///< by hand, since it was fitted
    view::Wanted::Lead lead_in_hand = view::Wanted::Lead::none; ///< set by the page: the next point gets it
    int cursor = -1;            ///< spot that the keyboard is on; -1: arrow keys move the sheet
    bool walking = false;       ///< arrow keys take the red lead along
    bool take_keyboard = false; ///< set by the page: the pane gets the keyboard in the next frame
    bool has_keyboard = false;
    bool dragging = false;
};

/// Draws the ladder into a box of the ImGui window now being built and takes what is done there. Mouse: drag
/// moves, wheel zooms, a click picks the nearest point, wire or part. Keys, while it has them: arrows move
/// the sheet, + and - zoom, Home fits; Enter puts the keyboard on a point, arrows then step from point to
/// point (with Shift by pin and lug), Enter picks it, Escape leaves; K walks the wire: each step puts the red
/// lead on the next point. It is paper: of the furnace's state it shows only what hands and readings have put
/// there.
void draw_diagram(const canvas::Canvas& canvas, canvas::Rect area, const Ladder& ladder,
                  const view::Known& known, DiagramView& view, view::Wanted& wanted);

/// Where the spots are in pixels: a lug that is off its pin hangs beside it.
std::vector<ImVec2> spot_places(const Ladder& ladder, const canvas::Transform& place,
                                const view::Known& known);

/// The nearest of them within reach; none beyond.
std::optional<int> nearest_spot(std::span<const ImVec2> places, ImVec2 pointer, float reach_px);

inline constexpr float kReach_px = 40;     ///< design pixels: nearest wins
inline constexpr float kCatchZone_px = 24; ///< across: within it a point comes before what lies beneath

} // namespace lightoff::diagram
