// SPDX-License-Identifier: MIT
#include "gui/sheet/slider.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/sheet/column.hpp"

#include <algorithm>
#include <cmath>
#include <imgui_internal.h>

namespace lightoff::sheet {
namespace {

using namespace canvas;

constexpr float kKnob = 7; // half its width, design pixels
constexpr float kLeastTarget = 24;

bool pressed(ImGuiKey key) {
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key));
}

/// What the keyboard makes of it while it stands on the slider.
float by_keys(float share, const SliderMarks& marks, float step) {
    const float by = ImGui::GetIO().KeyShift ? step / 5 : step;
    const bool left = pressed(ImGuiKey_LeftArrow);
    const bool right = pressed(ImGuiKey_RightArrow);
    if (left || right) {
        ImGui::NavMoveRequestCancel(); // the library would go to the next control
        share += right ? by : -by;
    }
    return pressed(ImGuiKey_Home) ? marks.healthy : std::clamp(share, 0.0F, 1.0F);
}

} // namespace

float slider_height(const Canvas& canvas) {
    return std::round(std::max(kLeastTarget, canvas.px(28)));
}

bool slider(const Canvas& canvas, Rect box, std::string_view id, float& share, const SliderMarks& marks,
            float step) {
    const Theme& theme = *canvas.theme;
    const Touch now = touch(canvas, box, id, shown_part(id));
    const float knob = canvas.px(kKnob);
    const Rect track{{box.min.x + knob, box.min.y}, {box.max.x - knob, box.max.y}};
    const float before = share;
    if (now.held) {
        share =
            std::clamp((ImGui::GetIO().MousePos.x - track.min.x) / std::max(1.0F, track.width()), 0.0F, 1.0F);
    }
    if (now.keyboard) {
        share = by_keys(share, marks, step);
        outline(canvas, box, Line::Outline, theme.ink);
    }
    const auto x = [&](float at) {
        return std::round(track.min.x + std::clamp(at, 0.0F, 1.0F) * track.width());
    };
    const float y = std::round(box.centre().y);
    segment(canvas, {track.min.x, y}, {track.max.x, y}, Line::Rule, theme.pencil);
    for (int i = 0; i <= 10; ++i) {
        const float at = x(static_cast<float>(i) / 10);
        segment(canvas, {at, y}, {at, y + canvas.px(i % 5 == 0 ? 6.0F : 3.0F)}, Line::Rule, theme.pencil);
    }
    // Healthy: a wedge that points down on the line.
    const float home = x(marks.healthy);
    canvas.list->AddTriangleFilled({home, y - canvas.px(2)}, {home - canvas.px(5), y - canvas.px(11)},
                                   {home + canvas.px(5), y - canvas.px(11)}, packed(theme.ink));
    // What lies between what is and what if.
    const float from = x(marks.as_it_is);
    const float to = x(share);
    fill(canvas, {{std::min(from, to), y - canvas.px(1)}, {std::max(from, to), y + canvas.px(2)}}, theme.ink);
    canvas.list->AddCircle({from, y + 0.5F}, canvas.px(5), packed(theme.ink), 0,
                           std::max(1.0F, canvas.px(1.6F)));
    const Rect handle{{to - canvas.px(4), y - canvas.px(9)}, {to + canvas.px(4), y + canvas.px(10)}};
    fill(canvas, handle, now.held || now.hovered ? theme.ink : theme.ground);
    outline(canvas, handle, Line::Outline, theme.ink);
    return share != before;
}

} // namespace lightoff::sheet
