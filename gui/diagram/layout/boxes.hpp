// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/supply.hpp"

/// Boxes round what hangs together, found in what is drawn.
namespace lightoff::diagram {

/// Parts that the supply passes in more than one of its rows, the board left out.
std::vector<Block> boxes_of_supply(const Ladder& ladder, const Circuits& circuits, const Supply& supply);
/// Row by row round what is in the living room.
std::vector<Block> boxes_of_rooms(const Ladder& ladder, const furnace::Model& model);
/// A motor's casing round its windings, row by row: a capacitor beside them stays outside.
std::vector<Block> casings_of_motors(const Ladder& ladder, const furnace::Model& model);

} // namespace lightoff::diagram
