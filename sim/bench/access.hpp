// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "bench/world.hpp"
#include "furnace/inputs.hpp"
#include "furnace/model.hpp"

#include <string>
#include <vector>

namespace lightoff::bench {

/// Why a probe can't be put on a node with the doors as they are; empty if it can.
std::string why_out_of_reach(const furnace::Model& model, const furnace::Inputs& inputs, int node);

/// What people call a node: "board.R" for a terminal's pin, "board.R.lug" for its wire's end. find_test_point
/// gives the node back.
std::string point_name(const furnace::Model& model, int node);

/// Which door is in the way of a place; empty if none.
std::string why_behind_a_door(furnace::Place::Where where, const furnace::Inputs& inputs);

/// Why a part can't be got at for what needs that access; empty if it can.
std::string why_no_access(const Site& site, const World& world, const faults::Part& part,
                          const faults::Access& access);

/// Where a part of the wiring is; outside if nothing is known of it.
furnace::Place::Where where_is(const furnace::Model& model, const std::string& wiring_part);

/// Nodes of a place ("limit": pins and lugs), of one terminal of it ("limit.in") or of an element
/// ("igniter.element": its ends).
std::vector<int> nodes_of(const furnace::Model& model, const std::string& place);

/// Nodes that a person could ever touch: pins and lugs of terminals, and bare metal.
bool is_test_point(const furnace::Model& model, int node);

} // namespace lightoff::bench
