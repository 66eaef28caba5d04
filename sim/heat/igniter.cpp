// SPDX-License-Identifier: MIT
#include "heat/igniter.hpp"

#include "units/constants.hpp"

#include <algorithm>

namespace lightoff::heat {

namespace {
constexpr double kColdK = 293.15; // where the cold resistance is stated
constexpr double fourth_power(double x) {
    return x * x * x * x;
}
} // namespace

double igniter_resistance_ohm(const IgniterParams& params, double factor, double temperature_k) {
    const double rise = std::max(temperature_k - kColdK, 0.0);
    const double fallen = params.softening_k / (params.softening_k + rise);
    return factor * (params.floor_ohm + (params.cold_ohm - params.floor_ohm) * fallen);
}

double igniter_loss_w(const IgniterParams& params, double temperature_k, double surroundings_k) {
    const double radiation = params.emissivity * units::stefan_boltzmann_w_m2_k4 *
                             (fourth_power(temperature_k) - fourth_power(surroundings_k));
    return params.area_m2 * (radiation + params.convection_w_m2_k * (temperature_k - surroundings_k));
}

} // namespace lightoff::heat
