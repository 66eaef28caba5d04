// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/diagram/ladder.hpp"

namespace lightoff::diagram {

/// The trade's symbols, drawn at rest, from one end to the other with the lines that lead to them.
void draw_symbol(const canvas::Canvas& canvas, const canvas::Transform& place, const Symbol& symbol);
/// What of a symbol no word may lie on, pixels.
canvas::Rect body_of(const canvas::Transform& place, const Symbol& symbol);

void draw_mark(const canvas::Canvas& canvas, const canvas::Transform& place, const Mark& mark);

} // namespace lightoff::diagram
