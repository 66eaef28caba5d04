// SPDX-License-Identifier: MIT
#pragma once
#include "gui/cutaway/pen.hpp"

/// What goes over the parts: shell, doors, what doors hide, what somebody has left.
namespace lightoff::cutaway {

/// A slip on a string: somebody was here. What it says is for whoever looks closely.
void draw_traces(const Pen& pen);
/// What a door hides: known to be there, not seen. The lamp's window is in the door.
void draw_veils(const Pen& pen);
void draw_shell(const Pen& pen);
/// A door comes off to the left and is put out of sight; where it hung stays marked.
void draw_door(const Pen& pen, canvas::Rect door, float away);

} // namespace lightoff::cutaway
