// SPDX-License-Identifier: MIT
#include "gui/sheet/tabs.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/sheet/column.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace lightoff::sheet {

using namespace canvas;

namespace {

constexpr float kLeastTarget = 24; // pixels

constexpr float kBeside = 10, kLeastBeside = 6; // design pixels beside the words

/// Boxes of all tabs in their lines, from the upper left.
std::vector<Rect> lay_out(const Canvas& canvas, Rect area, std::span<const std::string> words, float beside) {
    const float high =
        std::round(std::max(kLeastTarget, line_height(canvas, Type::Secondary) + canvas.px(12)));
    std::vector<Rect> boxes;
    ImVec2 at{area.min.x + canvas.px(4), area.min.y + canvas.px(4)};
    for (const std::string& word : words) {
        const float wide = std::ceil(text_size(canvas, word, Type::Secondary).x) + 2 * canvas.px(beside);
        if (at.x + wide > area.max.x && at.x > area.min.x + canvas.px(4))
            at = {area.min.x + canvas.px(4), at.y + high + canvas.px(4)};
        boxes.push_back(rect_at({std::round(at.x), std::round(at.y)}, {std::max(kLeastTarget, wide), high}));
        at.x += wide + canvas.px(3);
    }
    return boxes;
}

} // namespace

Tabs draw_tabs(const Canvas& canvas, Rect area, std::span<const std::string> words, std::size_t chosen) {
    const Theme& theme = *canvas.theme;
    std::vector<Rect> boxes = lay_out(canvas, area, words, kBeside);
    if (boxes.back().min.y > boxes.front().min.y) // closer together, if that saves lines
        if (std::vector<Rect> closer = lay_out(canvas, area, words, kLeastBeside);
            closer.back().min.y < boxes.back().min.y)
            boxes = std::move(closer);
    Tabs tabs{chosen, area};
    const float base = boxes.back().max.y;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const Rect& box = boxes[i];
        const Touch now = touch(canvas, box, words[i], words[i]);
        const bool open = i == chosen;
        if (open || now.hovered)
            fill(canvas, box, open ? theme.ink : theme.panel);
        const std::array<ImVec2, 4> edge{ImVec2{box.min.x, box.max.y}, box.min, ImVec2{box.max.x, box.min.y},
                                         box.max};
        stroke(canvas, edge, Line::Rule, open || now.hovered ? theme.ink : theme.pencil);
        if (now.keyboard)
            outline(canvas, box.shrunk(-canvas.px(2)), Line::Outline, theme.ink);
        text_in(canvas, box, words[i], Type::Secondary, open ? theme.ground : theme.ink, Align::Middle);
        if (now.pressed)
            tabs.chosen = i;
    }
    segment(canvas, {area.min.x, base}, {area.max.x, base}, Line::Outline, theme.ink);
    tabs.rest.min.y = base + canvas.px(6);
    return tabs;
}

} // namespace lightoff::sheet
