// SPDX-License-Identifier: MIT
#pragma once
#include "units/constants.hpp"
#include "units/convert.hpp"

/// The airside sums of the trade.
namespace lightoff::air {

/// Standard air of the trade: 0.075 lb/ft3 (sea level, 70 F).
inline constexpr double kStandardAir_lb_ft3 = 0.075;
inline constexpr double kStandardAir_kg_m3 =
    kStandardAir_lb_ft3 * units::kilograms_per_pound / units::cubic_metres_per_cubic_foot;

/// Fan laws (published): what a fan does at `speed_ratio` times its speed in the same system.
constexpr double flow_at_speed(double flow, double speed_ratio) {
    return flow * speed_ratio;
}
constexpr double pressure_at_speed(double pressure, double speed_ratio, double density_ratio = 1.0) {
    return pressure * speed_ratio * speed_ratio * density_ratio;
}
constexpr double power_at_speed(double power, double speed_ratio, double density_ratio = 1.0) {
    return power * speed_ratio * speed_ratio * speed_ratio * density_ratio;
}

/// Power in the air, W: flow (m3/s) times pressure rise (Pa); in trade units cfm x in. w.c. / 6356 hp
/// (published).
constexpr double air_power_w(double flow_m3_s, double rise_pa) {
    return flow_m3_s * rise_pa;
}

/// Btu/h for each cfm and degree F: 60 x 0.24 x density (lb/ft3); 1.08 in standard air (trade arithmetic).
constexpr double sensible_heat_factor(double density_lb_ft3 = kStandardAir_lb_ft3) {
    return 60.0 * 0.24 * density_lb_ft3;
}
/// Temperature rise, F, of `cfm` air that takes up `btuh`.
constexpr double temperature_rise_f(double btuh, double cfm, double density_lb_ft3 = kStandardAir_lb_ft3) {
    return btuh / (sensible_heat_factor(density_lb_ft3) * cfm);
}
/// Airflow, cfm, whose temperature rises by `rise_f` on `btuh`.
constexpr double airflow_cfm(double btuh, double rise_f, double density_lb_ft3 = kStandardAir_lb_ft3) {
    return btuh / (sensible_heat_factor(density_lb_ft3) * rise_f);
}
/// Sensible heat, Btu/h, that `cfm` carry at a rise of `rise_f`.
constexpr double sensible_heat_btuh(double cfm, double rise_f, double density_lb_ft3 = kStandardAir_lb_ft3) {
    return sensible_heat_factor(density_lb_ft3) * cfm * rise_f;
}

} // namespace lightoff::air
