// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/furnace.hpp"

#include <cstdint>

namespace lightoff::instruments {

/// What instruments look at: the furnace at the end of a tick.
struct Moment {
    const furnace::Model& model;
    const furnace::State& state;
    const furnace::Condition& condition;
    const furnace::Inputs& inputs; ///< with the meter's leads attached as they were in this tick
    std::uint64_t seed = 0;        ///< of the attempt
    std::uint64_t tick = 0;
    furnace::Workspace& workspace;

    /// Whether a window that is renewed every `ticks` is renewed now.
    [[nodiscard]] bool renews(int ticks) const { return tick % static_cast<std::uint64_t>(ticks) == 0; }
};

} // namespace lightoff::instruments
