// SPDX-License-Identifier: MIT
#pragma once
#include <imgui.h>

#include <cstddef>
#include <vector>

namespace lightoff::diagram {

/// Where a vertex of the circuits lies in the drawing.
struct Position {
    ImVec2 at{0, 0};
    int row = 0;          ///< counted from the top
    bool settled = false; ///< its height and row are known
};

class Positions {
public:
    explicit Positions(std::size_t vertices) : all_(vertices) {}
    Position& operator[](int vertex) { return all_[static_cast<std::size_t>(vertex)]; }
    const Position& operator[](int vertex) const { return all_[static_cast<std::size_t>(vertex)]; }

private:
    std::vector<Position> all_;
};

/// How far down the drawing is filled.
struct Depth {
    float y = 0; ///< of the last row
    int row = 0; ///< number of the next one
};

} // namespace lightoff::diagram
