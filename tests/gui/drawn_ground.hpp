// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/colour.hpp"
#include "gui/canvas/layout_probe.hpp"

#include <imgui.h>
#include <string>
#include <vector>

/// What lies beneath every word of a frame, from the triangles that were drawn: no list of colours that
/// somebody believes to be there.
namespace lightoff::test {

/// The last frame, filled in by hand: once without any letter, and once with the box of every letter filled
/// in the letter's colour.
struct Drawn {
    int width = 0, height = 0;
    std::vector<canvas::Colour> ground;
    std::vector<canvas::Colour> inked;
    std::vector<bool> letter; ///< some letter's box covers the pixel

    [[nodiscard]] std::size_t at(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
    }
};
Drawn last_frame(canvas::Colour clear);

/// A colour of letters with a colour that they lie on.
struct Pair {
    canvas::Colour ink, ground;
    double contrast = 21;
    std::string words; ///< where it was first found
};

/// The pairs of a text: every ground that lies beneath at least a tenth of its letters (less is a line that
/// passes, beside which the letters stand on their own ground). Empty for a text that was painted over.
std::vector<Pair> pairs_of(const Drawn& drawn, const canvas::LayoutProbe::Text& text);

} // namespace lightoff::test
