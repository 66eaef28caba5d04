// SPDX-License-Identifier: MIT
#include "air/formulas.hpp"
#include "cli/sums.hpp"
#include "units/atmosphere.hpp"
#include "units/convert.hpp"

namespace lightoff::cli {
namespace {

using namespace units;

const Given kHeat{"heat", "Btuh", 0.0, 1e7, "that the air takes up"};
const Given kAltitude{"altitude", "ft", -1000.0, 12000.0, "above sea level", 0.0};
const Given kAirflow{"airflow", "cfm", 1.0, 1e5, "of the blower"};

/// lb/ft3 of the trade's standard air, carried up to that altitude.
double density_lb_ft3(const Values& v) {
    return air::kStandardAir_lb_ft3 * air_density_ratio(v["altitude"]);
}

std::vector<Result> fan_laws(const Values& v) {
    const double ratio = v["speed_after"] / v["speed_before"];
    std::vector<Result> results{{"flow_ratio", "", air::flow_at_speed(1.0, ratio)},
                                {"pressure_ratio", "", air::pressure_at_speed(1.0, ratio)},
                                {"power_ratio", "", air::power_at_speed(1.0, ratio)}};
    if (v.has("flow"))
        results.push_back({"flow", "cfm", air::flow_at_speed(v["flow"], ratio)});
    if (v.has("pressure"))
        results.push_back({"pressure", "inwc", air::pressure_at_speed(v["pressure"], ratio)});
    if (v.has("power"))
        results.push_back({"power", "W", air::power_at_speed(v["power"], ratio)});
    return results;
}

std::vector<Result> air_density(const Values& v) {
    const double pressure = pressure_at_altitude_pa(v["altitude"]);
    return {{"pressure", "psi", pressure},
            {"density", "kg_per_m3", dry_air_density_kg_m3(pressure, v["temperature"])},
            {"density_ratio", "", air_density_ratio(v["altitude"])}};
}

} // namespace

std::vector<Sum> air_sums() {
    const Given speed_before{"speed_before", "rpm", 1.0, 20000.0, "of the wheel"};
    return {
        {"temperature-rise",
         "temperature rise of the air",
         "rise = heat / (60 x 0.24 x density x cfm): Btu/h, lb/ft3; 1.08 cfm in standard air",
         "arithmetic on standard air of 0.075 lb/ft3, thinner with altitude",
         {kHeat, kAirflow, kAltitude},
         [](const Values& v) -> std::vector<Result> {
             const double rise_f =
                 air::temperature_rise_f(w_to_btuh(v["heat"]), m3s_to_cfm(v["airflow"]), density_lb_ft3(v));
             return {{"rise", "F_difference", fahrenheit_difference_to_k(rise_f)}};
         }},
        {"airflow-from-rise",
         "airflow from the heat given and the temperature rise",
         "cfm = heat / (60 x 0.24 x density x rise)",
         "arithmetic on standard air of 0.075 lb/ft3, thinner with altitude",
         {kHeat, {"rise", "F_difference", 0.1, 300.0, "supply air over return air"}, kAltitude},
         [](const Values& v) -> std::vector<Result> {
             const double rise_f = k_difference_to_fahrenheit(v["rise"]);
             return {{"airflow", "cfm",
                      cfm_to_m3s(air::airflow_cfm(w_to_btuh(v["heat"]), rise_f, density_lb_ft3(v)))}};
         }},
        {"sensible-heat",
         "heat that the air carries",
         "heat = 60 x 0.24 x density x cfm x rise",
         "arithmetic on standard air of 0.075 lb/ft3, thinner with altitude",
         {kAirflow, {"rise", "F_difference", -300.0, 300.0, "supply air over return air"}, kAltitude},
         [](const Values& v) -> std::vector<Result> {
             const double btuh = air::sensible_heat_btuh(
                 m3s_to_cfm(v["airflow"]), k_difference_to_fahrenheit(v["rise"]), density_lb_ft3(v));
             return {{"heat", "Btuh", btuh_to_w(btuh)}};
         }},
        {"fan-laws",
         "a fan at another speed in the same system",
         "flow ~ N, pressure ~ N^2, power ~ N^3",
         "fan laws",
         {speed_before,
          {"speed_after", "rpm", 1.0, 20000.0, "of the wheel"},
          {"flow", "cfm", 0.0, 1e5, "before", {}, true},
          {"pressure", "inwc", 0.0, 30.0, "before", {}, true},
          {"power", "W", 0.0, 1e5, "before", {}, true}},
         fan_laws},
        {"air-power",
         "power that goes into the air, and what the shaft needs for it",
         "hp = cfm x in. w.c. / 6356, divided by the efficiency",
         "fan engineering texts; 6356 goes with an inch of water at 70 F, 0.2 % lighter than the one here (4 "
         "C)",
         {{"airflow", "cfm", 0.0, 1e5, "of the fan"},
          {"pressure", "inwc", 0.0, 30.0, "rise over the fan"},
          {"efficiency", "pct", 1.0, 100.0, "of the fan", 100.0}},
         [](const Values& v) -> std::vector<Result> {
             const double power_w = air::air_power_w(v["airflow"], v["pressure"]);
             return {{"air_power", "hp", power_w}, {"shaft_power", "hp", power_w / v["efficiency"]}};
         }},
        {"air-density",
         "air pressure and density at an altitude",
         "p = p0 (1 - 2.25577e-5 z)^5.2559, z in m; density = p M / (R T)",
         "U.S. Standard Atmosphere 1976; ratio for indoor air, which does not cool with altitude",
         {{"altitude", "ft", -1000.0, 36000.0, "above sea level"},
          {"temperature", "F", -60.0, 200.0, "of the air", 70.0}},
         air_density},
    };
}

} // namespace lightoff::cli
