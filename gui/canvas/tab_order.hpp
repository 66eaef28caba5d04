// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::canvas {

/// Puts the library's last item into the order of the Tab key, which is that in which items are drawn on the
/// page, whatever child window they are in. (The library's own Tab stops at text fields only.) To be called
/// straight after the item. A text field that is reached this way takes letters at once.
void tab_stop(bool is_text_field = false);

/// Puts the keyboard's cursor on the last item.
void take_keyboard();
/// Whether the keyboard's cursor stands on the last item and is to be seen.
bool has_keyboard();
/// Whether Enter was pressed on the last item; Space is the library's own affair.
bool enter_pressed();

} // namespace lightoff::canvas
