// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>
#include <imgui.h>
#include <imgui_internal.h>

namespace lightoff::test {

/// Scrolls every child window of the page so far down, or to its end.
inline void scroll_children(float y) {
    for (ImGuiWindow* window : ImGui::GetCurrentContext()->Windows)
        if ((window->Flags & ImGuiWindowFlags_ChildWindow) != 0)
            ImGui::SetScrollY(window, std::min(y, window->ScrollMax.y));
}

/// How far the longest of them can be scrolled.
inline float longest_scroll() {
    float most = 0;
    for (const ImGuiWindow* window : ImGui::GetCurrentContext()->Windows)
        if ((window->Flags & ImGuiWindowFlags_ChildWindow) != 0)
            most = std::max(most, window->ScrollMax.y);
    return most;
}

} // namespace lightoff::test
