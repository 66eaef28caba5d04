// SPDX-License-Identifier: MIT
#pragma once
#include "draft/draft.hpp"
#include "support/induction_motor.hpp"
#include "units/convert.hpp"

namespace lightoff::test {

/// The reference furnace's draft (teaching values, chosen so that the settled targets are met).
inline draft::Params reference_draft() {
    draft::Params p;
    p.path.door_area_m2 = 0.0060;
    p.path.burner_area_m2 = 0.00240;
    p.path.exchanger_area_m2 = 0.0028;
    p.path.outlet_area_m2 = 0.000728;
    p.path.exchanger_height_m = 0.45;
    p.path.vent_diameter_m = units::inch_to_m(4.0);
    p.path.vent_height_m = 4.0;
    p.path.vent_length_m = 6.0;
    p.path.vent_friction_factor = 0.03;
    p.path.vent_fittings_loss = 5.0;
    p.path.cap_wind_factor = 0.0;
    p.inducer.fan = {units::rpm_to_rad_s(3100.0), 1.2, 295.0, 0.0, 2.6e5, 0.075, 1.5, 0.0};
    p.inducer.rotor_inertia_kg_m2 = 7.0e-4;
    p.inducer.bearing_drag_nm = 0.006;
    p.inducer.unbalance_kg_m = 4.0e-6;
    p.inducer.shaken_mass_kg = 2.5;
    p.sense_line = {8.0e7, 8.0e5, 1.1e-10, 6.0e-9, 1.8e-5, units::inwc_to_pa(0.60), units::inwc_to_pa(0.53)};
    return p;
}

/// A two-pole motor of the size of the inducer; its amps are not used.
inline InductionMotor inducer_motor() {
    return {units::rpm_to_rad_s(3600.0), 0.122, 0.28, 0.0, 0.0, 1.0};
}

/// Room, weather and gas of a furnace that has just started (all at room temperature, no gas).
inline draft::Inputs cold_inputs() {
    draft::Inputs in;
    in.room_k = 294.0;
    in.outdoor_k = 273.15;
    in.barometric_pa = 101325.0;
    in.exchanger_gas_k = 294.0;
    in.collector_gas_k = 294.0;
    in.vent_gas_k = 294.0;
    return in;
}

/// The same after a quarter of an hour of fire: 76.1 ft3/h of gas of SG 0.60, 195 C at the inducer.
inline draft::Inputs hot_inputs() {
    draft::Inputs in = cold_inputs();
    in.exchanger_gas_k = 820.0;
    in.collector_gas_k = units::celsius_to_k(195.0);
    in.vent_gas_k = units::celsius_to_k(150.0);
    in.gas_kg_s = 0.00044;
    return in;
}

/// A draft on its test bench: parts as they are, a motor that may be switched, a clock.
struct DraftRig {
    draft::Params params = reference_draft();
    draft::Condition condition;
    draft::State state;
    draft::Inputs inputs = cold_inputs();
    draft::Outputs out;
    InductionMotor motor = inducer_motor();
    bool powered = true;
    double time_s = 0.0;

    void step(double dt_s) {
        const double speed = state.inducer.speed_rad_s;
        inputs.motor_torque_nm = powered ? motor.torque_nm(speed) : 0.0;
        inputs.motor_torque_slope_nm_s = powered ? motor.torque_slope_nm_s(speed) : 0.0;
        out = draft::step(params, condition, state, inputs, dt_s);
        time_s += dt_s;
    }
    const draft::Outputs& run(double seconds, double dt_s = 0.05) {
        for (double end = time_s + seconds - 0.5 * dt_s; time_s < end;)
            step(dt_s);
        return out;
    }
    /// Seconds until the switch closes (or opens), at most `limit_s`.
    double wait_for_switch(bool closed, double limit_s, double dt_s = 0.05) {
        const double start = time_s;
        while ((state.sense_line.closed != 0) != closed && time_s - start < limit_s)
            step(dt_s);
        return time_s - start;
    }
    [[nodiscard]] double port_inwc() const { return units::pa_to_inwc(out.port_suction_pa); }
    [[nodiscard]] double rpm() const { return units::rad_s_to_rpm(out.inducer_speed_rad_s); }
};

} // namespace lightoff::test
