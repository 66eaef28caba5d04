// SPDX-License-Identifier: MIT
#pragma once
#include "units/convert.hpp"
#include <cmath>

/// The trade's orifice equation. Gas volumes in this room are at standard conditions (60 F, 1 atm).
namespace lightoff::gas {

/// Q = 1658.5 K A sqrt(h / SG): Q in ft3/h, A in in2, h in in. w.c., SG relative to air.
/// (Gas engineers' handbooks; reproduces the capacity table in tests/reference/orifice_capacity.csv.)
inline constexpr double orifice_constant_trade = 1658.5;

/// The same constant for SI: m3/s for 1 m2 and 1 Pa at SG 1. (An ideal sqrt(2 / rho) with
/// rho = 1.218 kg/m3, that is air near 60 F.)
inline const double orifice_constant_si =
    units::cfh_to_m3s(orifice_constant_trade) /
    (units::metres_per_inch * units::metres_per_inch * std::sqrt(units::pascals_per_inwc));

/// Flow [m3/s] through a hole of `area_m2` for 1 Pa^(1/2); the flow is this times sqrt(pressure).
/// `discharge_coefficient` about 0.90 for a drilled gas orifice (range 0.6..1). At altitude the gas is
/// thinner: pass `density_ratio` = barometric / standard pressure; volumes stay at standard conditions.
inline double orifice_conductance(double area_m2, double discharge_coefficient, double specific_gravity,
                                  double density_ratio = 1.0) {
    return orifice_constant_si * discharge_coefficient * area_m2 *
           std::sqrt(density_ratio / specific_gravity);
}

constexpr double circle_area_m2(double diameter_m) {
    return units::pi / 4.0 * diameter_m * diameter_m;
}

/// Flow [m3/s] of one orifice at a gauge pressure [Pa] >= 0. Leaves out compressibility (under 0.5 % here)
/// and gas temperature.
inline double orifice_flow_m3_s(double diameter_m, double pressure_pa, double specific_gravity,
                                double discharge_coefficient = 0.90) {
    return orifice_conductance(circle_area_m2(diameter_m), discharge_coefficient, specific_gravity) *
           std::sqrt(pressure_pa);
}

/// The drill diameter [m] that passes `flow_m3_s` at a gauge pressure [Pa] > 0.
inline double orifice_diameter_m(double flow_m3_s, double pressure_pa, double specific_gravity,
                                 double discharge_coefficient = 0.90) {
    return std::sqrt(flow_m3_s /
                     orifice_flow_m3_s(1.0, pressure_pa, specific_gravity, discharge_coefficient));
}

} // namespace lightoff::gas
