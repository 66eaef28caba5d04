// SPDX-License-Identifier: MIT
#include "furnace/network_now.hpp"

#include <array>
#include <cstdint>

namespace lightoff::furnace {
namespace {

/// By driver: bit i says that it holds the switches with index i made.
using DriverBits = std::array<std::uint32_t, kDriverCount>;

DriverBits driver_bits(const Model& model, const State& state, const Inputs& inputs) {
    const heat::Outputs& heat = state.signals.heat;
    DriverBits bits;
    const auto set = [&](Driver driver, bool made) { bits[static_cast<std::size_t>(driver)] = made ? 1 : 0; };
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
    bits[static_cast<std::size_t>(Driver::board)] = state.board.outputs;
    std::uint32_t armatures = 0;
    for (std::size_t i = 0; i < model.wiring.relays.size(); ++i)
        armatures |= std::uint32_t{armature_in(model, state, static_cast<int>(i))} << i;
    bits[static_cast<std::size_t>(Driver::relay)] = armatures;
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

} // namespace

bool armature_in(const Model& model, const State& state, int relay) {
    const auto i = static_cast<std::size_t>(relay);
    return state.relays[i].position >= model.wiring.relays[i].params.make_at;
}

std::uint64_t switches_made(const Model& model, const State& state, const Inputs& inputs) {
    const DriverBits drivers = driver_bits(model, state, inputs);
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i < model.wiring.switches.size(); ++i) {
        const SwitchBinding& s = model.wiring.switches[i];
        bits |= std::uint64_t{drivers[static_cast<std::size_t>(s.driver)] >> s.index & 1U} << i;
    }
    return bits;
}

void set_ports(const Model& model, const State& state, electrical::PortInputs& ports) {
    const Wiring& w = model.wiring;
    if (w.blower_motor >= 0)
        ports.rotor_rad_s[static_cast<std::size_t>(w.blower_motor)] = state.air.blower.speed_rad_s;
    if (w.inducer_motor >= 0)
        ports.rotor_rad_s[static_cast<std::size_t>(w.inducer_motor)] = state.draft.inducer.speed_rad_s;
    if (w.igniter_port >= 0)
        ports.igniter_ohm[static_cast<std::size_t>(w.igniter_port)] = state.signals.heat.igniter_ohm;
    if (w.flame_port >= 0) {
        const combustion::Outputs& fire = state.signals.combustion;
        const double in_flame = fire.rod_flame_strength * fire.rod_flame_coverage;
        ports.flame_forward_siemens[static_cast<std::size_t>(w.flame_port)] =
            in_flame * model.flame.forward_siemens;
        ports.flame_reverse_siemens[static_cast<std::size_t>(w.flame_port)] =
            in_flame * model.flame.reverse_siemens;
    }
}

electrical::PortInputs port_inputs(const Model& model, const State& state) {
    electrical::PortInputs ports;
    set_ports(model, state, ports);
    return ports;
}

const electrical::AcSolution& solve_ac(const Model& model, const State& state, const Condition& condition,
                                       const Inputs& inputs, Workspace& workspace) {
    electrical::NetworkInputs& network = workspace.inputs;
    network.switches = switches_made(model, state, inputs);
    network.source_factor[0] = inputs.line_voltage_v / model.nominal_line_v;
    for (std::size_t g = 0; g < model.wiring.netlist.thermal_group_names.size(); ++g)
        network.group_temperature_k[g] = group_temperature_k(state, model.wiring.heat_of_group[g]);
    network.attachments = inputs.attachments;
    network.parted = inputs.parted;
    workspace.network.set(condition.wiring, network);
    set_ports(model, state, workspace.ports);
    return workspace.network.solve_ac(workspace.ports);
}

NetworkNow solve_now(const Model& model, const State& state, const Condition& condition, const Inputs& inputs,
                     Workspace& workspace) {
    const electrical::AcSolution& ac = solve_ac(model, state, condition, inputs, workspace);
    workspace.network.ac_sense_rms(ac, model.wiring.tick_senses, workspace.rms);
    return {ac, workspace.rms};
}

} // namespace lightoff::furnace
