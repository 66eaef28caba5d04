// SPDX-License-Identifier: MIT
#include "gui/diagram/ladder.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::diagram {
namespace {

/// Whether a step stops there. Two pins on one track are one point.
bool stops(const Ladder& ladder, int from, int to, Stride stride) {
    if (stride == Stride::ends)
        return to != from;
    return !ladder.spot(to).lug && ladder.spot(to).node != ladder.spot(from).node;
}

std::optional<int> along_run(const Ladder& ladder, const std::vector<int>& run, int spot, int step,
                             Stride stride) {
    const auto here = std::find(run.begin(), run.end(), spot);
    if (here == run.end())
        return std::nullopt;
    for (auto i = static_cast<int>(here - run.begin()) + step; i >= 0 && i < static_cast<int>(run.size());
         i += step)
        if (const int next = run[static_cast<std::size_t>(i)]; stops(ladder, spot, next, stride))
            return next;
    return std::nullopt;
}

std::optional<int> in_next_row(const Ladder& ladder, int spot, bool down, Stride stride) {
    const Spot& from = ladder.spot(spot);
    std::optional<int> best;
    float best_far = 0;
    for (int i = 0; i < static_cast<int>(ladder.spots.size()); ++i) {
        const Spot& to = ladder.spot(i);
        const float dy = down ? to.at.y - from.at.y : from.at.y - to.at.y;
        if (dy < 1 || (stride == Stride::terminals && to.lug))
            continue;
        // Rows come first; within a row the nearest.
        const float far = dy * 100 + std::abs(to.at.x - from.at.x);
        if (!best || far < best_far) {
            best = i;
            best_far = far;
        }
    }
    return best;
}

} // namespace

std::optional<int> next_spot_along(const Ladder& ladder, int spot, Direction direction, Stride stride) {
    if (direction == Direction::up || direction == Direction::down)
        return in_next_row(ladder, spot, direction == Direction::down, stride);
    const int step = direction == Direction::right ? 1 : -1;
    for (const std::vector<int>& run : ladder.runs)
        if (const std::optional<int> next = along_run(ladder, run, spot, step, stride))
            return next;
    return std::nullopt;
}

std::optional<int> next_point_along(const Ladder& ladder, int node, Direction direction) {
    for (int i = 0; i < static_cast<int>(ladder.spots.size()); ++i) {
        if (ladder.spot(i).node != node)
            continue;
        const std::optional<int> next = next_spot_along(ladder, i, direction);
        if (next && ladder.spot(*next).node != node)
            return ladder.spot(*next).node;
    }
    return std::nullopt;
}

} // namespace lightoff::diagram
