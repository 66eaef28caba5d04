// SPDX-License-Identifier: MIT
#pragma once
#include "units/convert.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::electrical {

inline constexpr double kCopperResistivityOhmM =
    1.7241e-8;                                      ///< annealed copper at 20 C, 100 % IACS (IEC 60028)
inline constexpr double kCopperPerKelvin = 0.00393; ///< of the value at 20 C (IEC 60028)

/// Diameter in m of a solid conductor of a whole American Wire Gauge number (ASTM B258: 0.005 in. at 36,
/// 0.46 in. at 0000, 39 equal ratios between).
inline double awg_diameter_m(int awg) {
    return units::inch_to_m(0.005 * units::pow(92.0, (36.0 - static_cast<double>(awg)) / 39.0));
}

/// Ohms per metre of solid copper of that gauge at a temperature in degrees Celsius.
inline double copper_ohm_per_m(int awg, double celsius = 25.0) {
    const double d = awg_diameter_m(awg);
    return kCopperResistivityOhmM * (1.0 + kCopperPerKelvin * (celsius - 20.0)) / (0.25 * units::pi * d * d);
}

} // namespace lightoff::electrical
