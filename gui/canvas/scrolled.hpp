// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

namespace lightoff::canvas {

/// A part of a page that is higher than its place, for as long as this lives: wheel and bar move it, and
/// going to one of its controls by key. Where the place is high enough, nothing scrolls.
class Scrolled {
public:
    /// `height`: pixels that what is drawn needs. `own_arrows`: the page has a use for the arrows left and
    /// right; those up and down move this part instead of going from control to control.
    Scrolled(const Canvas& outer, Rect area, const char* id, float height, bool own_arrows = false);
    ~Scrolled();
    Scrolled(const Scrolled&) = delete;
    Scrolled& operator=(const Scrolled&) = delete;

    [[nodiscard]] const Canvas& canvas() const { return canvas_; }
    /// Where to draw: at least as high as the place.
    [[nodiscard]] Rect content() const { return content_; }

private:
    Canvas canvas_;
    Rect content_;
};

} // namespace lightoff::canvas
