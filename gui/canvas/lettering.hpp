// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

namespace lightoff::canvas {

enum class Align { Start, Middle, End };

/// Size in pixels of text as it would be drawn; `wrap` > 0 breaks lines at that width.
ImVec2 text_size(const Canvas& canvas, std::string_view words, Type type, float wrap = 0);
/// Height in pixels of one line.
float line_height(const Canvas& canvas, Type type);

/// One line; `at` is its upper corner (left, middle or right by `align`). Returns the box it fills.
/// `on_halo`: of the halo that was drawn for it before.
Rect text(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour colour,
          Align align = Align::Start, std::optional<Colour> on_halo = {});
/// One line in a box, middled in height; shortened with an ellipsis where it does not fit.
Rect text_in(const Canvas& canvas, Rect box, std::string_view words, Type type, Colour colour,
             Align align = Align::Start);
/// Several lines broken at the width. Returns the box they fill.
Rect paragraph(const Canvas& canvas, ImVec2 at, float width, std::string_view words, Type type,
               Colour colour);
/// Only the halo of a line of words.
void halo_of(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour halo,
             Align align = Align::Start);
/// One line over a halo, for words on line-work.
Rect haloed_text(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour colour,
                 Colour halo, Align align = Align::Start);

/// The first of some wordings, the longest first, that fits on one line of this width; the last if none does.
std::string_view longest_that_fits(const Canvas& canvas, std::initializer_list<std::string_view> words,
                                   Type type, float width);
/// The largest of heading, body and secondary in which the words fit on one line.
Type largest_type(const Canvas& canvas, std::string_view words, float width);

/// A number with fixed decimals and a true minus sign; a dash for what is no number (nothing was read).
std::string figure(double value, int decimals);

} // namespace lightoff::canvas
