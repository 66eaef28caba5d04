// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/cutaway/cutaway.hpp"
#include "gui/view/known.hpp"

#include <optional>

namespace lightoff::work {

/// What the pane keeps from frame to frame.
struct FurnacePane {
    cutaway::CutawayView view;
    bool show_spots = false;           ///< rings at taps, ports and places for probes
    std::optional<view::Thing> walked; ///< where Tab comes in, and arrows go on
    bool has_keyboard = false;
    bool take_keyboard = false; ///< it does, in the next frame
};

/// The furnace as it is seen, every part a place to press.
void draw_furnace_pane(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                       const cutaway::CutawayScene& scene, const std::optional<view::Thing>& focus,
                       FurnacePane& pane, view::Wanted& wanted);

} // namespace lightoff::work
