// SPDX-License-Identifier: MIT
#pragma once
#include "gui/sheet/column.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

/// What a printed form is made of besides its words.
namespace lightoff::paper {

using sheet::Column;

/// A line of a form with its buttons at the right, or below where there is no room. `struck`: a line through
/// the words. The index of the button pressed.
std::optional<std::size_t> draw_entry(Column& column, std::string_view words, canvas::Type type, bool struck,
                                      std::span<const std::string> buttons);

/// A frame of two lines round what was drawn since `top`.
void draw_double_frame(const canvas::Canvas& canvas, canvas::Rect box);
/// The outline of a tag with the hole for its string.
void draw_tag(const canvas::Canvas& canvas, canvas::Rect box);

/// With a capital letter.
std::string capitalised(std::string words);
/// "Flame sense" of "flame-sense", "Pressure hose" of "pressure_hose".
std::string for_people(std::string_view name);

} // namespace lightoff::paper
