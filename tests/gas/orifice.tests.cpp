// SPDX-License-Identifier: MIT
#include "gas/orifice.hpp"
#include "gas/firing_rate.hpp"
#include "support/csv.hpp"
#include "units/atmosphere.hpp"
#include <catch2/catch.hpp>

using namespace lightoff;
using namespace lightoff::gas;

namespace {

double flow_cfh(double diameter_in, double pressure_inwc, double specific_gravity) {
    return units::m3s_to_cfh(
        orifice_flow_m3_s(units::inch_to_m(diameter_in), units::inwc_to_pa(pressure_inwc), specific_gravity));
}

} // namespace

// Source: BCcampus Open Textbook, Plumbing Apprenticeship 3rd ed., Block E, Appendix 2
// (orifice_capacity.csv). Tolerance 0.2 %, or half of the last printed digit where that is more.
TEST_CASE("orifice equation gives every cell of the published capacity table") {
    int cells = 0;
    for (const auto& row : test::reference_table("orifice_capacity.csv")) {
        const double diameter = std::stod(row.at("diameter_in"));
        for (const auto& [column, cell] : row) {
            const auto sg = column.find("_sg");
            if (sg == std::string::npos || cell == "NA")
                continue;
            const double specific_gravity = std::stod(column.substr(sg + 3, 3)) / 100.0;
            const double pressure = std::stod(column.substr(column.find("_at_") + 4));
            const double published = std::stod(cell);
            INFO("drill " << row.at("drill") << ", " << column);
            CHECK(flow_cfh(diameter, pressure, specific_gravity) ==
                  Approx(published).margin(std::max(0.002 * published, 0.0005)).epsilon(0.0));
            ++cells;
        }
    }
    CHECK(cells == 16 * 9 - 4);
}

// Settled target of the reference furnace (drill #45 = 0.082 in. is a standard drill size).
TEST_CASE("four #45 orifices at 3.5 in. w.c.") {
    const double flow = 4.0 * flow_cfh(0.082, 3.5, 0.60);
    CHECK(flow == Approx(76.1).epsilon(0.002));
    CHECK(input_rate(flow, 1050.0) == Approx(79960.0).epsilon(0.001));
    CHECK(dial_seconds(2.0, flow) == Approx(94.5).epsilon(0.002));
}

TEST_CASE("orifice size is the inverse of orifice flow") {
    const double flow = orifice_flow_m3_s(0.002, 900.0, 0.6);
    CHECK(orifice_diameter_m(flow, 900.0, 0.6) == Approx(0.002).epsilon(1e-12));
}

// Source: NFPA 54-1996 Table XIII, as quoted in rules_and_constants.csv: 0.5 ft3 in 29 s gives 62 cfh.
TEST_CASE("clocking the meter") {
    CHECK(clocked_flow_per_hour(0.5, 29.0) == Approx(62.0).margin(0.5));
    CHECK(dial_seconds(0.5, clocked_flow_per_hour(0.5, 29.0)) == Approx(29.0));
}

// Source: NFPA 54 (4 % per 1000 ft counted from sea level; threshold from memory).
TEST_CASE("altitude derating") {
    CHECK(altitude_derating(0.0) == 1.0);
    CHECK(altitude_derating(2000.0) == 1.0);
    const double percent_per_1000_ft = test::reference_value("rules_and_constants.csv", "altitude derating");
    CHECK(altitude_derating(5000.0) == Approx(1.0 - 5.0 * percent_per_1000_ft / 100.0));
}

// Source: ASHRAE standard-atmosphere table and US Bureau of Reclamation HVAC design guide
// (air_by_altitude.csv); tolerance 0.02 psia and 0.003.
TEST_CASE("air by altitude") {
    for (const auto& row : test::reference_table("air_by_altitude.csv")) {
        const double altitude = units::foot_to_m(std::stod(row.at("altitude_ft")));
        INFO(row.at("altitude_ft") << " ft");
        if (!row.at("pressure_psia_published").empty())
            CHECK(units::pa_to_psi(units::pressure_at_altitude_pa(altitude)) ==
                  Approx(std::stod(row.at("pressure_psia_published"))).margin(0.02).epsilon(0.0));
        CHECK(units::air_density_ratio(altitude) ==
              Approx(std::stod(row.at("density_ratio_at_70F"))).margin(0.003).epsilon(0.0));
    }
}
