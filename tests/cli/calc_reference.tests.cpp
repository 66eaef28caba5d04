// SPDX-License-Identifier: MIT
#include "cli.hpp"
#include "support/csv.hpp"

#include <cmath>

/// Published rows through the program's own output. Sources stand in the tables (tests/reference) and here.
using namespace lightoff::test;

namespace {

std::string key(const std::string& name, const std::string& value) {
    return name + "=" + value;
}

} // namespace

TEST_CASE("orifice flow: every cell of the published capacity table") {
    // BCcampus Plumbing Apprenticeship 3rd ed., Block E, Appendix 2; 0.2 % (its README), or half of its last
    // digit.
    const struct {
        const char* column;
        const char* pressure;
        const char* gravity;
    } columns[] = {{"natural_sg060_at_1.0_inwc_ft3ph", "1", "0.60"},
                   {"natural_sg060_at_3.5_inwc_ft3ph", "3.5", "0.60"},
                   {"natural_sg060_at_7.0_inwc_ft3ph", "7", "0.60"},
                   {"propane_sg150_at_11.0_inwc_ft3ph", "11", "1.50"}};
    int cells = 0;
    for (const CsvRow& row : reference_table("orifice_capacity.csv"))
        for (const auto& c : columns) {
            if (row.at(c.column) == "NA")
                continue;
            const double published = std::stod(row.at(c.column));
            const double got = calc({"orifice-flow", key("diameter_in", row.at("diameter_in")),
                                     key("pressure_inwc", c.pressure), key("specific_gravity", c.gravity)},
                                    "flow_cfh");
            INFO("drill " << row.at("drill") << ", " << c.column);
            CHECK(std::abs(got - published) <= std::max(0.002 * published, 0.0006));
            ++cells;
        }
    CHECK(cells > 50);
}

TEST_CASE("orifice size is the inverse of orifice flow") {
    CHECK(calc({"orifice-size", "flow_cfh=19.03855436273453", "pressure_inwc=3.5"}, "diameter_in") ==
          Approx(0.082).epsilon(1e-12));
}

TEST_CASE("meter clocking and dial time: NFPA 54-1996 Table XIII, 0.5 ft3 in 29 s is 62 ft3/h") {
    CHECK(std::round(calc({"meter-clocking", "dial_ft3=0.5", "turn_s=29"}, "flow_cfh")) == 62.0);
    CHECK(std::round(calc({"dial-time", "dial_ft3=0.5", "flow_cfh=62"}, "turn_s")) == 29.0);
    // Arithmetic: 94.5 s at 2 ft3 is the reference furnace's 76.2 ft3/h; times 1050 Btu/ft3 about 80,000
    // Btu/h.
    CHECK(calc({"input-rate", "flow_cfh=76.19", "heating_value_Btu_per_ft3=1050"}, "input_Btuh") ==
          Approx(76.19 * 1050).epsilon(1e-12));
}

TEST_CASE("altitude derating: 4 % for each 1000 ft from sea level, above 2000 ft (NFPA 54; threshold from "
          "memory)") {
    const auto allowed = [](const char* feet) {
        return calc({"altitude-derating", key("altitude_ft", feet), "sea_level_input_Btuh=100000"},
                    "input_Btuh");
    };
    CHECK(allowed("2000") == Approx(100000));
    CHECK(allowed("5000") == Approx(80000).epsilon(1e-12));
}

TEST_CASE("sensible heat: 1.08 Btu/h per cfm and F in standard air (0.24 x 60 x 0.075)") {
    CHECK(calc({"sensible-heat", "airflow_cfm=1", "rise_F_difference=1"}, "heat_Btuh") ==
          Approx(1.08).epsilon(1e-9));
    CHECK(calc({"temperature-rise", "heat_Btuh=64800", "airflow_cfm=1200"}, "rise_F_difference") ==
          Approx(50).epsilon(1e-9));
    CHECK(calc({"airflow-from-rise", "heat_Btuh=64800", "rise_F_difference=50"}, "airflow_cfm") ==
          Approx(1200).epsilon(1e-9));
}

TEST_CASE("fan laws: 10 % more flow takes 33 % more power (fan laws, published)") {
    const auto law = [](const char* result) {
        return calc({"fan-laws", "speed_before_rpm=1000", "speed_after_rpm=1100", "flow_cfm=1000",
                     "pressure_inwc=0.5", "power_W=500"},
                    result);
    };
    CHECK(law("flow_ratio") == Approx(1.1));
    CHECK(std::round(100 * law("power_ratio")) == 133);
    CHECK(law("flow_cfm") == Approx(1100));
    CHECK(law("pressure_inwc") == Approx(0.605));
    CHECK(law("power_W") == Approx(665.5));
}

TEST_CASE("air power: cfm x in. w.c. / 6356 hp (fan engineering texts)") {
    // 6356 is 33,000 ft lbf/min over 62.3/12 lb/ft2, an inch of water at 70 F; ours, at 4 C, is 0.2 %
    // heavier.
    const std::string inch = key("pressure_psi", std::to_string(62.3 / 12.0 / 144.0));
    CHECK(calc({"air-power", "airflow_cfm=6356", inch}, "air_power_hp") == Approx(1.0).epsilon(2e-4));
    CHECK(calc({"air-power", "airflow_cfm=6356", inch, "efficiency_pct=50"}, "shaft_power_hp") ==
          Approx(2.0).epsilon(2e-4));
}

TEST_CASE("air pressure and density ratio by altitude: ASHRAE table") {
    for (const CsvRow& row : reference_table("air_by_altitude.csv")) {
        const std::vector<std::string> words{"air-density", key("altitude_ft", row.at("altitude_ft"))};
        INFO(row.at("altitude_ft") << " ft");
        if (!row.at("pressure_psia_published").empty()) // one of the two sources gives ratios only
            CHECK(std::abs(calc(words, "pressure_psi") - std::stod(row.at("pressure_psia_published"))) <=
                  0.02);
        CHECK(std::abs(calc(words, "density_ratio") - std::stod(row.at("density_ratio_at_70F"))) <= 0.003);
    }
}

TEST_CASE("O2, CO2, water and dew point by excess air (tests/reference/excess_air.csv)") {
    for (const CsvRow& row : reference_table("excess_air.csv")) {
        const std::string fuel = key("fuel", row.at("fuel"));
        const std::string excess = key("excess_air_pct", row.at("excess_air_pct"));
        INFO(row.at("fuel") << " " << excess);
        CHECK(std::abs(calc({"flue-gas", fuel, excess}, "oxygen_dry_pct") -
                       std::stod(row.at("o2_dry_pct"))) <= 0.1);
        CHECK(std::abs(calc({"flue-gas", fuel, excess}, "carbon_dioxide_dry_pct") -
                       std::stod(row.at("co2_dry_pct"))) <= 0.1);
        CHECK(std::abs(calc({"flue-gas", fuel, excess}, "water_wet_pct") -
                       std::stod(row.at("h2o_wet_pct"))) <= 0.1);
        CHECK(std::abs(calc({"dew-point", fuel, excess}, "dew_point_F") - std::stod(row.at("dew_point_F"))) <=
              1.0);
    }
}

TEST_CASE("excess air back from O2 and from CO2 (tests/reference/excess_air.csv)") {
    // A reading of two decimals bears an excess air within about 1 % of the air.
    for (const CsvRow& row : reference_table("excess_air.csv")) {
        const double excess = std::stod(row.at("excess_air_pct"));
        const std::string fuel = key("fuel", row.at("fuel"));
        INFO(row.at("fuel") << " " << excess);
        const double allowed = 0.01 * (100.0 + excess);
        CHECK(std::abs(calc({"excess-air-from-o2", fuel, key("oxygen_pct", row.at("o2_dry_pct"))},
                            "excess_air_pct") -
                       excess) <= allowed);
        if (excess > 0) // the table's rounded ultimate CO2 may lie above what the fuel can make
            CHECK(
                std::abs(calc({"excess-air-from-co2", fuel, key("carbon_dioxide_pct", row.at("co2_dry_pct"))},
                              "excess_air_pct") -
                         excess) <= allowed);
    }
}

TEST_CASE("combustion efficiency: US DOE tip sheet, within 0.5 point") {
    // Moisture of its air is not stated; 0.0095 kg/kg is inferred from the water column of flue_gas_wet.csv.
    for (const CsvRow& row : reference_table("combustion_efficiency.csv"))
        for (const int net_f : {200, 300, 400, 500, 600}) {
            const double published =
                std::stod(row.at("efficiency_pct_at_net_" + std::to_string(net_f) + "F"));
            const double got =
                calc({"flue-loss", key("oxygen_pct", row.at("o2_dry_pct")),
                      key("flue_F", std::to_string(70 + net_f)), "air_F=70", "humidity_ratio=0.0095"},
                     "steady_efficiency_pct");
            INFO(row.at("o2_dry_pct") << " % O2, net " << net_f << " F");
            CHECK(std::abs(got - published) <= 0.5);
        }
}

TEST_CASE("wet flue gas of a typical natural gas (V. Ganapathy)") {
    for (const CsvRow& row : reference_table("flue_gas_wet.csv")) {
        const std::vector<std::string> words{"flue-gas", key("excess_air_pct", row.at("excess_air_pct")),
                                             "humidity_ratio=0.0095"}; // inferred, see above
        CHECK(std::abs(calc(words, "carbon_dioxide_wet_pct") - std::stod(row.at("co2_wet_pct"))) <= 0.3);
        CHECK(std::abs(calc(words, "oxygen_wet_pct") - std::stod(row.at("o2_wet_pct"))) <= 0.3);
        CHECK(std::abs(calc(words, "water_wet_pct") - std::stod(row.at("h2o_wet_pct"))) <= 0.3);
    }
}

TEST_CASE("fuels: published and derived properties (tests/reference/fuel_properties.csv)") {
    const auto fuel = [](const char* name, const char* result) {
        return calc({"fuel", key("fuel", name)}, result);
    };
    const auto published = [](const char* quantity) {
        return reference_value("fuel_properties.csv", quantity);
    };
    CHECK(fuel("methane", "air_volumes_per_volume") == Approx(published("methane air to gas")).epsilon(1e-3));
    CHECK(fuel("propane", "air_volumes_per_volume") == Approx(published("propane air to gas")).epsilon(1e-3));
    CHECK(fuel("methane", "ultimate_carbon_dioxide_pct") ==
          Approx(published("ultimate CO2 methane")).margin(0.02));
    CHECK(fuel("propane", "ultimate_carbon_dioxide_pct") ==
          Approx(published("ultimate CO2 propane")).margin(0.02));
    CHECK(fuel("natural-gas", "ultimate_carbon_dioxide_pct") ==
          Approx(published("ultimate CO2 natural gas from F-factors")).margin(0.1));
    CHECK(fuel("propane", "heating_value_Btu_per_ft3") ==
          Approx(published("propane HHV vapour")).epsilon(0.005));
}

TEST_CASE("CO air-free: 50 ppm at 7 % O2 gives 75 ppm (trade formula, common practice)") {
    CHECK(std::round(calc({"co-air-free", "carbon_monoxide_ppm=50", "oxygen_pct=7"},
                          "carbon_monoxide_air_free_ppm")) == 75);
}

TEST_CASE("Siegert's loss, worked by hand from 1. BImSchV annex (from memory)") {
    CHECK(calc({"siegert-loss", "oxygen_pct=5", "flue_C=200", "air_C=20"},
               "loss_of_lower_heating_value_pct") == Approx(180 * (0.66 / 16 + 0.009)).epsilon(1e-9));
}

TEST_CASE("copper: NEC Chapter 9 Table 8, uncoated, 75 C, ohm per 1000 ft") {
    // The table's conductors are stranded from 14 AWG: 2 % longer wires than the solid ones of the sum.
    const struct {
        const char* gauge;
        double ohm;
        double tolerance;
    } rows[] = {
        {"14", 3.07, 0.03}, {"12", 1.93, 0.03}, {"10", 1.21, 0.03}, {"18", 7.77, 0.005}}; // 18: solid, memory
    for (const auto& row : rows)
        CHECK(calc({"conductor-resistance", key("gauge", row.gauge), "length_ft=1000", "temperature_C=75"},
                   "resistance_ohm") == Approx(row.ohm).epsilon(row.tolerance));
    CHECK(calc({"conductor-resistance", "gauge=18", "length_ft=1000", "temperature_C=75", "current_A=2"},
               "drop_V") == Approx(2 * 7.77).epsilon(0.005));
}

TEST_CASE("capacitor: 2652 A/V at 60 Hz (trade arithmetic, 1e6 / (2 pi 60))") {
    CHECK(calc({"capacitor", "current_A=1", "voltage_V=1"}, "capacitance_uF") == Approx(2652).epsilon(5e-4));
    CHECK(calc({"capacitor", "current_A=1.4", "voltage_V=371.3"}, "capacitance_uF") ==
          Approx(10).epsilon(1e-3));
}

TEST_CASE("transformer under load, worked by hand with Ohm's law") {
    // 40 VA at 24 V is 14.4 ohm: 27 V over 15.9 ohm.
    const auto of = [](const char* result) { return calc({"transformer-load", "load_VA=40"}, result); };
    CHECK(of("current_A") == Approx(27.0 / 15.9));
    CHECK(of("secondary_V") == Approx(27.0 * 14.4 / 15.9));
    CHECK(of("loading_pct") == Approx(100));
    CHECK(of("rated_current_A") == Approx(40.0 / 24.0));
    CHECK(of("short_circuit_current_A") == Approx(18));
}
