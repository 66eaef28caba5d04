// SPDX-License-Identifier: MIT
#include "air/ducts.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::air {
namespace {

constexpr double kTightestOpenFraction = 0.01;

double open(double area_m2, double blockage) {
    return area_m2 * std::clamp(1.0 - blockage, kTightestOpenFraction, 1.0);
}

/// 1 / effective area^2: adds along a way.
double tightness(double area_m2) {
    return 1.0 / (area_m2 * area_m2);
}

/// Two ways beside each other: their areas add.
double beside(double tightness_1, double area_2_m2) {
    const double area = 1.0 / std::sqrt(tightness_1) + area_2_m2;
    return 1.0 / (area * area);
}

} // namespace

DuctFlow solve_ducts(const DuctParams& params, const DuctCondition& condition, const DuctDrive& drive,
                     const units::FanNow& fan) {
    const double return_duct = tightness(params.return_duct_area_m2 + condition.return_leak_m2);
    const double filter =
        drive.filter_present ? condition.filter_loading * tightness(params.filter_area_m2) : 0.0;
    const double to_return_tap = return_duct + filter;
    const double return_way = to_return_tap + tightness(params.cabinet_area_m2);
    const double intake = drive.door_on ? return_way : beside(return_way, params.blower_door_area_m2);

    const double exchanger = tightness(open(params.exchanger_area_m2, condition.exchanger_blockage));
    const double coil = tightness(open(params.coil_area_m2, condition.coil_blockage));
    const double house = tightness(params.supply_duct_area_m2) +
                         tightness(open(params.registers_area_m2, condition.registers_closed));
    const double outlet =
        coil + (condition.supply_leak_m2 > 0.0 ? beside(house, condition.supply_leak_m2) : house);

    const double per_return = 0.5 / drive.return_density_kg_m3;
    const double per_supply = 0.5 / drive.supply_density_kg_m3;
    const double drops = per_return * intake + per_supply * (exchanger + outlet);

    DuctFlow flow;
    flow.blower_kg_s =
        units::falling_root(fan.shutoff_pa, fan.slope_pa_s_kg, fan.curvature_pa_s2_kg2 + drops);
    const double square = flow.blower_kg_s * flow.blower_kg_s;
    const double return_part = drive.door_on ? 1.0 : std::sqrt(intake / return_way);
    const double house_part = condition.supply_leak_m2 > 0.0 ? std::sqrt((outlet - coil) / house) : 1.0;
    flow.return_kg_s = flow.blower_kg_s * return_part;
    flow.registers_kg_s = flow.blower_kg_s * house_part;
    flow.return_static_pa = -per_return * to_return_tap * flow.return_kg_s * flow.return_kg_s;
    flow.supply_static_pa = per_supply * outlet * square;
    flow.exchanger_static_pa = flow.supply_static_pa + 0.5 * per_supply * exchanger * square;
    flow.blower_rise_pa = drops * square;
    return flow;
}

} // namespace lightoff::air
