// SPDX-License-Identifier: MIT
#pragma once
#include "combustion/fuel.hpp"
#include <array>

/// Complete combustion: what comes out, what an analyser reads, what it carries away.
namespace lightoff::combustion {

/// Amounts of the four gases of complete combustion: mol per mol of fuel, or mol/s.
struct FlueGas {
    double co2 = 0.0;
    double h2o = 0.0;
    double n2 = 0.0; ///< with argon
    double o2 = 0.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("co2", "mol/s", self.co2);
        visit("h2o", "mol/s", self.h2o);
        visit("n2", "mol/s", self.n2);
        visit("o2", "mol/s", self.o2);
    }
};

constexpr double dry(const FlueGas& g) {
    return g.co2 + g.n2 + g.o2;
}
constexpr double wet(const FlueGas& g) {
    return dry(g) + g.h2o;
}
/// kg, or kg/s.
constexpr double mass(const FlueGas& g) {
    return g.co2 * molar_mass_co2 + g.h2o * molar_mass_h2o + g.n2 * molar_mass_atmospheric_n2 +
           g.o2 * molar_mass_o2;
}

/// mol of water vapour per mol of dry air for a humidity ratio in kg/kg.
constexpr double humid_moles(double humidity_ratio) {
    return humidity_ratio * units::molar_mass_air_kg_mol / molar_mass_h2o;
}

/// `fuel_moles` burnt in `dry_air_moles` >= stoichiometric (with less, o2 comes out negative).
constexpr FlueGas burn(const Fuel& f, double fuel_moles, double dry_air_moles, double humidity_ratio = 0.0) {
    return {fuel_moles * (f.carbon + f.own_co2),
            fuel_moles * f.water + dry_air_moles * humid_moles(humidity_ratio),
            dry_air_moles * nitrogen_in_air + fuel_moles * f.own_nitrogen,
            dry_air_moles * oxygen_in_air - fuel_moles * f.oxygen};
}

/// One mol of fuel with `excess_air` (0.5 = 50 %) over stoichiometric.
constexpr FlueGas burn_with_excess(const Fuel& f, double excess_air, double humidity_ratio = 0.0) {
    return burn(f, 1.0, stoichiometric_air(f) * (1.0 + excess_air), humidity_ratio);
}

/// Dry flue gas per mol of fuel with no excess air.
constexpr double stoichiometric_dry_flue(const Fuel& f) {
    return dry(burn_with_excess(f, 0.0));
}

/// Highest CO2 that a dry sample can show.
constexpr double ultimate_co2(const Fuel& f) {
    return (f.carbon + f.own_co2) / stoichiometric_dry_flue(f);
}

/// Excess air from O2 in the dry sample, 0 <= o2_dry < 0.2095 (fractions). Dilution is with air:
/// o2 (D + A e) = 0.2095 A e with D the stoichiometric dry flue and A the stoichiometric air.
constexpr double excess_air_from_o2(const Fuel& f, double o2_dry) {
    return o2_dry * stoichiometric_dry_flue(f) / (stoichiometric_air(f) * (oxygen_in_air - o2_dry));
}

/// Excess air from CO2 in the dry sample, 0 < co2_dry <= ultimate. One reading fits a lean and a rich burner:
/// this is the lean answer.
constexpr double excess_air_from_co2(const Fuel& f, double co2_dry) {
    return stoichiometric_dry_flue(f) / stoichiometric_air(f) * (ultimate_co2(f) / co2_dry - 1.0);
}

/// CO corrected to no excess air: CO x 20.9 / (20.9 - O2 %), the trade's formula (common practice); fractions
/// or ppm in, the same out. o2_dry < 0.209; CO in ambient air is not subtracted.
constexpr double co_air_free(double co, double o2_dry) {
    return co * 0.209 / (0.209 - o2_dry);
}

/// Dew point [K] of flue gas at `pressure_pa`: Antoine equation of water, log10 p[mmHg] = 8.07131 - 1730.63 /
/// (233.426
/// + t[C]), 1-100 C (from memory; tested against excess_air.csv). No acid dew point.
double dew_point_k(const FlueGas& gas, double pressure_pa = units::standard_pressure_pa);

/// Heat capacity as a polynomial of temperature, c0 + c1 T + c2 T^2 + c3 T^3 with T in K, 273-1800 K:
/// J/(mol K) of one gas, J/K or W/K of an amount.
using HeatCapacity = std::array<double, 4>;

/// Ideal-gas heat capacities: Kobe, Petroleum Refiner 1949, as tabulated in Moran/Shapiro and Cengel/Boles
/// Table A-2c (within 0.7 % of the source data; oxygen 1.2 %).
inline constexpr HeatCapacity heat_capacity_co2{22.26, 5.981e-2, -3.501e-5, 7.469e-9};
inline constexpr HeatCapacity heat_capacity_h2o{32.24, 0.1923e-2, 1.055e-5, -3.595e-9};
inline constexpr HeatCapacity heat_capacity_n2{28.90, -0.1571e-2, 0.8081e-5, -2.873e-9};
inline constexpr HeatCapacity heat_capacity_o2{25.48, 1.520e-2, -0.7155e-5, 1.312e-9};

/// J/K of an amount in mol; W/K of a flow in mol/s.
constexpr HeatCapacity heat_capacity(const FlueGas& g) {
    HeatCapacity out{};
    for (std::size_t k = 0; k < out.size(); ++k)
        out[k] = g.co2 * heat_capacity_co2[k] + g.h2o * heat_capacity_h2o[k] + g.n2 * heat_capacity_n2[k] +
                 g.o2 * heat_capacity_o2[k];
    return out;
}

constexpr double heat_capacity_at(const HeatCapacity& c, double t_k) {
    return c[0] + t_k * (c[1] + t_k * (c[2] + t_k * c[3]));
}

/// Heat [J or W] to warm from `from_k` to `to_k`: the integral of the polynomial. Water stays vapour.
constexpr double sensible_heat(const HeatCapacity& c, double from_k, double to_k) {
    constexpr auto integral = [](const HeatCapacity& a, double t) {
        return t * (a[0] + t * (a[1] / 2.0 + t * (a[2] / 3.0 + t * a[3] / 4.0)));
    };
    return integral(c, to_k) - integral(c, from_k);
}

/// What leaves with the flue gas, fractions of the higher heating value.
struct FlueLoss {
    double sensible = 0.0;
    double latent = 0.0;
    constexpr double efficiency() const { return 1.0 - sensible - latent; }
};

/// Steady (stack-loss) efficiency of a non-condensing appliance from excess air, flue and combustion-air
/// temperature [K]. Latent loss is all the water made; the moisture of the air counts only by its warmth.
/// Leaves out jacket loss, CO.
constexpr FlueLoss flue_loss(const Fuel& f, double excess_air, double flue_k, double air_k,
                             double humidity_ratio = 0.0) {
    const FlueGas gas = burn_with_excess(f, excess_air, humidity_ratio);
    return {sensible_heat(heat_capacity(gas), air_k, flue_k) / f.hhv_j_mol, latent_share(f)};
}

/// Siegert's loss formula for natural gas in the O2 form, fraction of the LOWER heating value, for
/// comparison: (Tflue - Tair)[C] x (0.66 / (21 - O2 %) + 0.009) % (1. BImSchV annex, from memory).
constexpr double siegert_loss(double o2_dry, double flue_k, double air_k) {
    return (flue_k - air_k) * (0.66 / (21.0 - 100.0 * o2_dry) + 0.009) / 100.0;
}

} // namespace lightoff::combustion
