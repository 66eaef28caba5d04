// SPDX-License-Identifier: MIT
#include "gui/canvas/flow.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::canvas {
namespace {

float width_of(const Canvas& canvas, const FlowItem& item) {
    const float own = item.is_button ? button_width(canvas, item.words, item.key)
                                     : text_size(canvas, item.words, Type::Body).x;
    return std::ceil(std::max(own, item.least_width));
}

} // namespace

Flow lay_out_flow(const Canvas& canvas, Rect area, const std::vector<FlowItem>& items) {
    Flow flow;
    const float height = control_height(canvas);
    const float between_groups = canvas.px(18);
    const float between_lines = canvas.px(6);
    const float overlap = std::round(line_width(canvas, Line::Rule));
    ImVec2 at = area.min;
    for (std::size_t first = 0; first < items.size();) {
        std::size_t last = first;
        float width = 0;
        while (last < items.size() && items[last].group == items[first].group) {
            width += width_of(canvas, items[last]) - overlap;
            ++last;
        }
        if (at.x > area.min.x && at.x + width > area.max.x) {
            at = {area.min.x, at.y + height + between_lines};
        }
        for (; first < last; ++first) {
            const float w = width_of(canvas, items[first]);
            if (at.x > area.min.x && at.x + w > area.max.x + 0.5F) {
                at = {area.min.x, at.y + height + between_lines};
            }
            flow.boxes.push_back(rect_at(at, {w, height}));
            at.x += w - (items[first].is_button ? overlap : -canvas.px(10));
        }
        at.x += between_groups;
    }
    flow.height = flow.boxes.empty() ? 0 : flow.boxes.back().max.y - area.min.y;
    return flow;
}

float width_of_flow(const Canvas& canvas, const std::vector<FlowItem>& items) {
    const Flow flow = lay_out_flow(canvas, {{0, 0}, {1e6F, 1e6F}}, items);
    return flow.boxes.empty() ? 0 : flow.boxes.back().max.x;
}

int draw_flow(const Canvas& canvas, const Flow& flow, const std::vector<FlowItem>& items) {
    int pressed = -1;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const FlowItem& item = items[i];
        if (!item.is_button) {
            text_in(canvas, flow.boxes[i], item.words, Type::Body, canvas.theme->ink);
            continue;
        }
        ImGui::PushID(static_cast<int>(i));
        if (button(canvas, flow.boxes[i], item.words, item.chosen, item.key)) {
            pressed = static_cast<int>(i);
        }
        ImGui::PopID();
    }
    return pressed;
}

} // namespace lightoff::canvas
