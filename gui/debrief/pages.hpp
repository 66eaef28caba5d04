// SPDX-License-Identifier: MIT
#pragma once
#include "gui/debrief/debrief.hpp"

namespace lightoff::debrief {

/// The words and pictures of the page that is open. A list that is longer than its room is turned in `foot`.
void draw_page(const canvas::Canvas& canvas, canvas::Rect area, canvas::Rect foot, const Model& model,
               DebriefView& view, DebriefWants& wants);

/// The moment looked at becomes the one at which they knew; none: they were never sure.
void mark_moment(const Model& model, DebriefView& view, std::optional<std::uint64_t> tick);
/// Turns to a page and shows the moment that it is about.
void turn_to(const Model& model, DebriefView& view, std::size_t index);

} // namespace lightoff::debrief
