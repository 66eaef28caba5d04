// SPDX-License-Identifier: MIT
#include "gui/cutaway/pen.hpp"

#include "gui/canvas/fills.hpp"

#include <cmath>

namespace lightoff::cutaway {

using namespace canvas;

std::vector<ImVec2> Pen::path(std::span<const ImVec2> points) const {
    std::vector<ImVec2> moved;
    for (const ImVec2 p : points) {
        moved.push_back(at(p));
    }
    return moved;
}

void Pen::line(std::initializer_list<ImVec2> points, Line weight, Colour colour) const {
    stroke(canvas, path({points.begin(), points.size()}), weight, colour);
}

void Pen::plate(Rect r, Line weight) const {
    fill(canvas, box(r), theme().ground);
    frame(r, weight);
}

void Pen::disc(ImVec2 centre, float radius, Line weight) const {
    canvas.list->AddCircleFilled(at(centre), px(radius), packed(theme().ground));
    canvas.list->AddCircle(at(centre), px(radius), packed(theme().ink), 0, line_width(canvas, weight));
}

void Pen::energy(std::initializer_list<ImVec2> points, Energy kind, double travel_s, float amount) const {
    const auto phase = static_cast<float>(std::fmod(travel_s * static_cast<double>(px(kMarkSpeed)), 1e5));
    const std::vector<ImVec2> way = path({points.begin(), points.size()});
    energy_path(canvas, way, kind, theme().ground, phase, amount);
    if (scene.still && kind != Energy::Air) // whose pattern has heads of its own
        chevrons(canvas, way, theme().of(kind));
}

void Pen::contact(ImVec2 centre, float half, bool closed) const {
    const ImVec2 left = centre - ImVec2{half, 0};
    const ImVec2 right = centre + ImVec2{half, 0};
    const ImVec2 tip = closed ? right : centre + ImVec2{half * 0.75F, -half * 0.85F};
    ink({left, tip}, Line::Outline);
    for (const ImVec2 dot : {left, right}) {
        canvas.list->AddCircleFilled(at(dot), px(half * 0.24F), packed(theme().ink));
    }
}

void Pen::capacitor(Rect can) const {
    plate(can, Line::Detail);
    const float third = can.width() / 3;
    for (const float x : {can.min.x + third, can.max.x - third}) {
        ink({{x, can.min.y - 4}, {x, can.min.y}}, Line::Detail);
    }
}

} // namespace lightoff::cutaway
