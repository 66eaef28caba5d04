// SPDX-License-Identifier: MIT
#pragma once
#include "units/constants.hpp"
#include "units/convert.hpp"

/// Fuel gas as a mixture, by mole fraction. Per-mole values; "standard" volume is at 60 F and 1 atm.
namespace lightoff::combustion {

/// m3 of ideal gas per mol at 60 F (288.7056 K) and 1 atm.
inline constexpr double standard_molar_volume_m3_mol =
    units::gas_constant_j_mol_k * units::fahrenheit_to_k(60.0) / units::standard_pressure_pa;

/// Mole fraction of oxygen in dry air (the tables in tests/reference are made with this value).
inline constexpr double oxygen_in_air = 0.2095;
inline constexpr double nitrogen_in_air = 1.0 - oxygen_in_air; ///< with argon and the rest

/// kg/mol. Standard atomic weights (IUPAC), from memory. Atmospheric nitrogen makes air come out whole.
inline constexpr double molar_mass_co2 = 0.0440095;
inline constexpr double molar_mass_h2o = 0.0180153;
inline constexpr double molar_mass_o2 = 0.0319988;
inline constexpr double molar_mass_n2 = 0.0280134;
inline constexpr double molar_mass_atmospheric_n2 =
    (units::molar_mass_air_kg_mol - oxygen_in_air * molar_mass_o2) / nitrogen_in_air;

/// Heat given by water vapour condensing at 60 F, J/mol: 1,059.7 Btu/lb (steam tables, from memory).
inline constexpr double latent_heat_water_j_mol =
    1059.7 * units::joules_per_btu / units::kilograms_per_pound * molar_mass_h2o;

/// Mole fractions; they must add up to 1.
struct Composition {
    double methane = 0.0;
    double ethane = 0.0;
    double propane = 0.0;
    double butane = 0.0;
    double nitrogen = 0.0;
    double carbon_dioxide = 0.0;
};

/// What the sums need to know of a fuel, per mol of it.
struct Fuel {
    double molar_mass_kg_mol = 0.0;
    double hhv_j_mol = 0.0;    ///< higher heating value: water condensed
    double carbon = 0.0;       ///< mol CO2 made by burning
    double water = 0.0;        ///< mol H2O made
    double oxygen = 0.0;       ///< mol O2 needed
    double own_co2 = 0.0;      ///< mol CO2 that came with the fuel
    double own_nitrogen = 0.0; ///< mol N2 that came with the fuel
    double lower_limit = 0.05; ///< flammability, volume fraction in air
    double upper_limit = 0.15;
};

/// Higher heating values at 15 C, ideal gas: methane 891.51, ethane 1562.14, propane 2221.10, butane 2879.76
/// kJ/mol (ISO 6976, from memory; propane gives 2516 Btu/ft3 as published in fuel_properties.csv).
constexpr Fuel make_fuel(const Composition& c, double lower_limit, double upper_limit) {
    Fuel f;
    f.molar_mass_kg_mol = 0.0160425 * c.methane + 0.0300690 * c.ethane + 0.0440956 * c.propane +
                          0.0581222 * c.butane + molar_mass_n2 * c.nitrogen +
                          molar_mass_co2 * c.carbon_dioxide;
    f.hhv_j_mol = 891510.0 * c.methane + 1562140.0 * c.ethane + 2221100.0 * c.propane + 2879760.0 * c.butane;
    f.carbon = c.methane + 2.0 * c.ethane + 3.0 * c.propane + 4.0 * c.butane;
    f.water = 2.0 * c.methane + 3.0 * c.ethane + 4.0 * c.propane + 5.0 * c.butane;
    f.oxygen = f.carbon + 0.5 * f.water;
    f.own_co2 = c.carbon_dioxide;
    f.own_nitrogen = c.nitrogen;
    f.lower_limit = lower_limit;
    f.upper_limit = upper_limit;
    return f;
}

/// Flammability limits of natural gas: Speight, Synthetic Fuels Handbook (2008), Table 2.2.
constexpr Fuel methane() {
    return make_fuel({.methane = 1.0}, 0.05, 0.15);
}

/// A typical pipeline gas, teaching value: composition chosen so that it gives 1,050 Btu/ft3 and specific
/// gravity 0.60, as printed on the work order of the reference furnace.
inline constexpr Composition natural_gas_composition{.methane = 0.9154,
                                                     .ethane = 0.0624,
                                                     .propane = 0.0060,
                                                     .butane = 0.0,
                                                     .nitrogen = 0.0100,
                                                     .carbon_dioxide = 0.0062};
constexpr Fuel natural_gas() {
    return make_fuel(natural_gas_composition, 0.05, 0.15);
}

/// Flammability limits: fuel_properties.csv (draft guideline on domestic gas piping, p. 41).
constexpr Fuel propane() {
    return make_fuel({.propane = 1.0}, 0.0215, 0.095);
}

/// Relative to air.
constexpr double specific_gravity(const Fuel& f) {
    return f.molar_mass_kg_mol / units::molar_mass_air_kg_mol;
}

/// J per standard m3.
constexpr double hhv_j_m3(const Fuel& f) {
    return f.hhv_j_mol / standard_molar_volume_m3_mol;
}

/// Volumes of dry air that burn one volume of fuel exactly.
constexpr double stoichiometric_air(const Fuel& f) {
    return f.oxygen / oxygen_in_air;
}

/// Share of the higher heating value that leaves as water vapour.
constexpr double latent_share(const Fuel& f) {
    return f.water * latent_heat_water_j_mol / f.hhv_j_mol;
}

} // namespace lightoff::combustion
