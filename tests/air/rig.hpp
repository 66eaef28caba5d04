// SPDX-License-Identifier: MIT
#pragma once
#include "air/air.hpp"
#include "air/formulas.hpp"
#include "support/induction_motor.hpp"
#include "units/convert.hpp"

namespace lightoff::test {

inline constexpr double kReferenceFlow_m3_s = units::cfm_to_m3s(1150.0);

/// Effective area of a duct piece by its pressure drop (in. w.c.) at 1,150 cfm of standard air.
inline double area_by_drop(double drop_inwc) {
    return units::effective_area_m2(units::inwc_to_pa(drop_inwc), kReferenceFlow_m3_s,
                                    air::kStandardAir_kg_m3);
}

/// The reference furnace's air side (teaching values, chosen so that the settled targets are met):
/// 0.50 in. w.c. outside the cabinet and 0.35 within it at 1,150 cfm.
inline air::Params reference_air() {
    air::Params p;
    p.blower.fan = {units::rpm_to_rad_s(1075.0), 1.2, 265.0, 130.0, 420.0, 0.90, 2.1, 4.1};
    p.blower.rotor_inertia_kg_m2 = 0.045;
    p.blower.bearing_drag_nm = 0.10;
    p.blower.unbalance_kg_m = 1.0e-4;
    p.blower.packing_unbalance_kg_m = 1.2e-3;
    p.blower.shaken_mass_kg = 15.0;
    p.ducts.return_duct_area_m2 = area_by_drop(0.08);
    p.ducts.filter_area_m2 = area_by_drop(0.11);
    p.ducts.cabinet_area_m2 = area_by_drop(0.10);
    p.ducts.exchanger_area_m2 = area_by_drop(0.25);
    p.ducts.coil_area_m2 = area_by_drop(0.16);
    p.ducts.supply_duct_area_m2 = area_by_drop(0.10);
    p.ducts.registers_area_m2 = area_by_drop(0.05);
    p.ducts.blower_door_area_m2 = 0.15;
    return p;
}

/// A six-pole motor of the blower's size; magnetising and load amps stand in for its line current.
inline InductionMotor blower_motor() {
    return {units::rpm_to_rad_s(1200.0), 4.75, 0.25, 3.2, 1.15, 1.0};
}

/// An air side on its test bench: parts as they are, a motor that may be switched, standard air.
struct AirRig {
    air::Params params = reference_air();
    air::Condition condition;
    air::State state;
    air::Inputs inputs = standard_air();
    air::Outputs out;
    InductionMotor motor = blower_motor();
    bool powered = true;
    double time_s = 0.0;

    static air::Inputs standard_air() {
        air::Inputs in;
        in.return_density_kg_m3 = air::kStandardAir_kg_m3;
        in.supply_density_kg_m3 = air::kStandardAir_kg_m3;
        return in;
    }
    void step(double dt_s) {
        const double speed = state.blower.speed_rad_s;
        inputs.motor_torque_nm = powered ? motor.torque_nm(speed) : 0.0;
        inputs.motor_torque_slope_nm_s = powered ? motor.torque_slope_nm_s(speed) : 0.0;
        out = air::step(params, condition, state, inputs, dt_s);
        time_s += dt_s;
    }
    const air::Outputs& run(double seconds, double dt_s = 0.05) {
        for (double end = time_s + seconds - 0.5 * dt_s; time_s < end;)
            step(dt_s);
        return out;
    }
    [[nodiscard]] double cfm() const { return units::m3s_to_cfm(out.flow_m3_s); }
    [[nodiscard]] double rpm() const { return units::rad_s_to_rpm(out.blower_speed_rad_s); }
    [[nodiscard]] double amps() const { return motor.amps(out.blower_speed_rad_s); }
    [[nodiscard]] double return_inwc() const { return units::pa_to_inwc(out.return_static_pa); }
    [[nodiscard]] double supply_inwc() const { return units::pa_to_inwc(out.supply_static_pa); }
    [[nodiscard]] double external_inwc() const { return units::pa_to_inwc(out.external_static_pa); }
    /// Temperature rise of the reference furnace, F: 64,200 output - 800 jacket + 1,800 motor, Btu/h.
    [[nodiscard]] double rise_f() const { return air::temperature_rise_f(65200.0, cfm()); }
};

} // namespace lightoff::test
