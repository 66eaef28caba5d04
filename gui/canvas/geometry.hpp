// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>
#include <imgui.h>

namespace lightoff::canvas {

inline constexpr float kTurn = 6.2831853F; ///< rad

// ImVec2 has no arithmetic of its own in the public header.
inline ImVec2 operator+(ImVec2 a, ImVec2 b) {
    return {a.x + b.x, a.y + b.y};
}
inline ImVec2 operator-(ImVec2 a, ImVec2 b) {
    return {a.x - b.x, a.y - b.y};
}
inline ImVec2 operator*(ImVec2 a, float k) {
    return {a.x * k, a.y * k};
}

/// An axis-parallel box, y downwards, in pixels (or in drawing units before a Transform).
struct Rect {
    ImVec2 min{0, 0}, max{0, 0};

    float width() const { return max.x - min.x; }
    float height() const { return max.y - min.y; }
    ImVec2 size() const { return max - min; }
    ImVec2 centre() const { return (min + max) * 0.5F; }
    bool holds(ImVec2 p) const { return p.x >= min.x && p.x < max.x && p.y >= min.y && p.y < max.y; }
    Rect shrunk(float by) const { return {{min.x + by, min.y + by}, {max.x - by, max.y - by}}; }

    // Layout by cutting: each takes a piece off this box and returns it.
    Rect cut_left(float w) {
        const Rect piece{min, {std::min(min.x + w, max.x), max.y}};
        min.x = piece.max.x;
        return piece;
    }
    Rect cut_right(float w) {
        const Rect piece{{std::max(max.x - w, min.x), min.y}, max};
        max.x = piece.min.x;
        return piece;
    }
    Rect cut_top(float h) {
        const Rect piece{min, {max.x, std::min(min.y + h, max.y)}};
        min.y = piece.max.y;
        return piece;
    }
    Rect cut_bottom(float h) {
        const Rect piece{{min.x, std::max(max.y - h, min.y)}, max};
        max.y = piece.min.y;
        return piece;
    }
};

inline Rect rect_at(ImVec2 corner, ImVec2 size) {
    return {corner, corner + size};
}

} // namespace lightoff::canvas
