// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <span>
#include <string_view>

namespace lightoff::canvas {

/// Makes a box the library's next item, to be pressed; true when it was. A page too small for it gives it a
/// pixel: the library takes no less.
bool press_area(const char* id, Rect box);

/// Height in pixels of a control in one line of body text; never under 24 px.
float control_height(const Canvas& canvas);
/// Width a button needs for its words and the key that does the same.
float button_width(const Canvas& canvas, std::string_view words, std::string_view key = {});

/// A button in ink: hairline frame, filled while held, `chosen` in reverse; a heavy frame when the keyboard
/// is on it. The id is the words (what follows "##" is not shown). `key` is shown small behind the words; the
/// caller looks for it. True in the frame in which the button was pressed.
bool button(const Canvas& canvas, Rect box, std::string_view words, bool chosen = false,
            std::string_view key = {});

/// Width of a row of buttons that share their edges.
float choice_width(const Canvas& canvas, std::span<const std::string_view> words);
/// A row of buttons of which one is chosen. Returns the index now chosen.
std::size_t choice(const Canvas& canvas, Rect row, std::span<const std::string_view> words,
                   std::size_t chosen);

} // namespace lightoff::canvas
