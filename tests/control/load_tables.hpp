// SPDX-License-Identifier: MIT
#pragma once
#include "control/board_description.hpp"
#include "control/thermostat.hpp"

#include <string>

/// Reads the tables beside this file into the descriptions of the room, key by key. For tests of
/// this room alone; the program's own loader checks more.
namespace control_tests {

lightoff::control::BoardDescription load_board(const std::string& file);
lightoff::control::ThermostatDescription load_thermostat(const std::string& file);

} // namespace control_tests
