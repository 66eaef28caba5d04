// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "gui/diagram/ladder.hpp"

#include <vector>

namespace lightoff::explore {

/// What each node of the network carries at this moment: 120 V from half the line's voltage against neutral
/// on, 24 V from half the secondary's against common.
std::vector<diagram::Carried> energised(const diagram::Ladder& ladder, const furnace::Model& model,
                                        const bench::World& world, furnace::Workspace& workspace);

} // namespace lightoff::explore
