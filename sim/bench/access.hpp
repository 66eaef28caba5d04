// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/inputs.hpp"
#include "furnace/model.hpp"

#include <string>

namespace lightoff::bench {

/// Why a probe can't be put on a node with the doors as they are; empty if it can.
std::string why_out_of_reach(const furnace::Model& model, const furnace::Inputs& inputs, int node);

/// Nodes that a person could ever touch: pins and lugs of terminals, and bare metal.
bool is_test_point(const furnace::Model& model, int node);

} // namespace lightoff::bench
