// SPDX-License-Identifier: MIT
#pragma once
#include <cmath>

namespace lightoff::heat {

/// Flue gas whose specific heat rises linearly with temperature, cp(T) = c0 + c1*T in J/(kg K), T in K.
/// Composition is the combustion room's; here only its two coefficients are known.
/// Left out: dissociation (below 1 % under 1800 K).
struct FlueGas {
    double c0_j_kg_k;
    double c1_j_kg_k2;

    [[nodiscard]] double cp(double t_k) const { return c0_j_kg_k + c1_j_kg_k2 * t_k; }

    /// Specific enthalpy at `hot_k` over that at `cold_k`, J/kg: the integral of cp.
    [[nodiscard]] double enthalpy(double cold_k, double hot_k) const {
        return (hot_k - cold_k) * (c0_j_kg_k + 0.5 * c1_j_kg_k2 * (hot_k + cold_k));
    }

    /// Temperature at which the enthalpy over `cold_k` is `h_j_kg`: the root of the quadratic, in the form
    /// that loses no digits when c1 is small. Valid while cp stays positive.
    [[nodiscard]] double temperature(double cold_k, double h_j_kg) const {
        const double cp_cold = cp(cold_k);
        return cold_k + 2.0 * h_j_kg / (cp_cold + std::sqrt(cp_cold * cp_cold + 2.0 * c1_j_kg_k2 * h_j_kg));
    }
};

} // namespace lightoff::heat
