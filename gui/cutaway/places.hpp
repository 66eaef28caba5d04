// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/geometry.hpp"
#include "instruments/spots.hpp"

#include <span>
#include <string_view>

/// Where in the drawing a hand finds what, in units of the drawing. What hangs in the house and not on the
/// furnace (thermostat, panel) has its place on the strip beside the drawing.
namespace lightoff::cutaway {

struct PartPlace {
    std::string_view part; ///< of the catalogue
    canvas::Rect box;
};
/// In the order in which they lie over each other: of two that hold a point the first is meant.
std::span<const PartPlace> part_places();
/// Null for a part that has its place elsewhere.
const PartPlace* find_part_place(std::string_view part);

struct SpotPlace {
    instruments::Spot spot = instruments::Spot::room;
    ImVec2 at{0, 0};
};
std::span<const SpotPlace> spot_places();

} // namespace lightoff::cutaway
