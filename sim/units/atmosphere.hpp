// SPDX-License-Identifier: MIT
#pragma once
#include "units/constants.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::units {

/// Barometric pressure [Pa] at `altitude_m` above sea level, -500 to 11,000 m, no weather:
/// p = p0 (1 - 2.25577e-5 z)^5.2559 (U.S. Standard Atmosphere 1976, the form in the ASHRAE
/// Handbook of Fundamentals; constants from memory, result tested against the published table).
inline double pressure_at_altitude_pa(double altitude_m) {
    return standard_pressure_pa * pow(1.0 - 2.25577e-5 * altitude_m, 5.2559);
}

/// Density of indoor air at `altitude_m` over its density at sea level and the SAME temperature:
/// the pressure ratio. (Indoor air stays at room temperature; it does not cool with height.)
inline double air_density_ratio(double altitude_m) {
    return pressure_at_altitude_pa(altitude_m) / standard_pressure_pa;
}

/// Density of dry air [kg/m3], ideal gas.
constexpr double dry_air_density_kg_m3(double pressure_pa, double temperature_k) {
    return pressure_pa * molar_mass_air_kg_mol / (gas_constant_j_mol_k * temperature_k);
}

} // namespace lightoff::units
