// SPDX-License-Identifier: MIT
#include "electrical/motor_core.hpp"

namespace lightoff::electrical {
namespace {

using units::Complex;

/// 2/(j Xm) + 2 s/(Rr + j s Xr)
Complex field_admittance(const MotorCore& core, double slip) {
    const double r = core.rotor_ohm;
    const double x = slip * core.rotor_reactance_ohm;
    const double k = 2.0 * slip / (r * r + x * x);
    return {k * r, -k * x - 2.0 / core.magnetising_ohm};
}

struct ReYSlope {
    double value;
    double slope; ///< d/ds
};

ReYSlope real_part(const MotorCore& core, double slip) {
    const double r = core.rotor_ohm;
    const double x = slip * core.rotor_reactance_ohm;
    const double d = 1.0 / (r * r + x * x);
    return {2.0 * slip * r * d, 2.0 * r * (r * r - x * x) * d * d};
}

} // namespace

MotorAdmittance motor_admittance(const MotorCore& core, double rotor_rad_s) {
    const double slip = 1.0 - rotor_rad_s / core.synchronous_rad_s;
    const Complex f = field_admittance(core, slip);
    const Complex b = field_admittance(core, 2.0 - slip);
    const Complex quarter = 0.25 * (f - b);
    return {0.25 * (f + b), {quarter.im, -quarter.re}, {-quarter.im, quarter.re}};
}

MotorTorque motor_torque(const MotorCore& core, double rotor_rad_s, Complex m, Complex a) {
    const double slip = 1.0 - rotor_rad_s / core.synchronous_rad_s;
    const double forward = norm(Complex{0.5 * (m.re + a.im), 0.5 * (m.im - a.re)});
    const double backward = norm(Complex{0.5 * (m.re - a.im), 0.5 * (m.im + a.re)});
    const ReYSlope f = real_part(core, slip);
    const ReYSlope b = real_part(core, 2.0 - slip);
    const double per_speed = 1.0 / core.synchronous_rad_s;
    return {(forward * f.value - backward * b.value) * per_speed,
            -(forward * f.slope + backward * b.slope) * per_speed * per_speed};
}

} // namespace lightoff::electrical
