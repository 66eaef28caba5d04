// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>
#include <cstdint>

#include "units/convert.hpp"

namespace lightoff::units {

/// The torques on a shaft at its present speed; a slope is the derivative by speed.
struct ShaftTorques {
    double motor_nm = 0.0;
    double motor_slope_nm_s = 0.0;
    double load_nm = 0.0; ///< holds back, 0 or more
    double load_slope_nm_s = 0.0;
    double drag_nm = 0.0; ///< dry friction of the bearings, 0 or more; a seized one has more than any motor
};

/// Speed of a shaft (rad/s, 0 or more) after `dt_s`: inertia (kg m2) times acceleration equals motor minus
/// load minus dry friction, one linearly implicit Euler step (stable for any falling torque). Dry friction
/// stops a shaft and holds it, it never turns one. Leaves out turning backwards.
inline double next_speed(double speed_rad_s, double inertia_kg_m2, const ShaftTorques& torques, double dt_s) {
    if (speed_rad_s <= 0.0 && torques.motor_nm <= torques.drag_nm)
        return 0.0;
    const double net_nm = torques.motor_nm - torques.load_nm - torques.drag_nm;
    const double stiffened = inertia_kg_m2 - dt_s * (torques.motor_slope_nm_s - torques.load_slope_nm_s);
    // A motor torque that rises too fast with speed to be taken implicitly is taken explicitly.
    const double inertia = std::max(stiffened, 0.5 * inertia_kg_m2);
    return std::max(0.0, speed_rad_s + dt_s * net_nm / inertia);
}

/// Angle (rad, 0 to 2 pi) after `dt_s` at a speed of 0 or more.
inline double next_angle(double angle_rad, double speed_rad_s, double dt_s) {
    const double turns = (angle_rad + speed_rad_s * dt_s) * (0.5 / pi);
    const double rest = turns - static_cast<double>(static_cast<std::int64_t>(turns));
    return rest * (2.0 * pi);
}

/// Velocity (m/s, peak) at which an unbalance (kg m) shakes a body of a given mass (kg) on soft mounts, far
/// above their resonance: the common centre of mass stays put, so displacement = unbalance / mass (rotor
/// dynamics, textbook).
inline double shake_m_s(double unbalance_kg_m, double speed_rad_s, double shaken_mass_kg) {
    return unbalance_kg_m * speed_rad_s / shaken_mass_kg;
}

} // namespace lightoff::units
