// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"

#include "air/ducts.hpp"
#include "support/rig.hpp"
#include "units/atmosphere.hpp"
#include "units/convert.hpp"

#include <cmath>

namespace lightoff::figures {
namespace {

/// The house air of the reference furnace with wheel speed and densities as a long run has left them.
struct Air {
    const air::Params& params;
    double speed_rad_s;
    air::DuctDrive drive;

    struct Point {
        double flow_m3_s;
        double rise_pa;
        double power_w;
    };
    [[nodiscard]] units::FanNow fan(double speed_ratio) const {
        return units::fan_at(params.blower.fan, speed_ratio * speed_rad_s, drive.return_density_kg_m3);
    }
    [[nodiscard]] Point at(double speed_ratio, double filter_loading = 1.0) const {
        air::DuctCondition condition;
        condition.filter_loading = filter_loading;
        const units::FanNow now = fan(speed_ratio);
        const air::DuctFlow flow = air::solve_ducts(params.ducts, condition, drive, now);
        return {flow.blower_kg_s / drive.return_density_kg_m3, flow.blower_rise_pa,
                now.torque_nm(flow.blower_kg_s) * speed_ratio * speed_rad_s};
    }
};

Air settled_air() {
    test::Rig rig;
    rig.run(600.0);
    const furnace::State& state = rig.world.state;
    Air air{rig.model.air, state.signals.air.wheel_speed_rad_s, {}};
    air.drive.return_density_kg_m3 =
        units::dry_air_density_kg_m3(rig.world.inputs.barometric_pa, state.heat.temperature.house);
    air.drive.supply_density_kg_m3 =
        units::dry_air_density_kg_m3(rig.world.inputs.barometric_pa, state.signals.heat.supply_air_k);
    return air;
}

void draw_wheel_against_ducts(Figure& figure, const Air& air) {
    Chart chart(figure.svg, figure.box(76, 350, 24, 54),
                {"airflow, cfm", 0.0, 1800.0, every(0.0, 1800.0, 600.0)},
                {"pressure rise, in. w.c.", 0.0, 1.4, every(0.0, 1.4, 0.2), 1});
    const double density = air.drive.return_density_kg_m3;
    for (const double ratio : {1.0, 0.8}) {
        std::vector<Point> wheel;
        for (const double cfm : every(0.0, 1800.0, 25.0))
            wheel.push_back(
                {cfm, units::pa_to_inwc(air.fan(ratio).pressure_pa(units::cfm_to_m3s(cfm) * density))});
        chart.curve(wheel, {kInk, ratio < 1.0 ? 1.6 : 2.4, ratio < 1.0 ? "8 4" : ""});
    }
    for (const double loading : {1.0, 4.0}) {
        const Air::Point op = air.at(1.0, loading);
        std::vector<Point> ducts;
        for (const double cfm : every(0.0, 1800.0, 25.0)) {
            const double part = units::cfm_to_m3s(cfm) / op.flow_m3_s;
            ducts.push_back({cfm, units::pa_to_inwc(op.rise_pa * part * part)});
        }
        chart.curve(ducts, {kAir, 2.0, loading > 1.0 ? "3 3" : ""});
        chart.dot({units::m3s_to_cfm(op.flow_m3_s), units::pa_to_inwc(op.rise_pa)}, kAir);
    }
    const Air::Point slow = air.at(0.8);
    chart.dot({units::m3s_to_cfm(slow.flow_m3_s), units::pa_to_inwc(slow.rise_pa)}, kAir);
    const Air::Point op = air.at(1.0);
    chart.label({units::m3s_to_cfm(op.flow_m3_s), units::pa_to_inwc(op.rise_pa)}, 10, 2,
                number(units::m3s_to_cfm(op.flow_m3_s), 0) + " cfm", {.halo = true});
    chart.label({60.0, 1.25}, 0, -4, "wheel", {.halo = true});
    chart.label({60.0, 0.70}, 0, 26, "at 80 % speed", {.halo = true});
    chart.label({560.0, 0.28}, 0, 40, "ducts, clean", {.colour = kAir, .halo = true});
    chart.label({1130.0, 1.28}, -4, 0, "filter \xC3\x97 4",
                {.anchor = Anchor::end, .colour = kAir, .halo = true});
    figure.svg.text({76.0, 62.0}, "Wheel against ducts", {.size = 15.0, .bold = true});
}

void draw_fan_laws(Figure& figure, const Air& air) {
    Chart chart(figure.svg, figure.box(420, 24, 24, 54), {"speed, %", 40.0, 120.0, every(40.0, 120.0, 20.0)},
                {"% of the value at 100 % speed", 0.0, 180.0, every(0.0, 180.0, 20.0)});
    const Air::Point full = air.at(1.0);
    std::vector<Point> flow;
    std::vector<Point> rise;
    std::vector<Point> power;
    for (const double percent : every(40.0, 120.0, 2.0)) {
        const Air::Point p = air.at(0.01 * percent);
        flow.push_back({percent, 100.0 * p.flow_m3_s / full.flow_m3_s});
        rise.push_back({percent, 100.0 * p.rise_pa / full.rise_pa});
        power.push_back({percent, 100.0 * p.power_w / full.power_w});
    }
    chart.curve(flow, {kAir});
    chart.curve(rise, {kInk});
    chart.curve(power, {kHeat});
    std::vector<Point> laws_flow;
    std::vector<Point> laws_rise;
    std::vector<Point> laws_power;
    for (const double percent : every(50.0, 110.0, 15.0)) {
        const double r = 0.01 * percent;
        laws_flow.push_back({percent, 100.0 * r});
        laws_rise.push_back({percent, 100.0 * r * r});
        laws_power.push_back({percent, 100.0 * r * r * r});
    }
    chart.circles(laws_flow, kAir);
    chart.circles(laws_rise, kInk);
    chart.circles(laws_power, kHeat);
    chart.label({66.0, 66.0}, -6, -8, "flow, N", {.anchor = Anchor::end, .colour = kAir, .halo = true});
    chart.label({84.0, 68.0}, 14, 12, "pressure, N\xC2\xB2", {.halo = true});
    chart.label({80.0, 46.0}, 14, 20, "power, N\xC2\xB3", {.colour = kHeat, .halo = true});
    figure.svg.text({420.0, 62.0}, "Fan laws", {.size = 15.0, .bold = true});
}

} // namespace

std::vector<Drawing> air_figures() {
    const Air air = settled_air();
    Figure figure(
        "Blower", 390.0,
        "Lines: wheel and ducts of the reference furnace, 10 minutes into a call. Circles: the fan laws "
        "(published): flow goes with speed, pressure with its square, power with its cube. A loaded filter "
        "moves the meeting point to less air.");
    draw_wheel_against_ducts(figure, air);
    draw_fan_laws(figure, air);
    return {{"blower.svg", figure.finish()}};
}

} // namespace lightoff::figures
