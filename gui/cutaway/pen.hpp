// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/cutaway/scene.hpp"

#include <initializer_list>
#include <span>
#include <vector>

namespace lightoff::cutaway {

/// Draws a scene in drawing units.
struct Pen {
    canvas::Canvas canvas;
    canvas::Transform place;
    float top = 0; ///< of the drawing in its units: ducts end here
    const CutawayScene& scene;

    const canvas::Theme& theme() const { return *canvas.theme; }
    ImVec2 at(ImVec2 p) const { return place.to_screen(p); }
    float px(float units) const { return units * place.zoom; }
    canvas::Rect box(canvas::Rect r) const { return place.to_screen(r); }
    std::vector<ImVec2> path(std::span<const ImVec2> points) const;
    void line(std::initializer_list<ImVec2> points, canvas::Line weight, canvas::Colour colour) const;
    void ink(std::initializer_list<ImVec2> points, canvas::Line weight = canvas::Line::Outline) const {
        line(points, weight, theme().ink);
    }
    void frame(canvas::Rect r, canvas::Line weight = canvas::Line::Outline) const {
        outline(canvas, box(r), weight, theme().ink);
    }
    void plate(canvas::Rect r, canvas::Line weight = canvas::Line::Outline) const;
    void disc(ImVec2 centre, float radius, canvas::Line weight = canvas::Line::Outline) const;
    /// What flows along, moved by what has flowed so far.
    void energy(std::initializer_list<ImVec2> points, canvas::Energy kind, double travel_s,
                float amount = 0.5F) const;
    /// Two contacts and a blade that lies across them or stands off.
    void contact(ImVec2 centre, float half, bool closed) const;
    /// A can with two terminals.
    void capacitor(canvas::Rect can) const;
};

/// Units a second at which marks of what flows move at the rated flow.
inline constexpr float kMarkSpeed = 46;

} // namespace lightoff::cutaway
