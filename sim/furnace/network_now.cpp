// SPDX-License-Identifier: MIT
#include "furnace/network_now.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>

namespace lightoff::furnace {
namespace {

/// What moves switches, each at its driven_bit: set while it holds its switches made.
std::uint64_t driven(const Model& model, const State& state, const Inputs& inputs) {
    const heat::Outputs& heat = state.signals.heat;
    std::uint64_t bits = 0;
    const auto set = [&](Driver driver, bool made) {
        bits |= std::uint64_t{made} << static_cast<unsigned>(driven_bit(driver, 0));
    };
    set(Driver::breaker, inputs.breaker_on != 0);
    set(Driver::disconnect, inputs.disconnect_on != 0);
    set(Driver::door_switch, inputs.blower_door_on != 0 || inputs.door_switch_held != 0);
    set(Driver::thermostat_heat, state.thermostat_heat_closed != 0);
    set(Driver::thermostat_fan, state.thermostat_fan_closed != 0);
    set(Driver::limit, heat.limit_closed != 0);
    set(Driver::rollout, heat.rollout_closed != 0);
    set(Driver::pressure_switch, state.signals.draft.switch_closed != 0);
    set(Driver::blower_overload, heat.blower_overload_closed != 0);
    set(Driver::inducer_overload, heat.inducer_overload_closed != 0);
    bits |= std::uint64_t{state.board.outputs} << static_cast<unsigned>(driven_bit(Driver::board, 0));
    for (std::size_t i = 0; i < model.wiring.relays.size(); ++i)
        bits |= std::uint64_t{armature_in(model, state, static_cast<int>(i))}
                << static_cast<unsigned>(driven_bit(Driver::relay, static_cast<int>(i)));
    return bits;
}

double group_temperature_k(const State& state, int heat_group) {
    const heat::Nodes& t = state.heat.temperature;
    switch (static_cast<ThermalGroup>(heat_group)) {
    case ThermalGroup::blower_motor:
        return t.blower_winding;
    case ThermalGroup::inducer_motor:
        return t.inducer_winding;
    case ThermalGroup::transformer:
        return t.transformer;
    }
    return t.transformer;
}

NetworkPorts ports_as_they_are(const State& state) {
    const combustion::Outputs& fire = state.signals.combustion;
    return {state.air.blower.speed_rad_s, state.draft.inducer.speed_rad_s, state.signals.heat.igniter_ohm,
            fire.rod_flame_strength * fire.rod_flame_coverage};
}

bool within_band(double band, double held, double now) {
    return std::abs(now - held) <= band * held;
}

/// |dY| <= kPortBand |Y| of the revolving field Y = 2/(j Xm) + 2 s/(Rr + j s Xr): both of its parts lag, so
/// that |Y| is more than either, and |dY/ds| <= 2/|Rr + j s Xr|. The field that turns backwards alters less.
bool within_band(const electrical::MotorCore& core, double held_rad_s, double now_rad_s) {
    const double slip = std::abs(core.synchronous_rad_s - held_rad_s);
    const double floor = core.synchronous_rad_s * core.rotor_ohm / core.magnetising_ohm;
    return std::abs(now_rad_s - held_rad_s) <= kPortBand * std::max(slip, floor);
}

bool within_band(const Wiring& w, const NetworkPorts& held, const NetworkPorts& now) {
    const auto motor = [&](int index, double held_rad_s, double now_rad_s) {
        return index < 0 ||
               within_band(w.netlist.motors[static_cast<std::size_t>(index)], held_rad_s, now_rad_s);
    };
    return motor(w.blower_motor, held.blower_rad_s, now.blower_rad_s) &&
           motor(w.inducer_motor, held.inducer_rad_s, now.inducer_rad_s) &&
           (w.igniter_port < 0 || within_band(kIgniterBand, held.igniter_ohm, now.igniter_ohm)) &&
           (w.flame_port < 0 || within_band(kPortBand, held.rod_flame, now.rod_flame));
}

/// Ports that the furnace does not have stay as they are.
void set_ports(const Model& model, const NetworkPorts& held, electrical::PortInputs& ports) {
    const Wiring& w = model.wiring;
    if (w.blower_motor >= 0)
        ports.rotor_rad_s[static_cast<std::size_t>(w.blower_motor)] = held.blower_rad_s;
    if (w.inducer_motor >= 0)
        ports.rotor_rad_s[static_cast<std::size_t>(w.inducer_motor)] = held.inducer_rad_s;
    if (w.igniter_port >= 0)
        ports.igniter_ohm[static_cast<std::size_t>(w.igniter_port)] = held.igniter_ohm;
    if (w.flame_port >= 0) {
        const auto flame = static_cast<std::size_t>(w.flame_port);
        ports.flame_forward_siemens[flame] = held.rod_flame * model.flame.forward_siemens;
        ports.flame_reverse_siemens[flame] = held.rod_flame * model.flame.reverse_siemens;
    }
}

const electrical::AcSolution& solve_with(const Model& model, const State& state, const NetworkPorts& ports,
                                         const Condition& condition, const Inputs& inputs,
                                         Workspace& workspace) {
    electrical::NetworkInputs& network = workspace.inputs;
    network.switches = switches_made(model, state, inputs);
    network.source_factor[0] = inputs.line_voltage_v / model.nominal_line_v;
    for (std::size_t g = 0; g < model.wiring.netlist.thermal_group_names.size(); ++g)
        network.group_temperature_k[g] = group_temperature_k(state, model.wiring.heat_of_group[g]);
    network.attachments = inputs.attachments;
    network.parted = inputs.parted;
    workspace.network.set(condition.wiring, network);
    set_ports(model, ports, workspace.ports);
    return workspace.network.solve_ac(workspace.ports);
}

} // namespace

bool armature_in(const Model& model, const State& state, int relay) {
    const auto i = static_cast<std::size_t>(relay);
    return state.relays[i].position >= model.wiring.relays[i].params.make_at;
}

std::uint64_t switches_made(const Model& model, const State& state, const Inputs& inputs) {
    std::uint64_t bits = 0;
    for (std::uint64_t left = driven(model, state, inputs); left != 0; left &= left - 1)
        bits |= model.wiring.switches_of[static_cast<std::size_t>(std::countr_zero(left))];
    return bits;
}

NetworkPorts held_ports(const Model& model, const State& state) {
    const NetworkPorts now = ports_as_they_are(state);
    return within_band(model.wiring, state.held_ports, now) ? state.held_ports : now;
}

electrical::PortInputs port_inputs(const Model& model, const State& state) {
    electrical::PortInputs ports;
    set_ports(model, held_ports(model, state), ports);
    return ports;
}

const electrical::AcSolution& solve_ac(const Model& model, const State& state, const Condition& condition,
                                       const Inputs& inputs, Workspace& workspace) {
    return solve_with(model, state, held_ports(model, state), condition, inputs, workspace);
}

NetworkNow solve_now(const Model& model, State& state, const Condition& condition, const Inputs& inputs,
                     Workspace& workspace) {
    state.held_ports = held_ports(model, state);
    const electrical::AcSolution& ac =
        solve_with(model, state, state.held_ports, condition, inputs, workspace);
    return {ac, workspace.network.ac_sense_rms(model.wiring.tick_senses)};
}

} // namespace lightoff::furnace
