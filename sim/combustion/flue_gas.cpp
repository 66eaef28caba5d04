// SPDX-License-Identifier: MIT
#include "combustion/flue_gas.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::combustion {

double dew_point_k(const FlueGas& gas, double pressure_pa) {
    constexpr double pascals_per_mmhg = 133.322; // NIST SP 811
    constexpr double natural_log_of_10 = 2.302585092994046;
    const double vapour_mmhg = gas.h2o / wet(gas) * pressure_pa / pascals_per_mmhg;
    const double log10 = units::log(vapour_mmhg) / natural_log_of_10;
    return units::celsius_to_k(1730.63 / (8.07131 - log10) - 233.426);
}

} // namespace lightoff::combustion
