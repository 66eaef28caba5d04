// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/lengths.hpp"
#include "gui/diagram/layout/positions.hpp"

#include <vector>

/// The circuits one below the other.
namespace lightoff::diagram {

struct PlacedRun {
    float y = 0;
    int row = 0; ///< counted from the top of the drawing
};

struct PlacedCircuit {
    float ground_start = 0;      ///< x at which its runs from the cabinet's metal begin
    std::vector<PlacedRun> runs; ///< by Circuit::runs
};

struct Stack {
    std::vector<PlacedCircuit> circuits; ///< by Circuits::circuits
    float high_end = 0;                  ///< the last row of the supply voltage
    bool has_low = false;
    float low_start = 0; ///< the first row of the low voltage
    Depth depth;         ///< below everything
};

/// Gives every vertex of a circuit its position. `depth` is that of what lies above.
Stack stack_circuits(const furnace::Model& model, const Circuits& circuits, const Lengths& lengths,
                     float width, Depth depth, Positions& positions);

/// The lowest row of the low voltage that meets a rail.
float lowest_on(const Circuits& circuits, const Stack& stack, Rail rail);

} // namespace lightoff::diagram
