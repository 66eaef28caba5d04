// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>
#include <cmath>

namespace lightoff::units {

/// What a wheel does at one speed and density; the fan laws give every other:
/// flow ~ N, pressure ~ N^2 density, torque ~ N^2 density, power ~ N^3 density (fan laws, published).
///     pressure = shutoff + slope Q - curvature Q^2        torque = shutoff + slope Q + curvature Q^2
/// A forward-curved wheel has a positive slope (its pressure rises, then falls) and a torque that climbs
/// steeply with flow; a radial wheel has neither.
struct FanCurve {
    double speed_rad_s = 0.0;   ///< reference speed
    double density_kg_m3 = 0.0; ///< reference density
    double shutoff_pa = 0.0;
    double slope_pa_s_m3 = 0.0;
    double curvature_pa_s2_m6 = 0.0;
    double shutoff_torque_nm = 0.0;
    double torque_slope_nm_s_m3 = 0.0;
    double torque_curvature_nm_s2_m6 = 0.0;
};

/// Factors on a clean wheel: flow capacity and pressure of a wheel with packed or eaten blades, same
/// efficiency, so that the torque falls by their product.
struct WheelWear {
    double flow = 1.0;
    double pressure = 1.0;
};

/// A fan at its present speed and density. Pressure (Pa) by mass flow m: shutoff + slope m - curvature m |m|.
struct FanNow {
    double shutoff_pa = 0.0;
    double slope_pa_s_kg = 0.0;
    double curvature_pa_s2_kg2 = 0.0;
    double shutoff_torque_nm = 0.0;
    double torque_slope_nm_s_kg = 0.0;
    double torque_curvature_nm_s2_kg2 = 0.0;

    [[nodiscard]] double pressure_pa(double flow_kg_s) const {
        return shutoff_pa + flow_kg_s * (slope_pa_s_kg - curvature_pa_s2_kg2 * std::fabs(flow_kg_s));
    }
    /// Torque that the gas asks of the wheel, N m; driven backwards the gas is taken to add nothing.
    [[nodiscard]] double torque_nm(double flow_kg_s) const {
        const double flow = std::max(flow_kg_s, 0.0);
        return shutoff_torque_nm + flow * (torque_slope_nm_s_kg + torque_curvature_nm_s2_kg2 * flow);
    }
};

/// The fan laws.
inline FanNow fan_at(const FanCurve& fan, double speed_rad_s, double density_kg_m3, WheelWear wear = {}) {
    const double speed = speed_rad_s / fan.speed_rad_s;
    const double density = density_kg_m3 / fan.density_kg_m3;
    const double flow_per_kg = 1.0 / (density_kg_m3 * wear.flow); // clean wheel's m3 for each kg
    const double pressure = density * wear.pressure;
    const double torque = pressure * wear.flow;
    return {pressure * speed * speed * fan.shutoff_pa,
            pressure * speed * fan.slope_pa_s_m3 * flow_per_kg,
            pressure * fan.curvature_pa_s2_m6 * flow_per_kg * flow_per_kg,
            torque * speed * speed * fan.shutoff_torque_nm,
            torque * speed * fan.torque_slope_nm_s_m3 * flow_per_kg,
            torque * fan.torque_curvature_nm_s2_m6 * flow_per_kg * flow_per_kg};
}

/// Root of constant + linear x - square x^2 on the side where the expression falls as x grows. A negative
/// discriminant (no root) counts as zero. `square` may be negative or zero if `linear` is negative.
inline double falling_root(double constant, double linear, double square) {
    const double spread = std::sqrt(std::max(0.0, linear * linear + 4.0 * square * constant));
    return linear < 0.0 ? 2.0 * constant / (spread - linear) : (linear + spread) / (2.0 * square);
}

/// Resistance of an opening or a duct piece in dp = resistance m^2 / density, 1/m4, by its effective area
/// (area times discharge coefficient, m2): 1 / (2 area^2) (square law, Bernoulli).
constexpr double resistance_per_m4(double effective_area_m2) {
    return 0.5 / (effective_area_m2 * effective_area_m2);
}

/// Effective area (m2) of a piece that takes `drop_pa` at `flow_m3_s` of a gas of `density_kg_m3`.
inline double effective_area_m2(double drop_pa, double flow_m3_s, double density_kg_m3) {
    return flow_m3_s * std::sqrt(0.5 * density_kg_m3 / drop_pa);
}

} // namespace lightoff::units
