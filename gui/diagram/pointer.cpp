// SPDX-License-Identifier: MIT
#include "gui/diagram/pointer.hpp"

#include "gui/canvas/controls.hpp"

#include <cmath>

namespace lightoff::diagram {
namespace {

constexpr float kClickSlack = 4; // pixels that a pointer may move in a click

} // namespace

Hit take_pointer(const Sheet& sheet, DiagramView& view, view::Wanted& wanted) {
    const ImGuiIO& io = ImGui::GetIO();
    ImGui::SetCursorScreenPos(sheet.area.min);
    canvas::press_area("sheet", sheet.area);
    const bool hovered = ImGui::IsItemHovered();
    if (ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack)) {
        view.dragging = true;
        view.pan(io.MouseDelta);
    }
    if (hovered && io.MouseWheel != 0)
        view.zoom_by(sheet.area, sheet.ladder, io.MousePos, std::pow(1.2F, io.MouseWheel));
    Hit hover;
    if (hovered && !view.dragging) {
        hover = hit_at(sheet, io.MousePos, view.lead_in_hand != view::Wanted::Lead::none);
        wanted.hover = thing_of(sheet, hover);
    }
    if (ImGui::IsItemDeactivated()) {
        const bool dragged = io.MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] > kClickSlack * kClickSlack;
        if (!dragged && hovered)
            pick(sheet, hover, view, wanted);
        view.dragging = false;
    }
    return hover;
}

} // namespace lightoff::diagram
