// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "gui/canvas/canvas.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::work {

/// The line in which anything can be typed that a script may say: "look filter", "wait until lamp".
struct Typed {
    std::array<char, 160> text{};
    bool open = false;
    bool take_focus = false;         ///< in the next frame
    bool ahead = false;              ///< the field is not there yet; what is typed meanwhile is kept
    std::vector<std::string> before; ///< lines that were typed, newest last
    int recalled = -1;               ///< place in `before`; -1: a new line

    char own_letter = 0; ///< of the key that opened it, which may come through as a letter

    /// `words`: what stands in it already.
    void begin(char letter, std::string_view words = {}) {
        open = take_focus = ahead = true;
        own_letter = letter;
        text.fill('\0');
        words.copy(text.data(), text.size() - 1);
    }
};

/// Width of the button that opens it.
float typed_width(const canvas::Canvas& canvas, const std::string& key);
/// Draws it; the line that was finished, else empty. `key` opens it too.
std::string draw_typed(const canvas::Canvas& canvas, canvas::Rect area, const bench::Site& site,
                       const std::string& key, Typed& typed);

} // namespace lightoff::work
