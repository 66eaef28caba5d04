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
};

/// Whether the armature of a coil (place in Wiring::relays) has been pulled in.
bool armature_in(const Model& model, const State& state, int relay);

/// Bits of the switches that are made right now.
std::uint64_t switches_made(const Model& model, const State& state, const Inputs& inputs);

/// The network is held: rotor speeds, the igniter's ohms and the flame alter in their last digits in every
/// tick, and a solution serves for as long as the admittance of each motor and flame is within kPortBand,
/// that of the igniter within kIgniterBand, of the one that it was solved with. Then all of them are taken as
/// they are. Until then a port's current is off by no more than its band, a tenth of what a good meter can
/// tell, and its voltage by far less: torque and the igniter's heat are worked out from the voltage and the
/// present speed and ohms.
inline constexpr double kPortBand = 1e-4;
inline constexpr double kIgniterBand = 1e-3; ///< it cools for minutes while it is switched off

/// What the network is solved with at this moment. A function of the state alone, so that whoever looks sees
/// one and the same network.
NetworkPorts held_ports(const Model& model, const State& state);

/// The same as the network takes it.
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

/// Solves it and keeps in the state what it was solved with.
NetworkNow solve_now(const Model& model, State& state, const Condition& condition, const Inputs& inputs,
                     Workspace& workspace);

} // namespace lightoff::furnace
