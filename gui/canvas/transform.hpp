// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/geometry.hpp"

namespace lightoff::canvas {

/// Pan and zoom between a drawing's own units and pixels: screen = offset + zoom * drawing.
struct Transform {
    ImVec2 offset{0, 0};
    float zoom = 1;

    ImVec2 to_screen(ImVec2 p) const { return offset + p * zoom; }
    ImVec2 to_drawing(ImVec2 p) const { return (p - offset) * (1 / zoom); }
    Rect to_screen(Rect r) const { return {to_screen(r.min), to_screen(r.max)}; }

    void pan(ImVec2 by_px) { offset = offset + by_px; }

    /// Zooms by `factor` (clamped to the limits) so that the drawing stays put under `fixed_px`.
    void zoom_about(ImVec2 fixed_px, float factor, float least = 0.25F, float most = 8.0F) {
        const ImVec2 under = to_drawing(fixed_px);
        zoom = std::clamp(zoom * factor, least, most);
        offset = fixed_px - under * zoom;
    }
};

/// The largest zoom that shows the whole drawing, centred in the view.
inline Transform fit(Rect drawing, Rect view_px) {
    Transform t;
    t.zoom = std::min(view_px.width() / drawing.width(), view_px.height() / drawing.height());
    t.offset = view_px.centre() - drawing.centre() * t.zoom;
    return t;
}

} // namespace lightoff::canvas
