// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/lengths.hpp"

#include <map>

namespace lightoff::diagram {

using Xs = std::map<int, float>; ///< by vertex; rails are not in it

/// How far the vertices of a circuit can be pushed towards its rails if no link gets shorter than its least
/// length.
class Pushing {
public:
    /// `ground_start`: x at which runs from the cabinet's metal begin.
    Pushing(const Circuits& circuits, const Lengths& lengths, const Circuit& circuit, float ground_start)
        : circuits_(circuits), lengths_(lengths), circuit_(circuit), ground_start_(ground_start) {}

    /// `least` holds what is asked for besides.
    [[nodiscard]] Xs to_left(const Xs& least) const;
    [[nodiscard]] Xs to_right(float width, const Xs& most) const;
    /// Width between the rails that holds the circuit.
    [[nodiscard]] float least_width() const;

private:
    /// Where a vertex lies at the least, by the one before it in its run.
    [[nodiscard]] float left_bound(const Run& run, std::size_t i, const Xs& x) const;
    /// Where it lies at the most, by the one after it.
    [[nodiscard]] float right_bound(const Run& run, std::size_t i, const Xs& x, float width) const;

    const Circuits& circuits_;
    const Lengths& lengths_;
    const Circuit& circuit_;
    float ground_start_;
};

/// Width between the rails that holds everything.
float width_of_drawing(const Circuits& circuits, const Lengths& lengths);

} // namespace lightoff::diagram
