// SPDX-License-Identifier: MIT
#include "draft/draft.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "units/pinned_math.hpp"

namespace lightoff::draft {
namespace {

PathFlow solve(const Params& params, const Condition& condition, const State& state, const Inputs& inputs,
               const units::FanNow& fan) {
    const PathDrive drive{.room_k = inputs.room_k,
                          .outdoor_k = inputs.outdoor_k,
                          .barometric_pa = inputs.barometric_pa,
                          .exchanger_gas_k = inputs.exchanger_gas_k,
                          .collector_gas_k = inputs.collector_gas_k,
                          .vent_gas_k = inputs.vent_gas_k,
                          .wind_pa = inputs.wind_pa,
                          .added_kg_s = inputs.gas_kg_s + state.leak_kg_s,
                          .door_on = inputs.burner_door_on};
    return solve_path(params.path, condition.path, drive, fan);
}

void step_leak(const PathCondition& condition, State& state, const Inputs& inputs, const PathFlow& flow,
               double dt_s) {
    if (condition.crack_area_m2 <= 0.0) {
        state.leak_kg_s = 0.0;
        return;
    }
    const double density = air_density_kg_m3(inputs.barometric_pa, inputs.room_k);
    const double settled = crack_flow_kg_s(condition.crack_area_m2, inputs.blower_pressure_pa,
                                           flow.burner_end_suction_pa, density);
    state.leak_kg_s += (settled - state.leak_kg_s) * (1.0 - units::exp(-dt_s / kLeakLag_s));
}

/// Moves the rotor and returns the torque that the shaft asked of the motor.
double step_rotor(const InducerParams& params, const InducerCondition& condition, InducerState& state,
                  const Inputs& inputs, double gas_torque_nm, double dt_s) {
    const double speed = state.speed_rad_s;
    const double drag = params.bearing_drag_nm + condition.bearing_drag_added_nm;
    // At a fixed opening flow ~ speed and torque ~ speed^2 (fan laws), which gives the slope.
    const double gas_slope = speed > 0.0 ? 2.0 * gas_torque_nm / speed : 0.0;
    state.angle_rad = units::next_angle(state.angle_rad, wheel_speed_rad_s(condition, state), dt_s);
    state.speed_rad_s = units::next_speed(
        speed, params.rotor_inertia_kg_m2,
        {inputs.motor_torque_nm, inputs.motor_torque_slope_nm_s, gas_torque_nm, gas_slope, drag}, dt_s);
    return speed > 0.0 ? gas_torque_nm + drag : 0.0;
}

void require_positive(double value, const char* name) {
    if (!(value > 0.0))
        throw std::invalid_argument(std::string("draft: ") + name + " is " + std::to_string(value) +
                                    ", it must be above 0");
}

} // namespace

Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s) {
    const double gas_density = air_density_kg_m3(inputs.barometric_pa, inputs.collector_gas_k);
    const bool hood = params.path.draft_hood != 0;
    const units::FanNow fan =
        hood ? units::FanNow{} : inducer_fan(params.inducer, condition.inducer, state.inducer, gas_density);
    const PathFlow flow = solve(params, condition, state, inputs, fan);

    Outputs out;
    out.combustion_air_kg_s = std::max(0.0, flow.burner_kg_s);
    out.leak_air_kg_s = state.leak_kg_s;
    out.flue_kg_s = flow.flue_kg_s;
    out.vent_kg_s = flow.vent_kg_s;
    out.dilution_kg_s = std::max(0.0, flow.dilution_kg_s);
    out.spillage_kg_s = std::max(0.0, -flow.burner_kg_s) + std::max(0.0, -flow.dilution_kg_s);
    out.port_suction_pa = flow.port_suction_pa;
    out.vent_connector_pa = flow.connector_pa;

    step_leak(condition.path, state, inputs, flow, dt_s);
    if (!hood) {
        const double torque = step_rotor(params.inducer, condition.inducer, state.inducer, inputs,
                                         fan.torque_nm(flow.flue_kg_s), dt_s);
        step_sense_line(params.sense_line, condition.sense_line, state.sense_line, flow.port_suction_pa,
                        flow.compartment_suction_pa, dt_s);
        out.shaft_power_w = torque * state.inducer.speed_rad_s;
        out.inducer_speed_rad_s = state.inducer.speed_rad_s;
        out.wheel_speed_rad_s = wheel_speed_rad_s(condition.inducer, state.inducer);
        out.shake_m_s =
            units::shake_m_s(params.inducer.unbalance_kg_m + condition.inducer.added_unbalance_kg_m,
                             out.wheel_speed_rad_s, params.inducer.shaken_mass_kg);
    }
    out.inducer_side_suction_pa = state.sense_line.inducer_side_suction_pa;
    out.switch_side_suction_pa = state.sense_line.switch_side_suction_pa;
    out.switch_suction_pa = out.switch_side_suction_pa - flow.compartment_suction_pa;
    out.switch_closed = state.sense_line.closed;
    return out;
}

void check(const Params& params) {
    require_positive(params.path.door_area_m2, "door_area_m2");
    require_positive(params.path.burner_area_m2, "burner_area_m2");
    require_positive(params.path.exchanger_area_m2, "exchanger_area_m2");
    require_positive(params.path.outlet_area_m2, "outlet_area_m2");
    require_positive(params.path.vent_diameter_m, "vent_diameter_m");
    require_positive(params.path.vent_fittings_loss, "vent_fittings_loss");
    if (params.path.draft_hood != 0)
        return;
    const InducerParams& inducer = params.inducer;
    require_positive(inducer.fan.speed_rad_s, "inducer reference speed");
    require_positive(inducer.fan.density_kg_m3, "inducer reference density");
    require_positive(inducer.rotor_inertia_kg_m2, "rotor_inertia_kg_m2");
    require_positive(inducer.shaken_mass_kg, "shaken_mass_kg");
    if (inducer.fan.slope_pa_s_m3 > 0.0)
        throw std::invalid_argument("draft: the inducer's pressure slope is " +
                                    std::to_string(inducer.fan.slope_pa_s_m3) + ", it must be 0 or less");
    const SenseLineParams& line = params.sense_line;
    require_positive(line.port_resistance_pa_s_m3, "port_resistance_pa_s_m3");
    require_positive(line.hose_resistance_pa_s_m3, "hose_resistance_pa_s_m3");
    require_positive(line.hose_compliance_m3_pa, "hose_compliance_m3_pa");
    require_positive(line.switch_compliance_m3_pa, "switch_compliance_m3_pa");
    if (!(line.break_pa > 0.0 && line.break_pa < line.make_pa))
        throw std::invalid_argument("draft: the switch breaks at " + std::to_string(line.break_pa) +
                                    " Pa, it must break above 0 and below its make point of " +
                                    std::to_string(line.make_pa) + " Pa");
}

} // namespace lightoff::draft
