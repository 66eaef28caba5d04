// SPDX-License-Identifier: MIT
#include "furnace/furnace.hpp"

#include "units/atmosphere.hpp"
#include "units/constants.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>

namespace lightoff::furnace {
namespace {

using electrical::AcSolution;
using units::Complex;

constexpr int kSubsteps = 5; ///< of 10 ms in a tick of 50 ms
/// Heat of windings and iron is worked out this often; their lumps take minutes.
constexpr int kPowerTicks = 10;
constexpr double kWarmFuse = 0.1; ///< of the heat that melts it; an ordinary load is under 0.05

constexpr std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

/// Torque at a rotor's speed. The solution may be held for one that is a little off; between the two the
/// torque follows its slope at fixed field voltages.
electrical::MotorTorque torque_at(const AcSolution& ac, int motor, double speed_rad_s, double held_rad_s) {
    if (motor < 0)
        return {};
    electrical::MotorTorque torque = ac.torque[at(motor)];
    torque.nm += torque.slope_nm_s_rad * (speed_rad_s - held_rad_s);
    return torque;
}

electrical::MotorTorque blower_torque(const Model& model, const State& state, const AcSolution& ac) {
    return torque_at(ac, model.wiring.blower_motor, state.air.blower.speed_rad_s,
                     state.held_ports.blower_rad_s);
}

electrical::MotorTorque inducer_torque(const Model& model, const State& state, const AcSolution& ac) {
    return torque_at(ac, model.wiring.inducer_motor, state.draft.inducer.speed_rad_s,
                     state.held_ports.inducer_rad_s);
}

/// Power that crosses the air gap of a motor, iron and rotor loss included, W.
double core_power_w(const Wiring& wiring, const AcSolution& ac, int motor) {
    const double iron_ohm = wiring.netlist.motors[at(motor)].iron_loss_ohm;
    double power = 0.0;
    for (int p = 0; p < wiring.netlist.port_count(); ++p) {
        const electrical::Port& port = wiring.netlist.ports[static_cast<std::size_t>(p)];
        const bool is_motor =
            port.kind == electrical::PortKind::motor_main || port.kind == electrical::PortKind::motor_start;
        if (!is_motor || port.index != motor)
            continue;
        const auto i = static_cast<std::size_t>(p);
        power += (ac.port_v[i] * units::conj(ac.port_a[i])).re;
        power += units::norm(ac.port_v[i]) / iron_ohm; // in parallel with each axis, outside the port
    }
    return power;
}

struct MotorPower {
    double electrical_w = 0.0;
    double loss_w = 0.0;
};

MotorPower motor_power(const Wiring& wiring, const AcSolution& ac, int motor, double copper_w,
                       double shaft_w) {
    if (motor < 0)
        return {};
    const double core_w = core_power_w(wiring, ac, motor);
    return {core_w + copper_w, core_w + copper_w - shaft_w};
}

/// Everything the network turns into heat or motion.
void work_out_power(const Model& model, State& state, const NetworkNow& now, electrical::Workspace& network) {
    const AcSolution& ac = now.ac;
    const Wiring& w = model.wiring;
    std::array<double, 3> copper_w{};
    for (const LossBinding& loss : w.losses) {
        const int heat_group = w.heat_of_group[static_cast<std::size_t>(loss.thermal_group)];
        copper_w[static_cast<std::size_t>(heat_group)] += network.ac_loss_w(loss.sense);
    }
    const electrical::Workspace::SenseValues& squares = network.ac_sense_squares(w.netlist.sense_count());
    double iron_w = 0.0;
    for (const IronBinding& iron : w.irons)
        iron_w += squares[at(iron.sense)] / iron.ohm;

    const MotorPower blower =
        motor_power(w, ac, w.blower_motor, copper_w[static_cast<int>(ThermalGroup::blower_motor)],
                    blower_torque(model, state, ac).nm * state.air.blower.speed_rad_s);
    const MotorPower inducer =
        motor_power(w, ac, w.inducer_motor, copper_w[static_cast<int>(ThermalGroup::inducer_motor)],
                    inducer_torque(model, state, ac).nm * state.draft.inducer.speed_rad_s);
    Power& power = state.signals.power;
    power.blower_electrical_w = blower.electrical_w;
    power.blower_loss_w = blower.loss_w;
    power.inducer_electrical_w = inducer.electrical_w;
    power.inducer_loss_w = inducer.loss_w;
    power.transformer_loss_w = copper_w[static_cast<int>(ThermalGroup::transformer)] + iron_w;
}

void step_fuses(const Model& model, State& state, Condition& condition, const NetworkNow& now, bool substep) {
    for (std::size_t i = 0; i < model.wiring.fuses.size(); ++i) {
        const FuseBinding& fuse = model.wiring.fuses[i];
        const double amps = now.rms[at(fuse.sense)];
        const double share = substep ? fuse.substep_share : fuse.tick_share;
        if (electrical::step_fuse(fuse.params, state.fuses[i], amps, share))
            electrical::open_element(condition.wiring, fuse.element);
    }
}

void step_relays(const Model& model, State& state, const Condition& condition, const NetworkNow& now,
                 double dt_s) {
    for (std::size_t i = 0; i < model.wiring.relays.size(); ++i) {
        const RelayBinding& relay = model.wiring.relays[i];
        const double volts = now.rms[at(relay.coil_sense)] * relay.coil_ohm;
        const double before = state.relays[i].position;
        electrical::step_relay(relay.params, condition.relays[i], state.relays[i], volts, dt_s);
        const double after = state.relays[i].position;
        if (after != before &&
            (after <= condition.relays[i].lowest_position || after >= condition.relays[i].highest_position))
            state.armatures_struck |= std::uint32_t{1} << i;
    }
}

draft::Inputs draft_inputs(const Model& model, const State& state, const Inputs& in, const AcSolution& ac) {
    const Signals& last = state.signals;
    const electrical::MotorTorque torque = inducer_torque(model, state, ac);
    draft::Inputs d;
    d.room_k = in.basement_k;
    d.outdoor_k = in.outdoor_k;
    d.barometric_pa = in.barometric_pa;
    d.exchanger_gas_k = last.heat.exchanger_gas_mean_k;
    d.collector_gas_k = last.heat.collector_gas_k;
    d.vent_gas_k = last.heat.vent_gas_mean_k;
    d.gas_kg_s = last.gas.burners_total_m3_s * model.gas_kg_m3;
    d.motor_torque_nm = torque.nm;
    d.motor_torque_slope_nm_s = torque.slope_nm_s_rad;
    d.wind_pa = in.wind_pa;
    d.blower_pressure_pa = last.air.exchanger_static_pa;
    d.burner_door_on = in.burner_door_on != 0;
    return d;
}

/// Carbon monoxide carried into the room by products that spill, m3/s.
double spilled_flue_co_m3_s(const Signals& last) {
    const double molar_flow = combustion::dry(last.combustion.flue);
    const double flue_kg_s = last.combustion.flue_mass_flow_kg_s;
    if (flue_kg_s <= 1e-6)
        return 0.0;
    const double spilled_share = std::min(1.0, last.draft.spillage_kg_s / flue_kg_s);
    return spilled_share * last.combustion.co_dry * molar_flow * combustion::standard_molar_volume_m3_mol;
}

/// A pilot burns as long as it has gas, and its thermocouple holds the valve's safety seat open. Leaves out
/// the gas that it draws (about 1 cfh; its heat is counted), the half minute that a thermocouple takes, and
/// that people relight a pilot.
bool pilot_burns(const Model& model, const Signals& last) {
    return last.gas.inlet_tap_pa > model.pilot_lowest_pa;
}

gas::Inputs gas_inputs(const Model& model, const State& state, const Inputs& in) {
    const Signals& last = state.signals;
    gas::Inputs g;
    g.barometric_pa = in.barometric_pa;
    g.other_appliances_m3_s = in.other_gas_m3_s;
    g.room_air_changes_per_s = in.basement_air_changes_per_s;
    g.spilled_gas_m3_s = last.combustion.spilled_gas_m3_s;
    g.spilled_co_m3_s = last.combustion.spilled_co_m3_s + spilled_flue_co_m3_s(last);
    g.cock_handle_open = in.gas_cock_open != 0;
    g.valve_energised = model.wiring.gas_valve >= 0 && armature_in(model, state, model.wiring.gas_valve) &&
                        (!model.standing_pilot || pilot_burns(model, last));
    return g;
}

combustion::Inputs combustion_inputs(const Model& model, const State& state, const Inputs& in) {
    const Signals& last = state.signals;
    combustion::Inputs c;
    c.gas_flow_m3_s = last.gas.burner_flow_m3_s;
    c.combustion_air_kg_s = last.draft.combustion_air_kg_s;
    c.humidity_ratio = in.humidity_ratio;
    c.igniter_surface_k = state.heat.temperature.igniter;
    c.pilot_flame = model.standing_pilot && pilot_burns(model, last) ? 1.0 : 0.0;
    c.crack_jet_kg_s = std::max(0.0, last.draft.leak_air_kg_s);
    return c;
}

air::Inputs air_inputs(const Model& model, const State& state, const Inputs& in, const AcSolution& ac) {
    const electrical::MotorTorque torque = blower_torque(model, state, ac);
    air::Inputs a;
    a.motor_torque_nm = torque.nm;
    a.motor_torque_slope_nm_s = torque.slope_nm_s_rad;
    a.return_density_kg_m3 = units::dry_air_density_kg_m3(in.barometric_pa, state.heat.temperature.house);
    a.supply_density_kg_m3 = units::dry_air_density_kg_m3(in.barometric_pa, state.signals.heat.supply_air_k);
    a.blower_door_on = in.blower_door_on != 0;
    a.filter_present = in.filter_in != 0;
    return a;
}

/// Specific heat of the flue gas as c0 + c1 T: the straight line that gives the polynomial's heat content
/// both at a flue's temperature and at a flame's.
struct LinearHeatCapacity {
    double c0_j_kg_k = 1000.0;
    double c1_j_kg_k2 = 0.15;
};

LinearHeatCapacity linear_heat_capacity(const combustion::HeatCapacity& w_per_k, double kg_s, double cold_k) {
    constexpr double flue_k = 480.0;
    constexpr double flame_k = 1500.0;
    if (kg_s <= 1e-6)
        return {};
    const double to_flue = combustion::sensible_heat(w_per_k, cold_k, flue_k) / (kg_s * (flue_k - cold_k));
    const double to_flame = combustion::sensible_heat(w_per_k, cold_k, flame_k) / (kg_s * (flame_k - cold_k));
    const double c1 = (to_flame - to_flue) * (2.0 / (flame_k - flue_k));
    return {to_flue - 0.5 * c1 * (flue_k + cold_k), c1};
}

heat::Inputs heat_inputs(const Model& model, const State& state, const Inputs& in) {
    const Signals& last = state.signals;
    const combustion::Outputs& fire = last.combustion;
    const double flue_kg_s = fire.flue_mass_flow_kg_s;
    const LinearHeatCapacity cp = linear_heat_capacity(fire.flue_heat_capacity, flue_kg_s, in.basement_k);
    heat::Inputs h;
    h.heat_released_hhv_w = fire.heat_released_hhv_w + fire.rollout_heat_hhv_w;
    h.latent_w = fire.latent_w;
    if (model.standing_pilot && pilot_burns(model, last)) {
        h.heat_released_hhv_w += model.pilot_hhv_w;
        h.latent_w += model.pilot_latent_w;
    }
    h.rollout_w = fire.rollout_heat_hhv_w;
    const double leak_kg_s = std::max(0.0, last.draft.leak_air_kg_s);
    h.flue_mass_flow_kg_s = std::max(0.0, flue_kg_s - leak_kg_s);  // heat adds the leak behind the flames
    h.dilution_kg_s = last.draft.vent_kg_s - last.draft.flue_kg_s; // 0 without a draft hood
    h.cp_c0_j_kg_k = cp.c0_j_kg_k;
    h.cp_c1_j_kg_k2 = cp.c1_j_kg_k2;
    if (fire.latent_w > 0.0)
        h.dew_point_k = combustion::dew_point_k(fire.flue, in.barometric_pa);
    h.supply_air_kg_s = last.air.flow_kg_s;
    h.exchanger_leak_kg_s = leak_kg_s;
    h.igniter_w = last.power.igniter_w;
    h.blower_electrical_w = last.power.blower_electrical_w;
    h.blower_loss_w = last.power.blower_loss_w;
    h.inducer_electrical_w = last.power.inducer_electrical_w;
    h.inducer_loss_w = last.power.inducer_loss_w;
    h.inducer_speed_ratio = state.draft.inducer.speed_rad_s / model.inducer_running_rad_s;
    h.transformer_loss_w = last.power.transformer_loss_w;
    h.basement_k = in.basement_k;
    h.outdoor_k = in.outdoor_k;
    return h;
}

/// Gas, flame, air and heat over one step, in the order in which they act on each other.
void step_plant(const Model& model, State& state, const Condition& condition, const Inputs& in,
                const AcSolution& ac, double dt_s) {
    Signals& s = state.signals;
    s.draft =
        draft::step(model.draft, condition.draft, state.draft, draft_inputs(model, state, in, ac), dt_s);
    s.gas = gas::step(model.gas, condition.gas, state.gas, gas_inputs(model, state, in), dt_s);
    s.combustion = combustion::step(model.combustion, condition.combustion, state.combustion,
                                    combustion_inputs(model, state, in), dt_s);
    s.air = air::step(model.air, condition.air, state.air, air_inputs(model, state, in, ac), dt_s);
    s.heat = heat::step(model.heat, condition.heat, state.heat, heat_inputs(model, state, in), dt_s);
}

/// Relays, fuses and plant over one step, on a network already solved.
void step_on(const Model& model, State& state, Condition& condition, const Inputs& in, const NetworkNow& now,
             electrical::Workspace& network, bool substep) {
    const double tick_s = model.board.tick_s;
    const double dt_s = substep ? tick_s / kSubsteps : tick_s;
    if (model.wiring.igniter_port >= 0)
        state.signals.power.igniter_w =
            network.igniter_w(now.ac, model.wiring.igniter_port, state.signals.heat.igniter_ohm);
    if (substep || ++state.ticks_since_power >= kPowerTicks) {
        work_out_power(model, state, now, network);
        state.ticks_since_power = 0;
    }
    step_fuses(model, state, condition, now, substep);
    step_relays(model, state, condition, now, dt_s);
    step_plant(model, state, condition, in, now.ac, dt_s);
}

/// Mean current of the flame as the board's sense resistor carries it, A.
double flame_current_a(const Model& model, const State& state, Workspace& workspace) {
    if (model.wiring.flame_sense < 0 || state.signals.combustion.rod_flame_strength <= 0.0)
        return 0.0;
    return workspace.network.dc_sense(workspace.network.solve_dc(workspace.ports), model.wiring.flame_sense);
}

/// What the board's terminals carry.
control::BoardInputs board_inputs(const Model& model, double flame_a, const NetworkNow& now) {
    const Wiring& w = model.wiring;
    control::BoardInputs board;
    board.supply_v = now.rms[at(w.board_supply)];
    for (std::size_t i = 0; i < w.board_inputs.size(); ++i) {
        const int sense = w.board_inputs[i];
        if (sense == kFlameInput)
            board.sensed[i] = flame_a;
        else if (sense >= 0)
            board.sensed[i] = now.rms[at(sense)];
    }
    return board;
}

control::ThermostatInputs thermostat_inputs(const Model& model, const State& state, const Inputs& in,
                                            const NetworkNow& now) {
    const Wiring& w = model.wiring;
    control::ThermostatInputs t;
    t.room_k = state.heat.temperature.house;
    t.set_point_k = in.set_point_k;
    t.mode = in.thermostat_mode;
    t.fan = in.thermostat_fan;
    if (w.thermostat_supply >= 0)
        t.supply_v = now.rms[at(w.thermostat_supply)];
    if (w.call_current >= 0)
        t.call_current_a = now.rms[at(w.call_current)];
    return t;
}

bool running_up(const Model& model, int motor, bool fed, double speed_rad_s) {
    if (motor < 0 || !fed)
        return false;
    return speed_rad_s < 0.8 * model.wiring.netlist.motors[static_cast<std::size_t>(motor)].synchronous_rad_s;
}

} // namespace

State rest_state(const Model& model, const Inputs& inputs, double house_k) {
    State state;
    state.heat = heat::at_rest(inputs.basement_k);
    state.heat.temperature.house = house_k;
    state.thermostat = control::rested_thermostat(house_k);
    state.gas.inlet_pressure_pa = model.gas.supply_static_pa;
    heat::Outputs& last = state.signals.heat;
    last.exchanger_gas_mean_k = last.collector_gas_k = last.vent_connector_gas_k = inputs.basement_k;
    last.vent_gas_mean_k = last.vent_outlet_gas_k = last.flame_k = inputs.basement_k;
    last.supply_air_k = last.supply_air_in_sight_k = last.exchanger_air_k = last.vestibule_k =
        inputs.basement_k;
    last.igniter_ohm = heat::igniter_resistance_ohm(model.heat.igniter, 1.0, inputs.basement_k);
    return state;
}

bool needs_substeps(const Model& model, const State& state, const Inputs& in) {
    const Wiring& w = model.wiring;
    for (std::size_t i = 0; i < w.relays.size(); ++i) {
        const double position = state.relays[i].position;
        if (position > 0.0 && position < 1.0)
            return true;
    }
    for (std::size_t i = 0; i < w.fuses.size(); ++i)
        if (state.fuses[i].heat > kWarmFuse)
            return true;
    if (state.board.outputs != state.board_outputs_before)
        return true;
    const Power& power = state.signals.power;
    return running_up(model, w.blower_motor, power.blower_electrical_w > 20.0,
                      state.air.blower.speed_rad_s) ||
           running_up(model, w.inducer_motor, power.inducer_electrical_w > 5.0,
                      state.draft.inducer.speed_rad_s) ||
           combustion::needs_substeps(model.combustion, state.combustion,
                                      combustion_inputs(model, state, in));
}

void tick(const Model& model, State& state, Condition& condition, const Inputs& inputs,
          Workspace& workspace) {
    electrical::Workspace& network = workspace.network;
    const bool fine = needs_substeps(model, state, inputs);
    state.board_outputs_before = state.board.outputs;
    state.armatures_struck = 0;

    const NetworkNow now = solve_now(model, state, condition, inputs, workspace);
    state.signals.power.flame_current_a = flame_current_a(model, state, workspace);
    const control::BoardInputs sensed = board_inputs(model, state.signals.power.flame_current_a, now);
    const control::ThermostatInputs felt = thermostat_inputs(model, state, inputs, now);

    step_on(model, state, condition, inputs, now, network, fine);
    for (int i = 1; fine && i < kSubsteps; ++i) {
        const NetworkNow later = solve_now(model, state, condition, inputs, workspace);
        step_on(model, state, condition, inputs, later, network, true);
    }

    control::step(model.board, condition.board, state.board, sensed);
    const control::ThermostatOutputs wall =
        control::step(model.thermostat, condition.thermostat, state.thermostat, felt);
    state.thermostat_heat_closed = wall.heat_closed ? 1 : 0;
    state.thermostat_fan_closed = wall.fan_closed ? 1 : 0;
}

} // namespace lightoff::furnace
