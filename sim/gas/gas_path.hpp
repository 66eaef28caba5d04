// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>
#include <cmath>

namespace lightoff::gas {

/// Supply, pipe, valve with regulator, and burners as one chain of square-law parts. Pressures are gauge, Pa;
/// resistances Pa/(m3/s)^2; conductances m3/s/Pa^(1/2).
struct GasPath {
    double supply_pa = 0.0;
    double shared_resistance = 0.0; ///< meter and house pipe, which other appliances load too
    double branch_resistance = 0.0; ///< pipe and cock of this appliance alone
    double other_flow_m3_s = 0.0;   ///< drawn by other appliances behind the meter
    double inlet_conductance = 0.0; ///< leaks at the valve inlet, to the room
    double valve_conductance = 0.0; ///< wide-open valve at its present stroke, and its leak
    double load_conductance = 0.0;  ///< everything behind the valve: burner orifices, open outlet tap
    double regulator_set_pa = 0.0;  ///< outlet pressure that the regulator would hold at inlet 0
    double regulator_slope = 0.0;   ///< rise of it for each Pa of inlet, 0..0.1
};

/// Resistance [Pa/(m3/s)^2] of a part that loses `loss_pa` at `flow_m3_s` > 0, by the square law of turbulent
/// flow.
constexpr double square_law_resistance(double loss_pa, double flow_m3_s) {
    return loss_pa / (flow_m3_s * flow_m3_s);
}

/// The same as a conductance [m3/s per Pa^(1/2)]; loss_pa > 0.
inline double square_law_conductance(double loss_pa, double flow_m3_s) {
    return flow_m3_s / std::sqrt(loss_pa);
}

struct GasPressures {
    double inlet_pa = 0.0;
    double manifold_pa = 0.0;
    double manifold_root = 0.0; ///< square root of the manifold pressure: flows are conductance times this
};

/// The larger root of a x^2 + b x + c = 0 for a > 0, b >= 0; 0 when there is none above 0 (c >= 0).
inline double positive_root(double a, double b, double c) {
    return c >= 0.0 ? 0.0 : -2.0 * c / (b + std::sqrt(b * b - 4.0 * a * c));
}

/// Inlet pressure while `drawn_m3_s` goes through the valve: with y = sqrt(inlet) the leaks draw L y, and
///   y^2 + Rs (q + L y + Qo)^2 + Rb (q + L y)^2 = supply.
inline double inlet_pressure(const GasPath& p, double drawn_m3_s) {
    const double rs = p.shared_resistance;
    const double rb = p.branch_resistance;
    const double shared = drawn_m3_s + p.other_flow_m3_s;
    const double left = p.supply_pa - rs * shared * shared - rb * drawn_m3_s * drawn_m3_s;
    const double l = p.inlet_conductance;
    if (l <= 0.0)
        return std::max(0.0, left);
    const double y = positive_root(1.0 + (rs + rb) * l * l, 2.0 * l * (rs * shared + rb * drawn_m3_s), -left);
    return y * y;
}

/// Settled pressures in closed form. Two cases, each a quadratic:
///   the regulator throttles and holds manifold = set + slope * inlet; with s = sqrt(manifold) it draws Q = C
///   s; or it stands wide open, x = sqrt(inlet), Q = G x with G of valve and burners in series.
/// The first holds if the wide-open valve would lose no more than inlet - manifold. So
/// manifold = min(regulator line, inlet - loss of the wide-open valve), as measured on a starving valve.
/// Leaves out the regulator's own droop with flow and, on its line, slope x (droop by an inlet leak).
inline GasPressures settled_pressures(const GasPath& p) {
    const double r = p.shared_resistance + p.branch_resistance;
    const double by_others = 2.0 * p.shared_resistance * p.other_flow_m3_s;
    const double shortfall = p.shared_resistance * p.other_flow_m3_s * p.other_flow_m3_s - p.supply_pa;
    const double c = p.load_conductance;
    const double gv2 = p.valve_conductance * p.valve_conductance;
    if (gv2 <= 0.0)
        return {inlet_pressure(p, 0.0), 0.0, 0.0};

    const double k = p.regulator_slope;
    const double s =
        positive_root(1.0 + k * r * c * c, k * by_others * c, k * shortfall - p.regulator_set_pa);
    const double held_inlet = inlet_pressure(p, c * s);
    if ((held_inlet - s * s) * gv2 >= c * c * s * s)
        return {held_inlet, s * s, s};

    const double share = gv2 / (gv2 + c * c); // manifold / inlet of the wide-open valve
    const double share_root = std::sqrt(share);
    const double g = c * share_root + p.inlet_conductance;
    const double x = positive_root(1.0 + r * g * g, by_others * g, shortfall);
    return {x * x, share * x * x, share_root * x};
}

} // namespace lightoff::gas
