// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/diagram_view.hpp"
#include "gui/diagram/sheet.hpp"

#include <cstdint>
#include <optional>
#include <span>

/// What lies under a pointer, and what a pick of it asks for.
namespace lightoff::diagram {

inline constexpr float kReach_px = 40;     ///< design pixels: nearest wins
inline constexpr float kCatchZone_px = 24; ///< across: within it a point comes before what lies beneath

struct Hit {
    enum class Kind : std::uint8_t { nothing, spot, wire, symbol };
    Kind kind = Kind::nothing;
    int index = -1;
};

/// A point first if the pointer is in its catch zone, then what lies beneath, then the nearest point.
Hit hit_at(const Sheet& sheet, ImVec2 pointer, bool points_only);

/// The nearest of some places within reach; none beyond.
std::optional<int> nearest_spot(std::span<const ImVec2> places, ImVec2 pointer, float reach_px);

/// The part of the catalogue that a symbol stands for; -1 if none.
int part_of(const Sheet& sheet, const Symbol& symbol);
std::optional<view::Thing> thing_of(const Sheet& sheet, Hit hit);

/// A lead in hand goes to a point; else what was hit gets the focus, and a point the keyboard's cursor.
void pick(const Sheet& sheet, Hit hit, DiagramView& view, view::Wanted& wanted);

} // namespace lightoff::diagram
