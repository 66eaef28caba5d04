// SPDX-License-Identifier: MIT
//
// The combustion analyser: what it works out, against the published tables in tests/reference; what it draws,
// against the furnace.
#include "desk.hpp"
#include "support/csv.hpp"
#include "units/convert.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff;
using namespace lightoff::test;

namespace {

const std::string kReference = std::string(LIGHTOFF_SOURCE_DIR) + "/tests/reference/";
constexpr double kRoom_k = 294.26;

double number(const CsvRow& row, const std::string& column) {
    return std::stod(row.at(column));
}

double shown(const Display& display) {
    return value_of(display).value;
}

} // namespace

TEST_CASE("efficiency by net temperature and oxygen: within half a point of the published table") {
    int cells = 0;
    for (const CsvRow& row : read_csv(kReference + "combustion_efficiency.csv")) {
        const double o2 = number(row, "o2_dry_pct") / 100.0;
        for (const int net_f : {200, 300, 400, 500, 600}) {
            const double stack_k = kRoom_k + units::fahrenheit_difference_to_k(net_f);
            const WorkedOut w = work_out(AnalyserFuel::natural_gas, o2, 0.0, stack_k, kRoom_k);
            INFO(o2 << " at " << net_f << " F");
            CHECK(100.0 * w.efficiency ==
                  Approx(number(row, "efficiency_pct_at_net_" + std::to_string(net_f) + "F")).margin(0.5));
            CHECK(w.net_k == Approx(units::fahrenheit_difference_to_k(net_f)));
            ++cells;
        }
        const WorkedOut w = work_out(AnalyserFuel::natural_gas, o2, 0.0, 400.0, kRoom_k);
        CHECK(100.0 * w.excess_air == Approx(number(row, "excess_air_pct")).margin(1.0));
    }
    CHECK(cells == 15);
}

TEST_CASE("excess air and carbon dioxide by oxygen: the reference table's propane") {
    int rows = 0;
    for (const CsvRow& row : read_csv(kReference + "excess_air.csv")) {
        if (row.at("fuel") != "propane")
            continue;
        const WorkedOut w =
            work_out(AnalyserFuel::propane, number(row, "o2_dry_pct") / 100.0, 0.0, 400.0, kRoom_k);
        CHECK(100.0 * w.carbon_dioxide == Approx(number(row, "co2_dry_pct")).margin(0.1));
        // The table's oxygen is rounded to 0.01 point: at 14 % that is 0.3 points of excess air.
        CHECK(100.0 * w.excess_air == Approx(number(row, "excess_air_pct")).margin(0.3));
        ++rows;
    }
    CHECK(rows == 12);
}

TEST_CASE("CO air-free: 50 ppm at 7 % oxygen is 75 ppm") { // rules_and_constants.csv, common practice
    const WorkedOut w = work_out(AnalyserFuel::natural_gas, 0.07, 50e-6, 450.0, kRoom_k);
    CHECK(1e6 * w.co_air_free == Approx(75.0).margin(0.5));
}

TEST_CASE("too near to plain air nothing is worked out") {
    CHECK_FALSE(work_out(AnalyserFuel::natural_gas, 0.2095, 0.0, 300.0, kRoom_k).burning);
    CHECK(work_out(AnalyserFuel::natural_gas, 0.12, 0.0, 300.0, kRoom_k).burning);
}

TEST_CASE("the wrong fuel in the menu gives a wrong carbon dioxide, not a wrong oxygen") {
    const WorkedOut gas = work_out(AnalyserFuel::natural_gas, 0.075, 0.0, 450.0, kRoom_k);
    const WorkedOut propane = work_out(AnalyserFuel::propane, 0.075, 0.0, 450.0, kRoom_k);
    CHECK(propane.carbon_dioxide > gas.carbon_dioxide + 0.01);
}

TEST_CASE("on the running furnace the windows come to the furnace's own flue gas within their accuracy") {
    Desk desk(900.0);
    Analyser& meter = desk.bag.analyser;
    meter.setting = {Spot::vent_connector, AnalyserFuel::natural_gas, 1, 0};
    desk.seconds(100.0);
    const furnace::Signals& s = desk.rig.world.state.signals;
    CHECK(fits(value_of(meter.oxygen), s.combustion.o2_dry));
    CHECK(fits(value_of(meter.carbon_dioxide), s.combustion.co2_dry));
    CHECK(fits(value_of(meter.carbon_monoxide), s.combustion.co_dry));
    CHECK(fits(value_of(meter.co_air_free), s.combustion.co_air_free));
    CHECK(fits(value_of(meter.excess_air), s.combustion.excess_air));
    CHECK(fits(value_of(meter.stack), s.heat.vent_connector_gas_k));
    CHECK(fits(value_of(meter.net), s.heat.vent_connector_gas_k - desk.rig.world.inputs.basement_k));
    CHECK(fits(value_of(meter.efficiency), desk.rig.read("steady efficiency") / 100.0));
    for (const Display* window : {&meter.oxygen, &meter.carbon_monoxide, &meter.net, &meter.efficiency})
        CHECK(is_settled(*window));
    // Physics, settled targets: O2 7.5 +- 0.5 %, net 315 +- 15 F, efficiency 80.3 +- 0.7 %, with the meter's
    // own accuracy on top.
    CHECK(100.0 * shown(meter.oxygen) == Approx(7.5).margin(0.5 + 0.3));
    CHECK(units::k_difference_to_fahrenheit(shown(meter.net)) == Approx(315.0).margin(15.0 + 6.0));
    CHECK(100.0 * shown(meter.efficiency) == Approx(80.3).margin(0.7 + 1.0));
}

TEST_CASE("over many attempts and flames what is worked out keeps within its stated accuracy") {
    // The true values are the formulas at the true measurements; the windows have the sensors' errors in
    // them.
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const double o2 = 0.02 + 0.13 * units::random_unit(seed, 1, 0);
        const double co = 400e-6 * units::random_unit(seed, 2, 0);
        const double stack_k = kRoom_k + 80.0 + 180.0 * units::random_unit(seed, 3, 0);
        const auto read = [&](Quantity quantity, double value) {
            return with_error(quantity, value, calibration(seed, quantity));
        };
        const WorkedOut truth = work_out(AnalyserFuel::natural_gas, o2, co, stack_k, kRoom_k);
        const WorkedOut made = work_out(AnalyserFuel::natural_gas, read(Quantity::oxygen, o2),
                                        std::max(0.0, read(Quantity::carbon_monoxide, co)),
                                        read(Quantity::stack_temperature, stack_k),
                                        read(Quantity::inlet_air_temperature, kRoom_k));
        const auto check = [&](Quantity quantity, double is, double shows) {
            Display window;
            show(window, quantity, shows);
            INFO(quantity_row(quantity).id << " seed " << seed << " shows " << text(window) << " of " << is);
            CHECK(fits(value_of(window), is));
        };
        check(Quantity::carbon_dioxide, truth.carbon_dioxide, made.carbon_dioxide);
        check(Quantity::co_air_free, truth.co_air_free, made.co_air_free);
        check(Quantity::excess_air, truth.excess_air, made.excess_air);
        check(Quantity::efficiency, truth.efficiency, made.efficiency);
        check(Quantity::net_temperature, truth.net_k, made.net_k);
    }
}

TEST_CASE("a sample takes seconds to arrive, then the cells take theirs") {
    Desk desk(900.0);
    Analyser& meter = desk.bag.analyser;
    meter.setting = {Spot::vent_connector, AnalyserFuel::natural_gas, 1, 0};
    desk.seconds(2.0);
    CHECK(100.0 * shown(meter.oxygen) > 20.0); // still the air in the hose
    CHECK(text(meter.efficiency).empty());     // dashes
    double seconds = 2.0;
    const double flue = desk.rig.world.state.signals.combustion.o2_dry;
    while (shown(meter.oxygen) > flue + 0.1 * (0.2095 - flue) && seconds < 120.0) {
        desk.seconds(0.5);
        seconds += 0.5;
    }
    CHECK(seconds > 10.0); // 90 % within half a minute (common practice, no source)
    CHECK(seconds < 30.0);
    meter.setting.probe = Spot::room;
    desk.seconds(60.0);
    CHECK(100.0 * shown(meter.oxygen) == Approx(20.95).margin(0.35));
}
