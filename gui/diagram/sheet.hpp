// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/diagram/ladder.hpp"
#include "gui/view/known.hpp"

#include <vector>

namespace lightoff::diagram {

/// The ladder as it lies now.
struct Sheet {
    Sheet(const canvas::Canvas& on, canvas::Rect within, const Ladder& of, const view::Known& what,
          const canvas::Transform& where);

    const canvas::Canvas& canvas;
    canvas::Rect area;
    const Ladder& ladder;
    const view::Known& known;
    canvas::Transform place;
    std::vector<ImVec2> spots; ///< pixels

    [[nodiscard]] ImVec2 spot(int i) const { return spots[static_cast<std::size_t>(i)]; }
    [[nodiscard]] bool is_parted(int joint) const;
    [[nodiscard]] bool is_off(const Spot& lug) const;
    [[nodiscard]] std::vector<ImVec2> pixels(const std::vector<ImVec2>& path) const;
    /// Path of a wire in pixels, its ends where its lugs are.
    [[nodiscard]] std::vector<ImVec2> path_of(const Wire& wire) const;
};

/// Where the spots are in pixels: a lug that is off its pin hangs beside it.
std::vector<ImVec2> spot_places(const Ladder& ladder, const canvas::Transform& place,
                                const view::Known& known);

} // namespace lightoff::diagram
