// SPDX-License-Identifier: MIT
#pragma once
#include "units/complex.hpp"

namespace lightoff::electrical {

/// Rotor and air gap of a single-phase induction motor with windings on two axes at right angles,
/// seen from a winding of one turn (all ohms at line frequency).
struct MotorCore {
    double magnetising_ohm = 0.0;     ///< Xm
    double rotor_ohm = 0.0;           ///< Rr
    double rotor_reactance_ohm = 0.0; ///< Xr, leakage
    double iron_loss_ohm = 0.0;       ///< in parallel with each axis
    double synchronous_rad_s = 0.0;   ///< mechanical: 2 pi 60 / pole pairs
};

/// What one of the two fields that revolve against each other sees of the rotor.
struct RevolvingField {
    units::Complex y;
    double real_slope = 0.0; ///< d(Re y)/d(slip)
};

/// Admittance of the two field nodes: [M_m; M_a] = Y [E_m; E_a]. Not symmetric: a turning rotor
/// couples one axis into the other with opposite signs.
struct MotorAdmittance {
    units::Complex mm; ///< = aa
    units::Complex ma;
    units::Complex am;
    RevolvingField forward;
    RevolvingField backward;
};

/// Double revolving field theory: Yf = 2/(j Xm) + 2 s/(Rr + j s Xr), Yb the same with 2 - s.
/// Source: A. E. Fitzgerald et al., Electric Machinery, chapter on single-phase motors (from
/// memory), with E+- = (Em -+ j Ea)/2. Leaves out saturation, slot harmonics, rotor temperature.
MotorAdmittance motor_admittance(const MotorCore& core, double rotor_rad_s);

/// Torque on the rotor and its slope.
struct MotorTorque {
    double nm = 0.0;
    double slope_nm_s_rad = 0.0; ///< dT/d(speed) at fixed field voltages, for an implicit rotor step
};

/// T = (|E+|^2 Re Yf - |E-|^2 Re Yb) / synchronous speed; field voltages r.m.s. per turn.
MotorTorque motor_torque(const MotorCore& core, const MotorAdmittance& now, units::Complex field_m_v,
                         units::Complex field_a_v);

} // namespace lightoff::electrical
