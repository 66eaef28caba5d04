// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"

#include "combustion/carbon_monoxide.hpp"
#include "combustion/flue_gas.hpp"
#include "gas/orifice.hpp"
#include "support/csv.hpp"
#include "units/atmosphere.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::figures {
namespace {

using combustion::Fuel;

/// Moisture of the combustion air behind the efficiency table, kg/kg; not stated there, inferred from the
/// water column of flue_gas_wet.csv (as in tests/combustion/flue_gas.tests.cpp).
constexpr double kTableHumidity = 0.0095;

double cell(const test::CsvRow& row, const std::string& column) {
    return std::stod(row.at(column));
}

Drawing orifices() {
    struct Line {
        const char* column;
        const char* words;
        double gravity;
        double inwc;
        Stroke stroke;
    };
    const std::vector<Line> lines{
        {"natural_sg060_at_7.0_inwc_ft3ph", "natural gas, 7.0 in.", 0.60, 7.0, {kGas}},
        {"natural_sg060_at_3.5_inwc_ft3ph", "natural gas, 3.5 in.", 0.60, 3.5, {kInk}},
        {"propane_sg150_at_11.0_inwc_ft3ph", "propane, 11.0 in.", 1.50, 11.0, {kHeat, 2.0, "8 4"}},
        {"natural_sg060_at_1.0_inwc_ft3ph", "natural gas, 1.0 in.", 0.60, 1.0, {kAir}}};
    const auto flow = [](double inch, double inwc, double gravity) {
        return units::m3s_to_cfh(
            gas::orifice_flow_m3_s(units::inch_to_m(inch), units::inwc_to_pa(inwc), gravity));
    };
    const auto table = test::reference_table("orifice_capacity.csv");
    double worst = 0.0;
    for (const Line& line : lines)
        for (const auto& row : table)
            if (row.at(line.column) != "NA")
                worst = std::max(worst, std::fabs(flow(cell(row, "diameter_in"), line.inwc, line.gravity) /
                                                      cell(row, line.column) -
                                                  1.0));
    Figure figure("Gas through a drilled orifice", 400.0,
                  "Lines: Q = 1658.5 K A \xE2\x88\x9A(h/SG), K = 0.90, h in in. w.c. Circles: Imperial "
                  "Orifice Capacity Table, "
                  "BCcampus Plumbing Apprenticeship, Block E, Appendix 2. Largest difference here: " +
                      number(100.0 * worst, 2) + " %.");
    Chart chart(figure.svg, figure.box(76, 150, 4, 54),
                {"drill diameter, in.", 0.012, 0.040, every(0.015, 0.040, 0.005), 3},
                {"gas, ft\xC2\xB3/h", 0.0, 7.0, every(0.0, 7.0, 1.0)});
    for (const Line& line : lines) {
        std::vector<Point> ours;
        for (const double d : every(0.012, 0.040, 0.0005))
            ours.push_back({d, flow(d, line.inwc, line.gravity)});
        chart.curve(ours, line.stroke);
        std::vector<Point> published;
        for (const auto& row : table)
            if (row.at(line.column) != "NA")
                published.push_back({cell(row, "diameter_in"), cell(row, line.column)});
        chart.circles(published, line.stroke.colour);
    }
    for (const Line& line : lines)
        chart.label({0.040, flow(0.040, line.inwc, line.gravity)}, 8, 5, line.words,
                    {.colour = line.stroke.colour});
    return {"orifice-capacity.svg", figure.finish()};
}

Drawing efficiency() {
    struct Line {
        double o2;
        Stroke stroke;
    };
    const std::vector<Line> lines{{2.0, {kAir}}, {5.0, {kInk}}, {7.0, {kHeat}}};
    const auto table = test::reference_table("combustion_efficiency.csv");
    const Fuel gas = combustion::natural_gas();
    const double room_k = units::fahrenheit_to_k(70.0);
    const auto ours = [&](double o2_pct, double net_f) {
        return 100.0 * combustion::flue_loss(gas, combustion::excess_air_from_o2(gas, 0.01 * o2_pct),
                                             room_k + units::fahrenheit_difference_to_k(net_f), room_k,
                                             kTableHumidity)
                           .efficiency();
    };
    Figure figure(
        "Steady efficiency by flue temperature and oxygen", 380.0,
        "Lines: our natural gas, flue loss by heat capacities of the flue gases. Circles: US Department "
        "of Energy, \xE2\x80\x9CImprove Your Boiler\xE2\x80\x99s Combustion Efficiency\xE2\x80\x9D. Held "
        "to 0.5 point by tests/combustion/flue_gas.tests.cpp.");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54),
                {"flue gas over combustion air, \xC2\xB0"
                 "F",
                 150.0, 650.0, every(200.0, 600.0, 100.0)},
                {"% of higher heating value", 70.0, 88.0, every(70.0, 88.0, 2.0)});
    for (const Line& line : lines) {
        std::vector<Point> curve;
        for (const double t : every(150.0, 650.0, 10.0))
            curve.push_back({t, ours(line.o2, t)});
        chart.curve(curve, line.stroke);
        std::vector<Point> published;
        for (const auto& row : table)
            if (cell(row, "o2_dry_pct") == line.o2)
                for (const char* net : {"200", "300", "400", "500", "600"})
                    published.push_back(
                        {std::stod(net), cell(row, "efficiency_pct_at_net_" + std::string(net) + "F")});
        chart.circles(published, line.stroke.colour);
    }
    chart.label({560.0, ours(2.0, 560.0)}, 8, -10, "2 % O\xE2\x82\x82", {.colour = kAir, .halo = true});
    chart.label({650.0, ours(5.0, 650.0)}, -4, -14, "5 %", {.anchor = Anchor::end, .halo = true});
    chart.label({560.0, ours(7.0, 560.0)}, -8, 22, "7 %",
                {.anchor = Anchor::end, .colour = kHeat, .halo = true});
    return {"efficiency.svg", figure.finish()};
}

struct FuelLine {
    const char* name;
    Fuel fuel;
    std::string_view dash;
};

std::vector<FuelLine> two_fuels() {
    return {{"methane", combustion::methane(), ""}, {"propane", combustion::propane(), "8 4"}};
}

std::vector<Point> published(const std::string& fuel, const std::string& column) {
    std::vector<Point> out;
    for (const auto& row : test::reference_table("excess_air.csv"))
        if (row.at("fuel") == fuel)
            out.push_back({cell(row, "excess_air_pct"), cell(row, column)});
    return out;
}

Drawing excess_air() {
    Figure figure(
        "Oxygen and carbon dioxide in dry flue gas", 370.0,
        "Lines: our stoichiometry; solid methane, dashed propane. Circles: table derived from "
        "stoichiometry with 20.95 % oxygen in dry air, its methane oxygen column in agreement with the US "
        "Department of Energy. Held to 0.1 point.");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54), {"excess air, %", 0.0, 200.0, every(0.0, 200.0, 25.0)},
                {"% of dry gas", 0.0, 16.0, every(0.0, 16.0, 2.0)});
    for (const FuelLine& line : two_fuels()) {
        std::vector<Point> o2;
        std::vector<Point> co2;
        for (const double e : every(0.0, 200.0, 2.0)) {
            const combustion::FlueGas gas = combustion::burn_with_excess(line.fuel, 0.01 * e);
            o2.push_back({e, 100.0 * gas.o2 / combustion::dry(gas)});
            co2.push_back({e, 100.0 * gas.co2 / combustion::dry(gas)});
        }
        chart.curve(o2, {kAir, 2.0, line.dash});
        chart.curve(co2, {kHeat, 2.0, line.dash});
        chart.circles(published(line.name, "o2_dry_pct"), kAir);
        chart.circles(published(line.name, "co2_dry_pct"), kHeat);
    }
    chart.label({125.0, 12.2}, 0, -14, "oxygen",
                {.anchor = Anchor::end, .size = 15, .colour = kAir, .halo = true});
    chart.label({140.0, 5.3}, 0, -14, "carbon dioxide, propane", {.colour = kHeat, .halo = true});
    chart.label({125.0, 4.9}, 0, 26, "carbon dioxide, methane",
                {.anchor = Anchor::end, .colour = kHeat, .halo = true});
    return {"excess-air.svg", figure.finish()};
}

Drawing dew_point() {
    Figure figure(
        "Dew point of the flue gas", 340.0,
        "Lines: our water vapour by stoichiometry and the Antoine equation; dry combustion air, sea level. "
        "Circles: derived table in tests/reference/excess_air.csv. Held to 1 \xC2\xB0"
        "F.");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54), {"excess air, %", 0.0, 200.0, every(0.0, 200.0, 25.0)},
                {"dew point, \xC2\xB0"
                 "F",
                 90.0, 140.0, every(90.0, 140.0, 10.0)});
    for (const FuelLine& line : two_fuels()) {
        std::vector<Point> ours;
        for (const double e : every(0.0, 200.0, 2.0))
            ours.push_back({e, units::k_to_fahrenheit(combustion::dew_point_k(
                                   combustion::burn_with_excess(line.fuel, 0.01 * e)))});
        chart.curve(ours, {kInk, 2.0, line.dash});
        chart.circles(published(line.name, "dew_point_F"), kInk);
    }
    chart.label({100.0, 114.9}, 8, -12, "methane", {.size = 15, .halo = true});
    chart.label({80.0, 111.0}, -8, 24, "propane", {.anchor = Anchor::end, .size = 15, .halo = true});
    return {"dew-point.svg", figure.finish()};
}

Drawing carbon_monoxide() {
    const Fuel gas = combustion::natural_gas();
    const combustion::CoCurve curve;
    Figure figure(
        "Carbon monoxide: a teaching curve, not a prediction", 370.0,
        "Shape by common practice, numbers chosen by us. Limit: 400 ppm air-free, ANSI Z21.47-1993, "
        "section 2.8.1 (published). Good practice: 100 ppm, ICM magazine, Sep/Oct 2015 (published "
        "advice).");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54),
                {"oxygen in dry flue gas, %", 0.0, 16.0, every(0.0, 16.0, 2.0)},
                {"CO air-free, ppm", 0.0, 600.0, every(0.0, 600.0, 100.0)});
    struct Line {
        combustion::CoCauses causes;
        Stroke stroke;
    };
    const std::vector<Line> lines{{{}, {kInk, 2.4}},
                                  {{.impingement = 0.5}, {kHeat, 2.0, "8 4"}},
                                  {{.primary_deficit = 0.8}, {kGas, 2.0, "3 3"}}};
    chart.level(400.0, {kAlarm, 1.4, "12 4"});
    chart.level(100.0, {kPencil, 1.2, "12 4"});
    for (const Line& line : lines) {
        std::vector<Point> points;
        for (const double o2 : every(0.0, 16.0, 0.1)) {
            combustion::CoCauses causes = line.causes;
            causes.air_ratio = 1.0 + combustion::excess_air_from_o2(gas, 0.01 * o2);
            points.push_back({o2, combustion::co_air_free_ppm(curve, causes)});
        }
        chart.curve(points, line.stroke);
    }
    chart.label({9.0, 400.0}, 0, -7, "limit for a furnace, 400",
                {.anchor = Anchor::middle, .colour = kAlarm, .halo = true});
    chart.label({9.0, 100.0}, 0, -7, "good practice, 100",
                {.anchor = Anchor::middle, .colour = kPencil, .halo = true});
    chart.label({9.0, 335.0}, 0, -10, "burner opening fully linted",
                {.anchor = Anchor::middle, .halo = true});
    chart.label({9.0, 165.0}, 0, -10, "flame half on metal", {.anchor = Anchor::middle, .halo = true});
    chart.label({9.0, 15.0}, 0, -10, "sound burner", {.anchor = Anchor::middle, .halo = true});
    return {"co-curve.svg", figure.finish()};
}

Drawing air_density() {
    Figure figure(
        "Density of indoor air by altitude", 330.0,
        "Line: standard-atmosphere pressure at the same room temperature. Circles: ASHRAE Handbook of "
        "Fundamentals pressure table (as reprinted). Dots: US Bureau of Reclamation, HVAC design guide, "
        "Table 6a. Held to 0.003.");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54),
                {"altitude, 1000 ft", 0.0, 10.0, every(0.0, 10.0, 1.0)},
                {"density over sea level", 0.65, 1.0, every(0.65, 1.0, 0.05), 2});
    std::vector<Point> ours;
    for (const double kft : every(0.0, 10.0, 0.25))
        ours.push_back({kft, units::air_density_ratio(units::foot_to_m(1000.0 * kft))});
    chart.curve(ours, {kAir});
    for (const auto& row : test::reference_table("air_by_altitude.csv")) {
        const bool by_ashrae = row.at("source").find("ASHRAE") == 0;
        const Point p{0.001 * cell(row, "altitude_ft"), cell(row, "density_ratio_at_70F")};
        if (by_ashrae)
            chart.circles({p}, kInk);
        else
            chart.dot(p, kHeat, 3.0);
    }
    return {"air-density.svg", figure.finish()};
}

} // namespace

std::vector<Drawing> gas_and_flue_figures() {
    return {orifices(), efficiency(), excess_air(), dew_point(), carbon_monoxide(), air_density()};
}

} // namespace lightoff::figures
