// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/view/known.hpp"

#include <string>
#include <string_view>

/// Hands in a compartment that they have not proved dead. Told by what was done and read alone: whether there
/// is voltage in it makes no difference.
namespace lightoff::work {

/// Which compartments stand open and not proved dead, in words; empty if none does.
std::string unproved_words(const view::Known& known);

/// Hatches the edge of the page, within its margin of `width` pixels.
void draw_unproved_edge(const canvas::Canvas& canvas, canvas::Rect page, float width);

/// The caption in a row that begins with a title, as many words of it as there is room for; where the row is
/// too narrow for both the title gives way. Returns what is left for the title.
canvas::Rect draw_unproved_caption(const canvas::Canvas& canvas, canvas::Rect row, float title_width,
                                   std::string_view words);

} // namespace lightoff::work
