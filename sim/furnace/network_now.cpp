// SPDX-License-Identifier: MIT
#include "furnace/network_now.hpp"

namespace lightoff::furnace {
namespace {

bool door_switch_made(const Inputs& inputs) {
    return inputs.blower_door_on != 0 || inputs.door_switch_held != 0;
}

bool is_made(const Model& model, const SwitchBinding& binding, const State& state, const Inputs& inputs) {
    const heat::Outputs& heat = state.signals.heat;
    switch (binding.driver) {
    case Driver::breaker:
        return inputs.breaker_on != 0;
    case Driver::disconnect:
        return inputs.disconnect_on != 0;
    case Driver::door_switch:
        return door_switch_made(inputs);
    case Driver::thermostat_heat:
        return state.thermostat_heat_closed != 0;
    case Driver::thermostat_fan:
        return state.thermostat_fan_closed != 0;
    case Driver::limit:
        return heat.limit_closed;
    case Driver::rollout:
        return heat.rollout_closed;
    case Driver::pressure_switch:
        return state.signals.draft.switch_closed != 0;
    case Driver::blower_overload:
        return heat.blower_overload_closed;
    case Driver::inducer_overload:
        return heat.inducer_overload_closed;
    case Driver::board:
        return (state.board.outputs >> static_cast<unsigned>(binding.index) & 1U) != 0;
    case Driver::relay:
        return armature_in(model, state, binding.index);
    }
    return false;
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
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i < model.wiring.switches.size(); ++i)
        if (is_made(model, model.wiring.switches[i], state, inputs))
            bits |= std::uint64_t{1} << i;
    return bits;
}

electrical::PortInputs port_inputs(const Model& model, const State& state) {
    const Wiring& w = model.wiring;
    electrical::PortInputs ports;
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
    return ports;
}

electrical::AcSolution solve_ac(const Model& model, const State& state, const Condition& condition,
                                const Inputs& inputs, Workspace& workspace) {
    electrical::NetworkInputs& network = workspace.inputs;
    network.switches = switches_made(model, state, inputs);
    network.source_factor[0] = inputs.line_voltage_v / model.nominal_line_v;
    for (std::size_t g = 0; g < model.wiring.netlist.thermal_group_names.size(); ++g)
        network.group_temperature_k[g] = group_temperature_k(state, model.wiring.heat_of_group[g]);
    network.attachments = inputs.attachments;
    network.parted = inputs.parted;
    workspace.network.set(condition.wiring, network);
    return workspace.network.solve_ac(port_inputs(model, state));
}

NetworkNow solve_now(const Model& model, const State& state, const Condition& condition, const Inputs& inputs,
                     Workspace& workspace) {
    NetworkNow now{solve_ac(model, state, condition, inputs, workspace), {}};
    workspace.network.ac_sense_rms(now.ac, model.wiring.tick_senses, now.rms);
    return now;
}

} // namespace lightoff::furnace
