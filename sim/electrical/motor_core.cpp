// SPDX-License-Identifier: MIT
#include "electrical/motor_core.hpp"

namespace lightoff::electrical {
namespace {

using units::Complex;

/// Re Y, Im Y and d(Re Y)/ds of Y = 2/(j Xm) + 2 s/(Rr + j s Xr).
RevolvingField revolving_field(const MotorCore& core, double slip) {
    const double r = core.rotor_ohm;
    const double x = slip * core.rotor_reactance_ohm;
    const double d = 1.0 / (r * r + x * x);
    const double k = 2.0 * slip * d;
    return {{k * r, -k * x - 2.0 / core.magnetising_ohm}, 2.0 * r * (r * r - x * x) * d * d};
}

} // namespace

MotorAdmittance motor_admittance(const MotorCore& core, double rotor_rad_s) {
    const double slip = 1.0 - rotor_rad_s / core.synchronous_rad_s;
    const RevolvingField f = revolving_field(core, slip);
    const RevolvingField b = revolving_field(core, 2.0 - slip);
    const Complex quarter = 0.25 * (f.y - b.y);
    return {0.25 * (f.y + b.y), {quarter.im, -quarter.re}, {-quarter.im, quarter.re}, f, b};
}

MotorTorque motor_torque(const MotorCore& core, const MotorAdmittance& now, Complex m, Complex a) {
    const double forward = norm(Complex{0.5 * (m.re + a.im), 0.5 * (m.im - a.re)});
    const double backward = norm(Complex{0.5 * (m.re - a.im), 0.5 * (m.im + a.re)});
    const double per_speed = 1.0 / core.synchronous_rad_s;
    return {(forward * now.forward.y.re - backward * now.backward.y.re) * per_speed,
            -(forward * now.forward.real_slope + backward * now.backward.real_slope) * per_speed * per_speed};
}

} // namespace lightoff::electrical
