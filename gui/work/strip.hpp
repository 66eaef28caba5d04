// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/view/known.hpp"

namespace lightoff::work {

/// The isolation strip: thermostat, supply, gas and doors as they were found or left, never what is live; and
/// that the supply was proved dead. What hangs in the house has its place here and not in the drawing.
void draw_strip(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                view::Wanted& wanted);

/// Parts of the catalogue that have their place on the strip.
bool is_on_strip(std::string_view part);

} // namespace lightoff::work
