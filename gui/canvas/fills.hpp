// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/strokes.hpp"

namespace lightoff::canvas {

void fill(const Canvas& canvas, Rect box, Colour colour);

/// Fills between two edges of equal number of points, by quads: the way to fill a concave shape here. The
/// colour may run from one edge to the other. Edges are not smoothed: stroke them.
void strip(const Canvas& canvas, Path one_edge, Path other_edge, Colour one, Colour other);

/// Light around a point, brightest in the middle. Belongs on the chamber wash: on paper it would look dead.
void glow(const Canvas& canvas, ImVec2 centre, float radius, Colour colour, float strength);

/// Slanted lines across a box: a stamp gone stale, or hands in a compartment not proved dead. `gap` in design
/// pixels.
void hatch(const Canvas& canvas, Rect box, Colour colour, float gap = 7);

/// Dirt as dots, in steps 0 (clean) to 5; a word must say it as well. The same box gives the same dots.
void stipple(const Canvas& canvas, Rect box, int step, Colour colour);

} // namespace lightoff::canvas
