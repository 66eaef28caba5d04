// SPDX-License-Identifier: MIT
#pragma once
#include "gui/debrief/debrief.hpp"

namespace lightoff::debrief {

/// Height in pixels that the rows of what happened take.
float rows_height(const canvas::Canvas& canvas);

/// The attempt on one line of time: what was done, read, noticed and risked, above the recorder's paper with
/// every readout. Pressing anywhere moves the moment looked at.
void draw_timeline(const canvas::Canvas& canvas, canvas::Rect area, const Model& model, DebriefView& view);

/// Left and right: a second; with Shift to the next thing that happened; Home and End.
void scrub_by_keys(const Model& model, DebriefView& view);

} // namespace lightoff::debrief
