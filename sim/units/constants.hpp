// SPDX-License-Identifier: MIT
#pragma once

/// Physical constants that more than one room uses, SI, each with its source.
namespace lightoff::units {

inline constexpr double gravity_m_s2 = 9.80665; // standard gravity, exact by definition (CGPM 1901)
inline constexpr double gas_constant_j_mol_k = 8.314462618;        // CODATA 2018, exact
inline constexpr double stefan_boltzmann_w_m2_k4 = 5.670374419e-8; // CODATA 2018
inline constexpr double standard_pressure_pa = 101325.0;           // standard atmosphere, exact by definition
inline constexpr double molar_mass_air_kg_mol =
    0.0289647; // dry air, U.S. Standard Atmosphere 1976 (0.0289644) / CIPM; from memory
inline constexpr double cp_air_j_kg_k = 1006.0; // dry air near 300 K, engineering texts; from memory
inline constexpr double line_frequency_hz = 60.0;
inline constexpr double ticks_per_second = 20.0; // a tick is 50 ms
inline constexpr double seconds_per_tick = 1.0 / ticks_per_second;

} // namespace lightoff::units
