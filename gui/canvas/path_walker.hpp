// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/geometry.hpp"

#include <span>
#include <vector>

namespace lightoff::canvas {

/// Walks a polyline by distance, for dashes, dots and arrows that go round corners.
class PathWalker {
public:
    explicit PathWalker(std::span<const ImVec2> points);

    struct Place {
        ImVec2 point, along; // `along` has length 1
    };

    /// Whole length in pixels; 0 for fewer than two points.
    float length() const { return length_; }
    /// The place at a distance from the start, clamped to the ends. Needs at least two points.
    Place at(float distance) const;
    /// Appends to `out` the piece between two distances, corners included.
    void piece(float from, float to, std::vector<ImVec2>& out) const;

private:
    std::size_t segment_at(float distance) const;

    std::span<const ImVec2> points_;
    std::vector<float> starts_; // distance of each point from the first
    float length_ = 0;
};

} // namespace lightoff::canvas
