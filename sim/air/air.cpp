// SPDX-License-Identifier: MIT
#include "air/air.hpp"

#include <stdexcept>
#include <string>

#include "air/formulas.hpp"
#include "units/rotor.hpp"

namespace lightoff::air {
namespace {

/// Moves the rotor and returns the torque that the shaft asked of the motor.
double step_rotor(const BlowerParams& params, const BlowerCondition& condition, BlowerState& state,
                  const Inputs& inputs, double air_torque_nm, double dt_s) {
    const double speed = state.speed_rad_s;
    const double drag = params.bearing_drag_nm + condition.bearing_drag_added_nm;
    // In a fixed system flow ~ speed and torque ~ speed^2 (fan laws), which gives the slope.
    const double air_slope = speed > 0.0 ? 2.0 * air_torque_nm / speed : 0.0;
    state.angle_rad = units::next_angle(state.angle_rad, wheel_speed_rad_s(condition, state), dt_s);
    state.speed_rad_s = units::next_speed(
        speed, params.rotor_inertia_kg_m2,
        {inputs.motor_torque_nm, inputs.motor_torque_slope_nm_s, air_torque_nm, air_slope, drag}, dt_s);
    return speed > 0.0 ? air_torque_nm + drag : 0.0;
}

void require_positive(double value, const char* name) {
    if (!(value > 0.0))
        throw std::invalid_argument(std::string("air: ") + name + " is " + std::to_string(value) +
                                    ", it must be above 0");
}

} // namespace

Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s) {
    Outputs out;
    if (condition.blower.removed != 0) {
        state.blower.speed_rad_s = 0.0;
        return out;
    }
    const units::FanNow fan =
        units::fan_at(params.blower.fan, wheel_speed_rad_s(condition.blower, state.blower),
                      inputs.return_density_kg_m3, packed_wheel(condition.blower.wheel_packing));
    const DuctDrive drive{inputs.return_density_kg_m3, inputs.supply_density_kg_m3, inputs.blower_door_on,
                          inputs.filter_present};
    const DuctFlow flow = solve_ducts(params.ducts, condition.ducts, drive, fan);
    const double torque = step_rotor(params.blower, condition.blower, state.blower, inputs,
                                     fan.torque_nm(flow.blower_kg_s), dt_s);

    out.flow_m3_s = flow.blower_kg_s / inputs.return_density_kg_m3;
    out.flow_kg_s = flow.blower_kg_s;
    out.return_flow_kg_s = flow.return_kg_s;
    out.register_flow_kg_s = flow.registers_kg_s;
    out.return_static_pa = flow.return_static_pa;
    out.supply_static_pa = flow.supply_static_pa;
    out.external_static_pa = flow.supply_static_pa - flow.return_static_pa;
    out.exchanger_static_pa = flow.exchanger_static_pa;
    out.blower_speed_rad_s = state.blower.speed_rad_s;
    out.wheel_speed_rad_s = wheel_speed_rad_s(condition.blower, state.blower);
    out.shaft_power_w = torque * state.blower.speed_rad_s;
    out.air_power_w = air_power_w(out.flow_m3_s, flow.blower_rise_pa);
    out.shake_m_s =
        units::shake_m_s(params.blower.unbalance_kg_m + condition.blower.added_unbalance_kg_m +
                             params.blower.packing_unbalance_kg_m * condition.blower.wheel_packing,
                         out.wheel_speed_rad_s, params.blower.shaken_mass_kg);
    return out;
}

void check(const Params& params) {
    require_positive(params.blower.fan.speed_rad_s, "blower reference speed");
    require_positive(params.blower.fan.density_kg_m3, "blower reference density");
    require_positive(params.blower.fan.curvature_pa_s2_m6, "blower pressure curvature");
    require_positive(params.blower.rotor_inertia_kg_m2, "rotor_inertia_kg_m2");
    require_positive(params.blower.shaken_mass_kg, "shaken_mass_kg");
    const DuctParams& ducts = params.ducts;
    require_positive(ducts.return_duct_area_m2, "return_duct_area_m2");
    require_positive(ducts.filter_area_m2, "filter_area_m2");
    require_positive(ducts.cabinet_area_m2, "cabinet_area_m2");
    require_positive(ducts.exchanger_area_m2, "exchanger_area_m2");
    require_positive(ducts.coil_area_m2, "coil_area_m2");
    require_positive(ducts.supply_duct_area_m2, "supply_duct_area_m2");
    require_positive(ducts.registers_area_m2, "registers_area_m2");
    require_positive(ducts.blower_door_area_m2, "blower_door_area_m2");
}

} // namespace lightoff::air
