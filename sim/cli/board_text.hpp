// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "furnace/model.hpp"

#include <string>
#include <vector>

/// What the control board is at, in the words of its table.
namespace lightoff::cli {

/// "Steady run", of each of its machines; all of them "no control power" if it has none.
std::vector<std::string> board_steps(const furnace::Model& model, const bench::World& world);

/// The lamp's pattern by name, and its count if it counts: "count 5"; "dark".
std::string lamp_text(const furnace::Model& model, const bench::World& world);

} // namespace lightoff::cli
