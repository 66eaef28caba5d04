// SPDX-License-Identifier: MIT
#include "air/formulas.hpp"
#include "support/csv.hpp"
#include "units/convert.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;

namespace {

/// The published line of tests/reference/rules_and_constants.csv.
std::string published(const std::string& quantity, const std::string& column = "value") {
    for (const auto& row : test::reference_table("rules_and_constants.csv"))
        if (row.at("quantity") == quantity)
            return row.at(column);
    throw std::runtime_error("no row " + quantity);
}

} // namespace

TEST_CASE("fan laws: 10 % more flow takes 33 % more power") {
    // Fan laws (published).
    REQUIRE(published("fan laws") == "flow ~ N, pressure ~ N^2, power ~ N^3");
    REQUIRE(published("fan laws", "conditions") == "+10 % flow gives +33 % power");
    const double speed = 1.10;
    CHECK(air::flow_at_speed(1000.0, speed) == Approx(1100.0));
    CHECK(air::pressure_at_speed(1.0, speed) == Approx(1.21));
    CHECK(air::power_at_speed(1.0, speed) == Approx(1.33).margin(0.005));
    // A fan moves the same volume of thinner air, with less pressure and power in proportion (fan laws).
    CHECK(air::pressure_at_speed(1.0, 1.0, 0.8321) == Approx(0.8321));
    CHECK(air::power_at_speed(1.0, 1.0, 0.8321) == Approx(0.8321));
}

TEST_CASE("air power is cfm x in. w.c. / 6356 hp") {
    // Fan engineering texts (published).
    REQUIRE(published("air power") == "cfm x in. w.c. / 6356");
    // 33,000 ft lbf/min is a horsepower, and 6356 is that over 62.3/12 lb/ft2: the fan trade's inch of water,
    // at 70 F. The inch of convert.hpp is at 4 C, 0.2 % heavier.
    const double fan_inch_pa = units::psi_to_pa(62.3 / 12.0 / 144.0);
    CHECK(fan_inch_pa == Approx(units::pascals_per_inwc).epsilon(0.0025));
    for (const double cfm : {400.0, 1150.0, 2000.0})
        for (const double inwc : {0.1, 0.5, 1.2}) {
            const double watts = air::air_power_w(units::cfm_to_m3s(cfm), inwc * fan_inch_pa);
            CHECK(watts / units::watts_per_horsepower == Approx(cfm * inwc / 6356.0).epsilon(0.0002));
        }
}

TEST_CASE("the sensible heat factor of standard air is 1.08") {
    // Arithmetic on standard air (derived).
    CHECK(air::sensible_heat_factor() == Approx(std::stod(published("sensible heat factor"))).epsilon(0.001));
    // The same from SI: cp 1006 J/(kg K) against 0.24 Btu/(lb F).
    const double btuh =
        units::w_to_btuh(units::cfm_to_m3s(1.0) * air::kStandardAir_kg_m3 * units::cp_air_j_kg_k / 1.8);
    CHECK(air::sensible_heat_factor() == Approx(btuh).epsilon(0.002));
}

TEST_CASE("rise and airflow are each other's inverse, and mountain air warms more") {
    const double btuh = 65200.0;
    CHECK(air::temperature_rise_f(btuh, 1150.0) == Approx(btuh / (1.08 * 1150.0)).epsilon(1e-9));
    CHECK(air::airflow_cfm(btuh, air::temperature_rise_f(btuh, 1150.0)) == Approx(1150.0));
    CHECK(air::sensible_heat_btuh(1150.0, 52.5) == Approx(1.08 * 1150.0 * 52.5).epsilon(1e-9));
    for (const auto& row : test::reference_table("air_by_altitude.csv")) {
        const double ratio = std::stod(row.at("density_ratio_at_70F"));
        const double rise = air::temperature_rise_f(btuh, 1150.0, air::kStandardAir_lb_ft3 * ratio);
        CHECK(rise == Approx(btuh / (1.08 * ratio * 1150.0)).epsilon(1e-9));
    }
}
