// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/pushing.hpp"

/// Where the vertices of a circuit lie between the rails.
namespace lightoff::diagram {

/// How far from their rails the wiring leaves the parts that the rails are in: the edges of the board, common
/// to all circuits of one voltage.
struct EdgeColumns {
    float left = 0, right = 0;
};

EdgeColumns find_columns(const Circuits& circuits, const Lengths& lengths, float width, bool low_voltage);

/// What a circuit is placed into.
struct Frame {
    float width = 0;        ///< between the rails
    float ground_start = 0; ///< x at which runs from the cabinet's metal begin
    EdgeColumns columns;
};

/// `pinned`: vertices that must lie where something above them lies.
Xs place_across(const Circuits& circuits, const Lengths& lengths, const Circuit& circuit, const Frame& frame,
                const Xs& pinned);

} // namespace lightoff::diagram
