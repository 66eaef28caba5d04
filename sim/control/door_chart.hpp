// SPDX-License-Identifier: MIT
#pragma once
#include "control/board.hpp"

#include <string>
#include <vector>

/// The chart inside the door, made from the very table that drives the board.
namespace lightoff::control {

/// One signal of the lamp.
struct SignalRow {
    std::string signal;  ///< what is seen: "1 flash of 0.1 s, then dark 3 s, repeating"
    std::string meaning; ///< words of the table
};

/// One count.
struct StepRow {
    int count = 0;
    std::string step;                 ///< what has been passed
    std::string known_by;             ///< "sensed", "timed" or "commanded"
    std::vector<std::string> inputs;  ///< for a sensed step, the inputs that the table looks for
    std::vector<std::string> measure; ///< what to measure when the lamp stops here
};

struct DoorChart {
    std::string board;
    std::vector<SignalRow> signals;
    std::vector<StepRow> steps;
};

DoorChart door_chart(const Board& board);

} // namespace lightoff::control
