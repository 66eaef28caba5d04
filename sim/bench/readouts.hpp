// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "furnace/furnace.hpp"

#include <string>
#include <vector>

namespace lightoff::bench {

/// A quantity as the trade speaks of it.
struct Readout {
    std::string name;
    std::string unit; ///< trade unit
    double value = 0.0;
    std::string group = {}; ///< heading that it stands under
};

/// True values of everything that the trade has a name for, in trade units, in a fixed order. For explore,
/// the debrief and tests; an attempt never shows these.
std::vector<Readout> readouts(const furnace::Model& model, const World& world, furnace::Workspace& workspace);

/// The value of one of them; throws std::invalid_argument if there is none of that name.
double readout(const std::vector<Readout>& all, const std::string& name);

} // namespace lightoff::bench
