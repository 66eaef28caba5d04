// SPDX-License-Identifier: MIT
#pragma once
#include "control/board.hpp"
#include "control/board_description.hpp"

namespace lightoff::control {

/// Checks a board's description and turns it into the table that is stepped, for ticks of `tick_s`.
/// Throws std::invalid_argument with a sentence that names the place, what was found and what is
/// allowed: unknown or doubled names, durations that aren't whole ticks, thresholds without
/// hysteresis, states that can't be reached or can't get back to standby, exits that can never be
/// taken, things declared and never used, a lamp faster than 3 flashes a second, a counted step
/// whose proof is not what the exits leading there look for.
Board build_board(const BoardDescription& description, double tick_s = 0.05);

} // namespace lightoff::control
