// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/network.hpp"
#include "furnace/condition.hpp"
#include "furnace/inputs.hpp"
#include "furnace/model.hpp"
#include "furnace/state.hpp"

namespace lightoff::furnace {

/// Scratch for one thread; holds nothing that changes a result.
struct Workspace {
    explicit Workspace(const Model& model) : network(model.wiring.netlist) {}
    electrical::Workspace network;
    electrical::NetworkInputs inputs;
    electrical::PortInputs ports;
    electrical::Workspace::SenseValues rms{};
};

/// Whether the armature of a coil (place in Wiring::relays) has been pulled in.
bool armature_in(const Model& model, const State& state, int relay);

/// Bits of the switches that are made right now.
std::uint64_t switches_made(const Model& model, const State& state, const Inputs& inputs);

/// Rotor speeds, igniter resistance and flame: what the network sees of the moving and burning parts.
electrical::PortInputs port_inputs(const Model& model, const State& state);
/// The same into what a workspace has; ports that the furnace does not have stay as they are.
void set_ports(const Model& model, const State& state, electrical::PortInputs& ports);

/// Solves the network as it is at this moment and leaves the workspace set to it. The next solve overwrites
/// the solution.
const electrical::AcSolution& solve_ac(const Model& model, const State& state, const Condition& condition,
                                       const Inputs& inputs, Workspace& workspace);

/// The network at one moment as a tick needs it: in the workspace, till the next solve.
struct NetworkNow {
    const electrical::AcSolution& ac;
    const electrical::Workspace::SenseValues& rms; ///< of the senses that every tick needs
};

NetworkNow solve_now(const Model& model, const State& state, const Condition& condition, const Inputs& inputs,
                     Workspace& workspace);

} // namespace lightoff::furnace
