// SPDX-License-Identifier: MIT
#include "gui/canvas/scrolled.hpp"

#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lightoff::canvas {

Scrolled::Scrolled(const Canvas& outer, Rect area, const char* id, float height, bool own_arrows) {
    area = {{std::floor(area.min.x), std::floor(area.min.y)}, {std::ceil(area.max.x), std::ceil(area.max.y)}};
    ImGui::SetCursorScreenPos(area.min);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    ImGui::BeginChild(id, area.size(), false,
                      ImGuiWindowFlags_NoBackground |
                          (own_arrows ? ImGuiWindowFlags_NoNavInputs : ImGuiWindowFlags_None));
    ImGui::PopStyleVar();
    canvas_ = outer.here();
    const bool scrolls = height > area.height();
    const float width = area.width() - (scrolls ? ImGui::GetStyle().ScrollbarSize + outer.px(4) : 0);
    if (scrolls && own_arrows && !ImGui::GetIO().WantTextInput) {
        const float by = 3 * line_height(canvas_, Type::Body);
        for (const auto& [key, sign] : {std::pair{ImGuiKey_DownArrow, 1.0F}, {ImGuiKey_UpArrow, -1.0F}})
            if (ImGui::IsKeyPressed(ImGui::GetKeyIndex(key)))
                ImGui::SetScrollY(std::clamp(ImGui::GetScrollY() + sign * by, 0.0F, ImGui::GetScrollMaxY()));
    }
    content_ = rect_at({area.min.x, area.min.y - std::round(ImGui::GetScrollY())},
                       {width, scrolls ? std::ceil(height) : area.height()});
    if (canvas_.probe != nullptr && scrolls)
        canvas_.probe->set_view(area);
}

Scrolled::~Scrolled() {
    if (canvas_.probe != nullptr)
        canvas_.probe->set_view({});
    ImGui::SetCursorScreenPos(content_.min);
    ImGui::Dummy({1, content_.height()});
    ImGui::EndChild();
}

} // namespace lightoff::canvas
