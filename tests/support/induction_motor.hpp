// SPDX-License-Identifier: MIT
#pragma once
#include <cmath>

namespace lightoff::test {

/// A stand-in for a motor: torque by slip after Kloss, T = 2 Tk / (s/sk + sk/s) (electrical-machine texts),
/// and a line current whose load part rises with slip. It has the shape of a permanent-split-capacitor motor
/// (weak start), not its windings, and never opens or heats.
struct InductionMotor {
    double synchronous_rad_s = 0.0;
    double breakdown_nm = 0.0;
    double breakdown_slip = 0.0;
    double magnetising_a = 0.0;
    double load_a_per_nm = 0.0;
    double strength = 1.0; ///< weak capacitor or low voltage: factor on the torque

    [[nodiscard]] double slip(double speed_rad_s) const { return 1.0 - speed_rad_s / synchronous_rad_s; }
    [[nodiscard]] double torque_nm(double speed_rad_s) const {
        const double s = slip(speed_rad_s);
        return strength * 2.0 * breakdown_nm * s * breakdown_slip / (s * s + breakdown_slip * breakdown_slip);
    }
    [[nodiscard]] double torque_slope_nm_s(double speed_rad_s) const {
        const double step = 1e-3;
        return (torque_nm(speed_rad_s + step) - torque_nm(speed_rad_s - step)) / (2.0 * step);
    }
    /// Line amps of the running machine.
    [[nodiscard]] double amps(double speed_rad_s) const {
        return std::hypot(magnetising_a, load_a_per_nm * torque_nm(speed_rad_s) / strength);
    }
};

} // namespace lightoff::test
