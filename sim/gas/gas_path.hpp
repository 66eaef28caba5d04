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

struct GasPressures {
    double inlet_pa = 0.0;
    double manifold_pa = 0.0;
};

/// The larger root of a x^2 + b x + c = 0 for a > 0, b >= 0, held at 0 when the supply can't feed the others
/// (c > 0).
inline double positive_root(double a, double b, double c) {
    return c >= 0.0 ? 0.0 : -2.0 * c / (b + std::sqrt(b * b - 4.0 * a * c));
}

/// Settled pressures in closed form. With x = sqrt(inlet) a wide-open valve passes Q = G x, so that
///   x^2 + Rs (G x + Qo)^2 + Rb (G x)^2 = supply
/// is a quadratic in x. If the manifold then lies above the regulator's line, set + slope * inlet, the
/// regulator throttles to that line; with s = sqrt(manifold) and Q = C s the same balance is a quadratic in
/// s. So manifold = min(regulator line, inlet - loss of the wide-open valve), as measured on a starving
/// valve. Leaves out the regulator's own droop with flow and, on its line, the (slope x leak droop) of an
/// inlet leak.
inline GasPressures settled_pressures(const GasPath& p) {
    const double rs = p.shared_resistance;
    const double rb = p.branch_resistance;
    const double qo = p.other_flow_m3_s;
    const double shortfall = rs * qo * qo - p.supply_pa;
    const double gv2 = p.valve_conductance * p.valve_conductance;
    const double c = p.load_conductance;
    const double c2 = c * c;

    const double share = gv2 > 0.0 ? gv2 / (gv2 + c2) : 0.0; // manifold / inlet of the wide-open valve
    const double g = c * std::sqrt(share) + p.inlet_conductance;
    const double x = positive_root(1.0 + (rs + rb) * g * g, 2.0 * rs * g * qo, shortfall);
    const double inlet = x * x;
    const double manifold = share * inlet;
    const double k = p.regulator_slope;
    if (manifold <= p.regulator_set_pa + k * inlet)
        return {inlet, manifold};

    const double s =
        positive_root(1.0 + k * (rs + rb) * c2, 2.0 * k * rs * c * qo, k * shortfall - p.regulator_set_pa);
    const double q = c * s;
    const double l = p.inlet_conductance;
    const double shared = q + qo;
    const double y = positive_root(1.0 + (rs + rb) * l * l, 2.0 * l * (rs * shared + rb * q),
                                   rs * shared * shared + rb * q * q - p.supply_pa);
    return {y * y, s * s};
}

} // namespace lightoff::gas
