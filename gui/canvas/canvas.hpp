// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/fonts.hpp"
#include "gui/canvas/geometry.hpp"
#include "gui/canvas/theme.hpp"

namespace lightoff::canvas {

class LayoutProbe;

/// What every drawing function needs: where to draw and how things look. A value, cheap to copy; copy it to
/// draw into another list or at another zoom.
struct Canvas {
    ImDrawList* list = nullptr;
    const Theme* theme = nullptr;
    const Fonts* fonts = nullptr;
    float scale = 1; // pixels for one design pixel (1080 lines, text scale 1)
    float zoom = 1;  // of the drawing; line widths grow with its square root
    // Make the renderer add light, and mix as ordinary again. Null: glow is mixed as ordinary colour. (The
    // library's own reset callback is no way back: its OpenGL 2 renderer pushes matrices in it that it never
    // pops.)
    ImDrawCallback additive = nullptr;
    ImDrawCallback ordinary = nullptr;
    LayoutProbe* probe = nullptr; // records text and boxes in tests

    float px(float design_px) const { return design_px * scale; }
    /// The same canvas on the draw list of the window (or child) now being built.
    Canvas here() const {
        Canvas copy = *this;
        copy.list = ImGui::GetWindowDrawList();
        return copy;
    }
};

} // namespace lightoff::canvas
