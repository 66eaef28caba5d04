// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"

#include "support/rig.hpp"
#include "units/convert.hpp"

namespace lightoff::figures {
namespace {

constexpr double kLights_c = 980.0;

void draw_warm_up(Figure& figure) {
    test::Rig rig;
    rig.run_until(90.0, [](const test::Rig& r) { return r.board_state() == "warm_up"; });
    const double start_s = rig.now_s();
    std::vector<Point> surface;
    std::vector<Point> ohms;
    for (int i = 0; i <= 200; ++i) {
        const double s = rig.now_s() - start_s;
        surface.push_back({s, units::k_to_celsius(rig.world.state.heat.temperature.igniter)});
        ohms.push_back({s, rig.world.state.signals.heat.igniter_ohm});
        rig.run(0.1);
    }
    const Axis time{"s after 120 V", 0.0, 20.0, every(0.0, 20.0, 5.0)};
    const Box box = figure.box(76, 388, 24, 54);
    Chart celsius(figure.svg, box, time,
                  {"surface, \xC2\xB0"
                   "C",
                   0.0, 1600.0, every(0.0, 1600.0, 200.0)});
    Chart ohm = Chart::with_right_axis(figure.svg, box, time,
                                       {"resistance, \xCE\xA9", 0.0, 80.0, every(0.0, 80.0, 10.0)});
    celsius.level(kLights_c, {kAlarm, 1.4, "12 4"});
    celsius.label({20.0, kLights_c}, -6, 17, "lights gas above 980",
                  {.anchor = Anchor::end, .colour = kAlarm, .halo = true});
    ohm.curve(ohms, {kVolts120, 2.0, "8 4"});
    celsius.curve(surface, {kHeat, 2.4});
    celsius.label({20.0, surface.back().y}, -6, -9, "surface",
                  {.anchor = Anchor::end, .colour = kHeat, .halo = true});
    ohm.label({20.0, ohms.back().y}, -6, -9, "resistance",
              {.anchor = Anchor::end, .colour = kVolts120, .halo = true});
    figure.svg.text({76.0, 62.0}, "Warm-up", {.size = 15.0, .bold = true});
}

/// Settled surface temperature, C, at a share of 120 V: the igniter's own lump, everything else at rest.
double settled_c(double volts, double ageing) {
    const heat::Params& params = test::reference_model().heat;
    heat::Condition condition;
    condition.igniter_resistance_factor = ageing;
    heat::State state = heat::at_rest(294.261);
    for (int i = 0; i < 1200; ++i) {
        heat::Inputs in;
        const double ohm = heat::igniter_resistance_ohm(params.igniter, ageing, state.temperature.igniter);
        in.igniter_w = volts * volts / ohm;
        heat::step(params, condition, state, in, 0.05);
    }
    return units::k_to_celsius(state.temperature.igniter);
}

void draw_by_voltage(Figure& figure) {
    Chart chart(figure.svg, figure.box(470, 24, 24, 54),
                {"line voltage, %", 70.0, 120.0, every(70.0, 120.0, 10.0)},
                {"settled surface, \xC2\xB0"
                 "C",
                 800.0, 1600.0, every(800.0, 1600.0, 200.0)});
    chart.level(kLights_c, {kAlarm, 1.4, "12 4"});
    std::vector<Point> fresh;
    std::vector<Point> aged;
    for (const double percent : every(70.0, 120.0, 2.5)) {
        fresh.push_back({percent, settled_c(1.2 * percent, 1.0)});
        aged.push_back({percent, settled_c(1.2 * percent, 2.0)});
    }
    chart.curve(aged, {kHeat, 2.0, "3 3"});
    chart.curve(fresh, {kHeat, 2.4});
    // A floor and a ceiling of the industry's requirement: an arrow says which side is asked for.
    const auto bound = [&](double percent, double celsius, double down) {
        chart.circles({{percent, celsius}}, kInk);
        const Point p = chart.at(percent, celsius);
        figure.svg.line({p.x, p.y + (down > 0 ? 4.0 : -4.0)}, {p.x, p.y + down}, {kInk, 1.8});
        figure.svg.path({{p.x - 4.0, p.y + 0.65 * down}, {p.x, p.y + down}, {p.x + 4.0, p.y + 0.65 * down}},
                        {kInk, 1.8});
    };
    bound(85.0, 1100.0, -18.0);
    bound(110.0, 1500.0, 18.0);
    chart.circles({{100.0, 1350.0}}, kInk);
    chart.label({100.0, 1350.0}, -9, 0, "asked for", {.anchor = Anchor::end, .halo = true});
    chart.label({85.0, 1100.0}, 8, 16, "at least", {.halo = true});
    chart.label({110.0, 1500.0}, -2, -10, "at most", {.anchor = Anchor::middle, .halo = true});
    chart.label({120.0, 900.0}, -6, 0, "aged, \xC3\x97 2 \xCE\xA9",
                {.anchor = Anchor::end, .colour = kHeat, .halo = true});
    chart.label({80.0, settled_c(96.0, 1.0)}, 0, -20, "new",
                {.anchor = Anchor::end, .colour = kHeat, .halo = true});
    figure.svg.text({470.0, 62.0}, "By voltage and age", {.size = 15.0, .bold = true});
}

} // namespace

std::vector<Drawing> igniter_figures() {
    Figure figure(
        "Hot-surface igniter", 380.0,
        "Lines: one lump, Stefan-Boltzmann and Newton; resistance curve of ours between ends of common "
        "practice (40 to 90 \xCE\xA9 cold, 3 to 4.5 A hot). Circles: requirement on ceramic igniters as "
        "quoted in US "
        "Patent 5,892,201, for elements that heat faster than ours. 980 \xC2\xB0"
        "C: common practice.");
    draw_warm_up(figure);
    draw_by_voltage(figure);
    return {{"igniter.svg", figure.finish()}};
}

} // namespace lightoff::figures
