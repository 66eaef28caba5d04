// SPDX-License-Identifier: MIT
#pragma once
#include <imgui.h>

#include <cmath>
#include <cstdint>
#include <vector>

namespace lightoff::test {

/// All that the frame just ended draws, to the last corner of the last triangle: places in 1/64 of a pixel,
/// and colours.
inline std::vector<std::uint32_t> drawn_corners() {
    std::vector<std::uint32_t> all;
    const ImDrawData& data = *ImGui::GetDrawData();
    for (int i = 0; i < data.CmdListsCount; ++i)
        for (const ImDrawVert& corner : data.CmdLists[i]->VtxBuffer) {
            all.push_back(static_cast<std::uint32_t>(std::lround(corner.pos.x * 64)));
            all.push_back(static_cast<std::uint32_t>(std::lround(corner.pos.y * 64)));
            all.push_back(corner.col);
        }
    return all;
}

} // namespace lightoff::test
