// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"

#include "electrical/flame_rectifier.hpp"
#include "electrical/fuse.hpp"
#include "support/csv.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::figures {
namespace {

/// Seconds at a steady current, by the step that the furnace takes; above the minimum fusing current.
double melting_time_s(const electrical::FuseParams& fuse, double amps) {
    constexpr double dt_s = 0.0002;
    const double share = electrical::fuse_step_share(fuse, dt_s);
    electrical::FuseState state;
    double time_s = dt_s;
    while (!electrical::step_fuse(fuse, state, amps, share) && time_s < 1000.0)
        time_s += dt_s;
    return time_s;
}

Drawing fuse_curve() {
    struct Window {
        double percent;
        double from_s;
        double to_s;
    };
    const std::vector<Window> windows{
        {135.0, 0.75, 600.0}, {200.0, 0.15, 5.0}, {350.0, 0.04, 0.5}, {600.0, 0.02, 0.1}};
    const electrical::FuseParams fuse;
    constexpr double rating_a = 3.0;
    Figure figure(
        "The 3 A fuse: how long it lasts", 400.0,
        "Line: our fuse wire, heated by I\xC2\xB2, one time constant. Bars: windows for blade fuses, ISO "
        "8820-3, given here from memory (not published reference); at 110 % it must hold for 100 h. Dots: "
        "fault currents of the reference furnace, common practice.");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54),
                {"current, A", 3.0, 24.0, {3.0, 4.0, 6.0, 8.0, 12.0, 18.0, 24.0}, 0, true},
                {"time to melt, s", 0.01, 1000.0, {0.01, 0.1, 1.0, 10.0, 100.0, 1000.0}, -1, true});
    for (const Window& w : windows) {
        const double amps = 0.01 * w.percent * rating_a;
        chart.block(amps * 0.97, amps * 1.03, w.from_s, w.to_s, kRule, 0.55);
        chart.label({amps, w.to_s}, 0, -7, number(w.percent, 0) + " %",
                    {.anchor = Anchor::middle, .colour = kPencil, .halo = true});
    }
    std::vector<Point> ours;
    for (int i = 0; i <= 120; ++i) {
        const double part = static_cast<double>(i) / 120.0;
        const double amps = 3.752 * units::pow(24.0 / 3.752, part * part);
        ours.push_back({amps, melting_time_s(fuse, amps)});
    }
    chart.curve(ours, {kHeat, 2.4});
    chart.moment(fuse.minimum_fusing_a, {kHeat, 1.2, "4 4"});
    chart.label({fuse.minimum_fusing_a, 0.012}, -7, 0, "below this it never melts",
                {.colour = kHeat, .turned_deg = -90.0});
    chart.dot({18.0, melting_time_s(fuse, 18.0)}, kHeat);
    chart.dot({12.5, melting_time_s(fuse, 12.5)}, kHeat);
    chart.label({12.5, melting_time_s(fuse, 12.5)}, -2, -26, "shorted at the far end", {.halo = true});
    chart.label({12.5, melting_time_s(fuse, 12.5)}, -2, -10, "of 15 m of cable", {.halo = true});
    chart.label({18.0, melting_time_s(fuse, 18.0)}, -8, 22, "shorted at the board",
                {.anchor = Anchor::end, .halo = true});
    return {"fuse.svg", figure.finish()};
}

Drawing flame_current() {
    constexpr double board_ohm = 3.3e6;
    Figure figure(
        "Flame current through an oxidised rod", 370.0,
        "Lines: closed-form half-wave averages, 3.3 M\xCE\xA9 in the board on 120 V. Circles: ngspice 39, "
        "transient of two switched conductances (tests/figures/flame_current_ngspice.csv). Bands: common "
        "practice.");
    Chart chart(figure.svg, figure.box(76, 24, 4, 54),
                {"oxide on the rod, M\xCE\xA9", 0.0, 100.0, every(0.0, 100.0, 10.0)},
                {"mean current, \xC2\xB5"
                 "A",
                 0.0, 6.0, every(0.0, 6.0, 1.0)});
    chart.band_across(2.0, 6.0, kRule, 0.18);
    chart.band_across(0.5, 1.0, kAlarm, 0.14);
    for (const double share : {1.0, 0.3}) {
        const electrical::FlameParams flame = electrical::flame_conductance({}, share, 1.0);
        std::vector<Point> ours;
        for (const double mohm : every(0.0, 100.0, 1.0))
            ours.push_back({mohm, 1e6 * electrical::mean_flame_current_a({120.0, board_ohm + 1e6 * mohm,
                                                                          flame.forward_siemens,
                                                                          flame.reverse_siemens})});
        chart.curve(ours, {kGas, 2.4, share < 1.0 ? "8 4" : ""});
    }
    std::vector<Point> theirs;
    for (const auto& row :
         test::read_csv(std::string(LIGHTOFF_SOURCE_DIR) + "/tests/figures/flame_current_ngspice.csv"))
        theirs.push_back({std::stod(row.at("oxide_Mohm")), std::stod(row.at("mean_current_uA"))});
    chart.circles(theirs, kInk);
    chart.label({100.0, 6.0}, -8, 20,
                "ordinary, 2 to 6 \xC2\xB5"
                "A",
                {.anchor = Anchor::end, .colour = kPencil});
    chart.label({100.0, 1.0}, -8, -6,
                "drop-out, 0.5 to 1 \xC2\xB5"
                "A",
                {.anchor = Anchor::end, .colour = kPencil});
    chart.label({12.0, 2.25}, 8, -8, "full flame round the rod", {});
    chart.label({28.0, 0.81}, 0, 25, "flame at 0.3", {.anchor = Anchor::middle, .halo = true});
    return {"flame-current.svg", figure.finish()};
}

} // namespace

std::vector<Drawing> electrical_figures() {
    return {fuse_curve(), flame_current()};
}

} // namespace lightoff::figures
