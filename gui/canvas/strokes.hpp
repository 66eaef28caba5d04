// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <initializer_list>
#include <span>

namespace lightoff::canvas {

/// The weights of line-work, heaviest first; Rule is for tables and charts.
enum class Line { Lead, Silhouette, Outline, Detail, Hidden, Rule };

using Path = std::span<const ImVec2>;

/// Width in pixels: the weight's own, times theme and scale, growing with the square root of zoom.
float line_width(const Canvas& canvas, Line line);

/// A line of one weight; Hidden is dashed.
void stroke(const Canvas& canvas, Path path, Line line, Colour colour, bool closed = false);
/// A straight one; horizontal and vertical rules are put on whole pixels so that they stay crisp.
void segment(const Canvas& canvas, ImVec2 from, ImVec2 to, Line line, Colour colour);
void outline(const Canvas& canvas, Rect box, Line line, Colour colour);

/// A test lead or a wire: laid over a halo of the colour beneath, so that crossings read as over and under.
void lead(const Canvas& canvas, Path path, Colour colour, Colour beneath);

/// Dashes of `on` and gaps of `off` pixels, moved along by `phase` pixels.
void dashed(const Canvas& canvas, Path path, float width, Colour colour, float on, float off,
            float phase = 0);

/// Energy moving along a path, in its own colour and pattern: 24 V short dash, 120 V double line, gas dots,
/// air open arrows, heat waves. `phase` (pixels) moves the pattern; `amount` 0..1 closes up heat's waves
/// (density is temperature); `beneath` is the colour the path lies on.
void energy_path(const Canvas& canvas, Path path, Energy kind, Colour beneath, float phase = 0,
                 float amount = 0.5F);

/// Which way something flows, where nothing may move: heads along a path.
void chevrons(const Canvas& canvas, Path path, Colour colour);

} // namespace lightoff::canvas
