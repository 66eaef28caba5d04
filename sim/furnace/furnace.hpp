// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/network_now.hpp"

/// The whole appliance: the one place where the rooms are wired together.
namespace lightoff::furnace {

/// Rises in the commit that changes what the same actions lead to.
inline constexpr int kPhysicsVersion = 8;

/// A furnace that has stood idle: everything at the basement's temperature, the house at its own.
State rest_state(const Model& model, const Inputs& inputs, double house_k);

/// One tick of 50 ms. The order, written down once: network -> relays, board and thermostat (what they decide
/// acts on the network of the next step) -> draft, gas, flame, air, heat. Where something fast goes on
/// (an armature moving, a motor running up, flame spreading, a fuse heating) network and plant take five
/// steps of 10 ms instead of one; whether they do depends on the state at the start of the tick only.
/// Writes to the condition what the tick wears out (a fuse that melts).
void tick(const Model& model, State& state, Condition& condition, const Inputs& inputs, Workspace& workspace);

/// The predicate of the five substeps.
bool needs_substeps(const Model& model, const State& state, const Inputs& inputs);

} // namespace lightoff::furnace
