// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/condition.hpp"
#include "furnace/model.hpp"

#include <cstdint>

namespace lightoff::furnace {

/// How this furnace left the factory and was set up: healthy, but not needle-perfect. Each seed gives part
/// values within the profile's tolerances, uniform over nominal +- spread; seed 0 gives a healthy Condition's
/// defaults. A pure function of seed and profile, so a part that is put right can be put back to it.
Condition as_built(const Model& model, std::uint64_t seed);

} // namespace lightoff::furnace
