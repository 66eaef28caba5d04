// SPDX-License-Identifier: MIT
#pragma once
#include "control/board.hpp"
#include "control/board_description.hpp"

/// Checks of a whole table, once every name in it is known. All throw std::invalid_argument.
namespace lightoff::control {

/// Fewest ticks between the beginnings of two flashes: at most 3 flashes a second.
std::uint32_t least_flash_ticks(double tick_s);

/// A pattern must be something and must not flash too fast, within a cycle and from one to the next.
void check_flash_rate(const LampPattern& pattern, double tick_s, const std::string& where);

/// Reachability, exits that can't be taken, things that are never used; fills in which inputs prove
/// each counted step and checks that against what the description says.
void check_board(Board& board, const BoardDescription& description);

} // namespace lightoff::control
