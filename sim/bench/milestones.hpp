// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace lightoff::bench {

int lit_burners(const furnace::Model& model, const World& world);
/// Whether the igniter is hot enough to light gas: 980 degrees Celsius.
bool igniter_lights_gas(const World& world);

struct Milestone {
    std::uint64_t tick = 0;
    std::string text;
};

/// What changed between one tick and the next that is worth a line: steps of the board, switches, flame,
/// motors. True things, for explore, debrief and the terminal; an attempt shows only what can be perceived.
class MilestoneWatch {
public:
    explicit MilestoneWatch(const furnace::Model& model) : model_(&model) {}

    /// Compares `world` with what the last call saw and appends what is new. The first call only looks.
    void look(const World& world, std::vector<Milestone>& out);

private:
    const furnace::Model* model_;
    std::vector<int> seen_;
};

} // namespace lightoff::bench
