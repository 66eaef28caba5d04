// SPDX-License-Identifier: MIT
#include "files/equipment_rooms.hpp"

#include "gas/gas_path.hpp"

#include <cmath>

namespace lightoff::files {
namespace {

constexpr Range kShare{0.0, 1.0, "fraction"};

combustion::CoCurve read_co_curve(const Object& o) {
    const auto ppm = [&](std::string_view name) { return 1e6 * o.number(name, {0.0, 1e5, "ppm"}); };
    combustion::CoCurve c;
    c.base_ppm = ppm("base");
    c.rich_below = o.number("rich_below_air_ratio", {1.0, 3.0});
    c.rich_square_ppm = ppm("rich_square");
    c.rich_fourth_ppm = ppm("rich_fourth");
    c.lean_above = o.number("lean_above_air_ratio", {1.2, 10.0});
    c.lean_ppm = ppm("lean");
    c.lean_most_ppm = ppm("lean_most");
    c.impingement_ppm = ppm("impingement");
    c.primary_ppm = ppm("primary");
    c.soot_ppm = ppm("soot");
    c.upset_ppm = ppm("upset");
    c.stale_ppm = ppm("stale");
    c.rollout_ppm = ppm("rollout");
    return c;
}

} // namespace

combustion::Fuel read_fuel(const Object& o) {
    combustion::Composition c;
    c.methane = o.number("methane", kShare);
    c.ethane = o.number("ethane", kShare);
    c.propane = o.number("propane", kShare);
    c.butane = o.number("butane", kShare);
    c.nitrogen = o.number("nitrogen", kShare);
    c.carbon_dioxide = o.number("carbon_dioxide", kShare);
    const double sum = c.methane + c.ethane + c.propane + c.butane + c.nitrogen + c.carbon_dioxide;
    if (std::abs(sum - 1.0) > 1e-4)
        throw o.error("methane_fraction",
                      "shares that add up to 1 (they add up to " + rounded_text(sum) + ")");
    const double lower = o.number("lower_flammable_limit", {0.1, 50.0, "pct"});
    const double upper = o.number("upper_flammable_limit", {0.1, 90.0, "pct"});
    if (lower >= upper)
        throw o.error("lower_flammable_limit_pct", "less than the upper limit");
    return combustion::make_fuel(c, lower, upper);
}

combustion::Params read_burners(const Object& o, const combustion::Fuel& fuel) {
    const Range ratio{0.0, 10.0};
    const Range seconds{0.01, 30.0, "s"};
    combustion::Params p;
    p.fuel = fuel;
    p.burner_count = o.integer("count", 1, static_cast<std::int64_t>(combustion::kMaxBurners));
    p.rated_burner_flow_m3_s = o.number("rated_flow_each", {0.1, 500.0, "cfh"});
    p.primary_air_ratio = o.number("primary_air_ratio", ratio);
    p.mixing_at_igniter = o.number("mixing_at_igniter", kShare);
    p.mixing_at_flame = o.number("mixing_at_flame", kShare);
    p.smother_air_ratio = o.number("smother_air_ratio", ratio);
    p.extinction_inert = o.number("extinction_inert", kShare);
    p.rollout_air_ratio = o.number("rollout_air_ratio", ratio);
    p.misaligned_rollout = o.number("misaligned_rollout", kShare);
    p.cell_volume_m3 = o.number("cell_volume", {0.1, 100.0, "L"});
    p.cell_opening_m2 = o.number("cell_opening", {1.0, 1000.0, "cm2"});
    p.igniter_lights_k = o.number("igniter_lights", {400.0, 1500.0, "C"});
    p.igniter_light_s = o.number("igniter_light", seconds);
    p.crossover_s = o.number("crossover", seconds);
    p.overflow_s = o.number("overflow", seconds);
    p.flame_growth_s = o.number("flame_growth", seconds);
    p.flame_decay_s = o.number("flame_decay", seconds);
    p.pocket_burn_s = o.number("pocket_burn", seconds);
    p.crack_jet_ratio = o.number("crack_jet_half_upset_ratio", {0.001, 10.0});
    p.co = read_co_curve(o.object("co_teaching_curve"));
    return p;
}

gas::Params read_gas(const Object& o, const combustion::Fuel& fuel) {
    const double rated = o.number("rated_flow", {1.0, 1000.0, "cfh"});
    const auto loss_pa = [&](std::string_view name) { return o.number(name, {0.0001, 20.0, "inwc"}); };
    const auto resistance = [&](std::string_view name) {
        return gas::square_law_resistance(loss_pa(name), rated);
    };
    gas::Params p;
    p.supply_static_pa = o.number("supply_static", {0.1, 60.0, "inwc"});
    p.meter_resistance = resistance("meter_loss_at_rated_flow");
    p.pipe_resistance = resistance("pipe_loss_at_rated_flow");
    p.cock_resistance = resistance("cock_loss_at_rated_flow");
    p.valve_conductance = gas::square_law_conductance(loss_pa("valve_loss_at_rated_flow"), rated);
    p.inlet_pipe_volume_m3 = o.number("inlet_pipe_volume", {1.0, 1e5, "mL"});
    p.specific_gravity = combustion::specific_gravity(fuel);
    p.regulator_set_pa = o.number("regulator_set", {0.5, 14.0, "inwc"});
    p.regulator_inlet_pa = o.number("regulator_set_at_inlet", {1.0, 30.0, "inwc"});
    p.regulator_slope = o.number("regulator_rise_per_inlet", {0.0, 0.2, "fraction"});
    p.valve_opening_s = o.number("valve_opening", {0.01, 30.0, "s"});
    p.valve_closing_s = o.number("valve_closing", {0.01, 5.0, "s"});
    p.discharge_coefficient = o.number("discharge_coefficient", {0.3, 1.0});
    const std::vector<double> orifices =
        o.numbers("orifice_diameters", {0.01, 0.3, "in"}, {1, gas::kMaxBurners});
    for (std::size_t i = 0; i < orifices.size(); ++i)
        p.orifice_diameter_m[i] = orifices[i];
    p.burner_count = static_cast<std::int64_t>(orifices.size());
    p.tap_diameter_m = o.number("tap_diameter", {0.01, 0.5, "in"});
    p.meter_dial_m3 = o.number("meter_dial", {0.1, 100.0, "ft3"});
    p.room_volume_m3 = o.number("room_volume", {1.0, 1e4, "m3"});
    return p;
}

} // namespace lightoff::files
