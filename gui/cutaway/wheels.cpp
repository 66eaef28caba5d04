// SPDX-License-Identifier: MIT
#include "gui/cutaway/wheels.hpp"

#include "gui/canvas/strokes.hpp"

#include <cmath>
#include <vector>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr float kBlurred_rad_s = 40; // from here on single blades are hard to see

ImVec2 direction(float angle) {
    return {std::cos(angle), std::sin(angle)};
}

/// A blade from hub ring to rim, leaning back against the way it turns.
void draw_blade(const Canvas& canvas, ImVec2 centre, float radius, float angle, Colour colour) {
    const std::array<ImVec2, 3> blade{centre + direction(angle) * (radius * 0.70F),
                                      centre + direction(angle - 0.10F) * (radius * 0.83F),
                                      centre + direction(angle - 0.26F) * (radius * 0.96F)};
    stroke(canvas, blade, Line::Detail, colour);
}

void draw_mark(const Canvas& canvas, ImVec2 centre, float radius, float angle, Colour colour) {
    std::vector<ImVec2> wedge;
    for (int i = 0; i <= 6; ++i) {
        wedge.push_back(centre +
                        direction(angle - 0.13F + 0.26F * static_cast<float>(i) / 6) * radius * 0.96F);
    }
    wedge.push_back(centre + direction(angle + 0.13F) * radius * 0.70F);
    wedge.push_back(centre + direction(angle - 0.13F) * radius * 0.70F);
    canvas.list->AddConvexPolyFilled(wedge.data(), static_cast<int>(wedge.size()), packed(colour));
}

} // namespace

void draw_wheel(const Canvas& canvas, ImVec2 centre, float radius, int blades, const Wheel& wheel) {
    const Theme& theme = *canvas.theme;
    const float blur = wheel.speed_rad_s / (wheel.speed_rad_s + kBlurred_rad_s);
    const Colour ring = mix(theme.ground, theme.ink, 0.22F * blur);
    canvas.list->AddCircleFilled(centre, radius * 0.96F, packed(ring));
    canvas.list->AddCircleFilled(centre, radius * 0.70F, packed(theme.ground));
    const Colour blade = faded(theme.ink, 1.0F - 0.65F * blur);
    for (int i = 0; i < blades; ++i) {
        const float angle = wheel.angle_rad + kTurn * static_cast<float>(i) / static_cast<float>(blades);
        draw_blade(canvas, centre, radius, angle, blade);
    }
    draw_mark(canvas, centre, radius, wheel.angle_rad, theme.ink);
    canvas.list->AddCircle(centre, radius * 0.97F, packed(theme.ink), 0, line_width(canvas, Line::Detail));
    canvas.list->AddCircle(centre, radius * 0.69F, packed(theme.pencil), 0, line_width(canvas, Line::Hidden));
    // Hub and spokes turn with the wheel.
    for (int i = 0; i < 3; ++i) {
        const ImVec2 along = direction(wheel.angle_rad + kTurn * static_cast<float>(i) / 3);
        segment(canvas, centre + along * (radius * 0.14F), centre + along * (radius * 0.69F), Line::Hidden,
                faded(theme.pencil, 1.0F - 0.5F * blur));
    }
    canvas.list->AddCircleFilled(centre, radius * 0.13F, packed(theme.ground));
    canvas.list->AddCircle(centre, radius * 0.13F, packed(theme.ink), 0, line_width(canvas, Line::Detail));
}

void draw_scroll(const Canvas& canvas, ImVec2 centre, float radius, float growth, float outlet_top,
                 bool mirrored) {
    const float side = mirrored ? -1.0F : 1.0F;
    std::vector<ImVec2> path;
    // From the cutoff beside the outlet once round to the outlet's far wall.
    constexpr int kSteps = 48;
    constexpr float kFrom = -0.62F; // up and towards the outlet
    const auto at = [&](float share) {
        const float angle = kFrom - share * (kTurn + kFrom);
        const float r = radius * (1 + growth * share);
        return ImVec2{centre.x + side * r * std::cos(angle), centre.y + r * std::sin(angle)};
    };
    const ImVec2 cutoff = at(0);
    path.push_back({cutoff.x - side * radius * 0.25F, outlet_top});
    path.push_back({cutoff.x - side * radius * 0.25F, cutoff.y - radius * 0.28F});
    for (int i = 0; i <= kSteps; ++i) {
        path.push_back(at(static_cast<float>(i) / kSteps));
    }
    path.push_back({path.back().x, outlet_top});
    stroke(canvas, path, Line::Outline, canvas.theme->ink);
}

} // namespace lightoff::cutaway
