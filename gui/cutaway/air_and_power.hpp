// SPDX-License-Identifier: MIT
#pragma once
#include "gui/cutaway/pen.hpp"

/// The way of the air, and what stands on it; electrical parts low in the cabinet and beside it.
namespace lightoff::cutaway {

void draw_ducts(const Pen& pen);
void draw_air(const Pen& pen);
/// Warmth of the supply air: the denser the waves, the warmer.
void draw_warmth(const Pen& pen);
/// Cooling coil on the supply, as an A seen from its side.
void draw_coil(const Pen& pen);
void draw_filter(const Pen& pen);
void draw_blower(const Pen& pen);
/// In its dark window, which looks out through the door.
void draw_lamp(const Pen& pen);
void draw_board(const Pen& pen);
void draw_low_parts(const Pen& pen);
/// On the wall beside the furnace, its lever up while on; its cable goes into the cabinet low down.
void draw_disconnect(const Pen& pen);

} // namespace lightoff::cutaway
