// SPDX-License-Identifier: MIT
#pragma once
#include "gui/debrief/debrief.hpp"

namespace lightoff::debrief {

/// How the number of causes still fitting fell: theirs in ink, the coach's dashed; the moments of knowing,
/// changing and of their own mark. Pressing moves the moment looked at.
void draw_stairs(const canvas::Canvas& canvas, canvas::Rect area, const Model& model, DebriefView& view);

} // namespace lightoff::debrief
