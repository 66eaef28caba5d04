// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"

#include <string>

/// What the control board is at, in the words of its own table.
namespace lightoff::explore {

/// What a machine of the board (0: burner) is doing; "No control power" if the board has none.
std::string board_step(const furnace::Model& model, const bench::World& world, std::size_t machine);

/// What the lamp shows: "count 5", "wink", "dark".
std::string lamp_words(const furnace::Model& model, const bench::World& world);

} // namespace lightoff::explore
