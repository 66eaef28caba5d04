// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "bench/world.hpp"
#include "furnace/furnace.hpp"

namespace lightoff::bench {

/// What an action does to the World once its time has passed. `check` has allowed it.
void take_effect(const Site& site, World& world, furnace::Workspace& workspace, const Action& action);

} // namespace lightoff::bench
