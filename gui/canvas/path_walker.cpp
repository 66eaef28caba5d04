// SPDX-License-Identifier: MIT
#include "gui/canvas/path_walker.hpp"

#include <cmath>

namespace lightoff::canvas {

PathWalker::PathWalker(std::span<const ImVec2> points) : points_(points) {
    starts_.reserve(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (i > 0) {
            const ImVec2 step = points[i] - points[i - 1];
            length_ += std::sqrt(step.x * step.x + step.y * step.y);
        }
        starts_.push_back(length_);
    }
}

std::size_t PathWalker::segment_at(float distance) const {
    const auto after = std::upper_bound(starts_.begin() + 1, starts_.end() - 1, distance);
    return static_cast<std::size_t>(after - starts_.begin()) - 1;
}

PathWalker::Place PathWalker::at(float distance) const {
    const std::size_t i = segment_at(distance);
    const ImVec2 step = points_[i + 1] - points_[i];
    const float span = starts_[i + 1] - starts_[i];
    if (span <= 0) {
        return {points_[i], {1, 0}};
    }
    const float share = std::clamp((distance - starts_[i]) / span, 0.0F, 1.0F);
    return {points_[i] + step * share, step * (1 / span)};
}

void PathWalker::piece(float from, float to, std::vector<ImVec2>& out) const {
    if (points_.size() < 2) {
        return;
    }
    from = std::clamp(from, 0.0F, length_);
    to = std::clamp(to, from, length_);
    out.push_back(at(from).point);
    for (std::size_t i = segment_at(from) + 1; i < points_.size() && starts_[i] < to; ++i) {
        out.push_back(points_[i]);
    }
    out.push_back(at(to).point);
}

} // namespace lightoff::canvas
