// SPDX-License-Identifier: MIT
#include "cli/sums.hpp"
#include "combustion/flue_gas.hpp"
#include "combustion/fuel.hpp"
#include "files/error.hpp"
#include "units/atmosphere.hpp"

#include <stdexcept>

namespace lightoff::cli {
namespace {

using namespace combustion;

const Given kFuel{"fuel",
                  "",
                  0.0,
                  0.0,
                  "natural-gas is a typical pipeline gas of 1,050 Btu/ft3",
                  {},
                  false,
                  false,
                  {"natural-gas", "methane", "propane"}};
// The trade's air has 20.9 % oxygen; a sample with that much is air and burns nothing.
const Given kOxygen{"oxygen", "pct", 0.0, 20.8, "in the dry flue gas"};
const Given kExcessAir{"excess_air", "pct", 0.0, 1000.0, "over stoichiometric"};
const Given kHumidity{"humidity_ratio", "", 0.0, 0.03, "of the combustion air, kg water per kg dry air", 0.0};

Fuel fuel_of(const Values& v) {
    const std::string_view word = v.word("fuel");
    if (word == "methane")
        return methane();
    return word == "propane" ? propane() : natural_gas();
}

double share(double part, double whole) {
    return part / whole;
}

std::vector<Result> flue_gas(const Values& v) {
    const FlueGas gas = burn_with_excess(fuel_of(v), v["excess_air"], v["humidity_ratio"]);
    return {{"oxygen_dry", "pct", share(gas.o2, dry(gas))},
            {"carbon_dioxide_dry", "pct", share(gas.co2, dry(gas))},
            {"oxygen_wet", "pct", share(gas.o2, wet(gas))},
            {"carbon_dioxide_wet", "pct", share(gas.co2, wet(gas))},
            {"nitrogen_wet", "pct", share(gas.n2, wet(gas))},
            {"water_wet", "pct", share(gas.h2o, wet(gas))},
            {"molar_mass", "g_per_mol", mass(gas) / wet(gas)}};
}

std::vector<Result> from_co2(const Values& v) {
    const Fuel fuel = fuel_of(v);
    if (v["carbon_dioxide"] > ultimate_co2(fuel))
        throw std::invalid_argument("carbon_dioxide: found more than this fuel can make with no excess air; "
                                    "allowed up to " +
                                    files::rounded_text(100.0 * ultimate_co2(fuel)) + " %");
    const double excess = excess_air_from_co2(fuel, v["carbon_dioxide"]);
    const FlueGas gas = burn_with_excess(fuel, excess);
    return {{"excess_air", "pct", excess}, {"oxygen", "pct", share(gas.o2, dry(gas))}};
}

std::vector<Result> from_o2(const Values& v) {
    const Fuel fuel = fuel_of(v);
    const double excess = excess_air_from_o2(fuel, v["oxygen"]);
    const FlueGas gas = burn_with_excess(fuel, excess);
    return {{"excess_air", "pct", excess}, {"carbon_dioxide", "pct", share(gas.co2, dry(gas))}};
}

void require_warmer_flue(const Values& v) {
    if (v["flue"] < v["air"])
        throw std::invalid_argument("flue: found a flue gas colder than the combustion air; allowed the "
                                    "air's temperature or more");
}

std::vector<Result> loss(const Values& v) {
    require_warmer_flue(v);
    const Fuel fuel = fuel_of(v);
    const FlueLoss l =
        flue_loss(fuel, excess_air_from_o2(fuel, v["oxygen"]), v["flue"], v["air"], v["humidity_ratio"]);
    return {{"sensible_loss", "pct", l.sensible},
            {"latent_loss", "pct", l.latent},
            {"steady_efficiency", "pct", l.efficiency()}};
}

} // namespace

std::vector<Sum> combustion_sums() {
    const Given flue{"flue", "F", -40.0, 2000.0, "flue gas temperature"};
    const Given air{"air", "F", -40.0, 200.0, "combustion air temperature"};
    return {
        {"fuel",
         "what a fuel is and needs",
         "volumes of dry air = mol O2 needed / 0.2095; ultimate CO2 = CO2 / dry flue gas with no excess air",
         "stoichiometry; heating values of ISO 6976 (from memory), volumes at 60 F and 1 atm",
         {kFuel},
         [](const Values& v) -> std::vector<Result> {
             const Fuel fuel = fuel_of(v);
             return {{"air_volumes_per_volume", "", stoichiometric_air(fuel)},
                     {"ultimate_carbon_dioxide", "pct", ultimate_co2(fuel)},
                     {"heating_value", "Btu_per_ft3", hhv_j_m3(fuel)},
                     {"specific_gravity", "", specific_gravity(fuel)},
                     {"latent_share", "pct", latent_share(fuel)}};
         }},
        {"flue-gas",
         "composition of the flue gas of complete combustion",
         "one mol of fuel in stoichiometric air x (1 + excess air)",
         "stoichiometry with air of 20.95 % oxygen",
         {kFuel, kExcessAir, kHumidity},
         flue_gas},
        {"excess-air-from-o2",
         "excess air from oxygen in the dry sample",
         "e = O2 D / (A (0.2095 - O2)), D dry flue gas and A air at no excess",
         "stoichiometry",
         {kFuel, kOxygen},
         from_o2},
        {"excess-air-from-co2",
         "excess air from carbon dioxide in the dry sample (the lean answer of two)",
         "e = D / A (ultimate CO2 / CO2 - 1)",
         "stoichiometry",
         {kFuel, {"carbon_dioxide", "pct", 0.1, 20.0, "in the dry flue gas"}},
         from_co2},
        {"flue-loss",
         "what goes up the vent, and the steady efficiency that is left",
         "sensible: integral of heat capacity from air to flue temperature; latent: all water made, as "
         "vapour; "
         "shares of the higher heating value",
         "heat capacities of Kobe 1949; within 0.5 point of the US DOE tip sheet 'Improve Your Boiler's "
         "Combustion Efficiency' with combustion air of 0.0095 kg/kg; no jacket loss",
         {kFuel, kOxygen, flue, air, kHumidity},
         loss},
        {"siegert-loss",
         "flue loss of natural gas by Siegert's formula, of the lower heating value",
         "(Tflue - Tair) x (0.66 / (21 - O2) + 0.009) %, C and %",
         "1. BImSchV, annex (from memory)",
         {kOxygen, flue, air},
         [](const Values& v) -> std::vector<Result> {
             require_warmer_flue(v);
             return {{"loss_of_lower_heating_value", "pct", siegert_loss(v["oxygen"], v["flue"], v["air"])}};
         }},
        {"dew-point",
         "temperature at which the flue gas begins to condense",
         "Antoine equation of water at the vapour's partial pressure; no acid",
         "Antoine constants from memory; agrees with tests/reference/excess_air.csv within 1 F",
         {kFuel, kExcessAir, kHumidity, {"altitude", "ft", -1000.0, 12000.0, "above sea level", 0.0}},
         [](const Values& v) -> std::vector<Result> {
             const FlueGas gas = burn_with_excess(fuel_of(v), v["excess_air"], v["humidity_ratio"]);
             return {{"dew_point", "F", dew_point_k(gas, units::pressure_at_altitude_pa(v["altitude"]))}};
         }},
        {"co-air-free",
         "carbon monoxide corrected to no excess air",
         "CO x 20.9 / (20.9 - O2 %)",
         "trade formula (common practice)",
         {{"carbon_monoxide", "ppm", 0.0, 100000.0, "measured in the dry flue gas"}, kOxygen},
         [](const Values& v) -> std::vector<Result> {
             return {{"carbon_monoxide_air_free", "ppm", co_air_free(v["carbon_monoxide"], v["oxygen"])}};
         }},
    };
}

} // namespace lightoff::cli
