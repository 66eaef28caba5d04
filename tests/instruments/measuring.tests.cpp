// SPDX-License-Identifier: MIT
//
// The instruments that do not load what they measure, against the rooms' own outputs and sums by hand.
#include "desk.hpp"
#include "units/convert.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff;
using namespace lightoff::test;

namespace {

Value shown(const Display& display) {
    return value_of(display);
}

double inwc(const Display& display) {
    return units::pa_to_inwc(value_of(display).value);
}

} // namespace

TEST_CASE("clamp: the wire's current; both conductors of a load would cancel, each alone reads the same") {
    Desk desk(240.0);
    desk.bag.clamp.setting = {desk.element("blower.lead_common"), 1};
    desk.seconds(4.0);
    const double blower_a = desk.rig.amps("blower.lead_common");
    INFO(text(desk.bag.clamp.display) << " of " << blower_a);
    CHECK(fits(shown(desk.bag.clamp.display), blower_a));
    CHECK(blower_a > 4.3); // physics: 4.3-5.8 A
    CHECK(blower_a < 5.8);
    CHECK(is_settled(desk.bag.clamp.display));
    desk.bag.clamp.setting.element = desk.element("harness.igniter_line"); // off in the run
    desk.seconds(4.0);
    CHECK(shown(desk.bag.clamp.display).value < 0.05);
    desk.bag.clamp.setting.on = 0;
    desk.ticks(1);
    CHECK(text(desk.bag.clamp.display).empty());
}

TEST_CASE("wattmeter at the supply: the power that the furnace's parts turn into heat and motion") {
    Desk desk(240.0);
    desk.bag.wattmeter.setting = at_furnace_supply(desk.rig.model);
    desk.seconds(6.0);
    const Wattmeter& meter = desk.bag.wattmeter;
    const furnace::Power& power = desk.rig.world.state.signals.power;
    // Sum of the parts by another way than the supply's current; what the 24 V circuit's resistors and coils
    // and the copper of the wires take (some 20-30 W) is not in it.
    const double parts_w = power.blower_electrical_w + power.inducer_electrical_w + power.transformer_loss_w;
    INFO(text(meter.volts) << ", " << text(meter.amps) << ", " << text(meter.watts) << ", "
                           << text(meter.power_factor) << "; parts " << parts_w << " W");
    CHECK(shown(meter.watts).value > parts_w);
    CHECK(shown(meter.watts).value < parts_w + 50.0);
    const double apparent_va = shown(meter.volts).value * shown(meter.amps).value;
    CHECK(shown(meter.power_factor).value == Approx(shown(meter.watts).value / apparent_va).margin(0.04));
    CHECK(fits(shown(meter.amps), desk.rig.amps("supply.line")));
    CHECK(shown(meter.volts).value == Approx(120.0).epsilon(0.02));
}

TEST_CASE("tachometer: the wheel's speed; a loose wheel turns slower than its shaft") {
    Desk desk(240.0);
    desk.bag.tachometer.setting = {Spot::blower_wheel, 1, 0};
    desk.seconds(4.0);
    const furnace::Signals& s = desk.rig.world.state.signals;
    CHECK(fits(shown(desk.bag.tachometer.display), s.air.wheel_speed_rad_s));
    desk.bag.tachometer.setting.target = Spot::inducer_shaft;
    desk.seconds(4.0);
    CHECK(fits(shown(desk.bag.tachometer.display), s.draft.inducer_speed_rad_s));
    CHECK(units::rad_s_to_rpm(shown(desk.bag.tachometer.display).value) > 2800.0);
    desk.bag.tachometer.setting.target = Spot::blower_shaft;
    desk.seconds(4.0);
    CHECK(fits(shown(desk.bag.tachometer.display), s.air.blower_speed_rad_s));
}

TEST_CASE("manometer: every spot, signs, and the difference of two ports") {
    Desk desk(240.0);
    Manometer& meter = desk.bag.manometer;
    const auto read = [&](Spot plus, Spot minus) {
        meter.setting.plus = plus;
        meter.setting.minus = minus;
        meter.setting.on = 1;
        desk.seconds(5.0);
        CHECK(is_settled(meter.display));
        return shown(meter.display);
    };
    const furnace::Signals& s = desk.rig.world.state.signals;
    CHECK(fits(read(Spot::inlet_tap, Spot::room), s.gas.inlet_tap_pa));
    CHECK(inwc(meter.display) == Approx(7.0).margin(0.15));
    CHECK(fits(read(Spot::manifold_tap, Spot::room), s.gas.manifold_tap_pa));
    CHECK(inwc(meter.display) == Approx(3.5).margin(0.1));
    CHECK(fits(read(Spot::hose_tee_inducer, Spot::room), -s.draft.inducer_side_suction_pa));
    CHECK(inwc(meter.display) < -0.6);
    CHECK(fits(read(Spot::room, Spot::hose_tee_switch), s.draft.switch_side_suction_pa));
    CHECK(inwc(meter.display) > 0.6);
    CHECK(fits(read(Spot::vent_connector, Spot::room), s.draft.vent_connector_pa));
    CHECK(fits(read(Spot::return_static, Spot::room), s.air.return_static_pa));
    CHECK(inwc(meter.display) < 0.0);
    CHECK(fits(read(Spot::supply_static, Spot::room), s.air.supply_static_pa));
    CHECK(inwc(meter.display) > 0.0);
    // Magnitudes add: 0.50 in. w.c. at the reference airflow (physics: settled targets).
    CHECK(fits(read(Spot::supply_static, Spot::return_static), s.air.external_static_pa));
    CHECK(inwc(meter.display) == Approx(0.5).margin(0.03));
}

TEST_CASE("manometer: a plug in the hose shows as suction on one side and nothing on the other") {
    Desk desk(3.0);
    desk.rig.set("draft.sense_line.hose_plug", 1.0);
    desk.rig.run(15.0); // the call comes, the inducer runs up
    Manometer& meter = desk.bag.manometer;
    meter.setting = {Spot::hose_tee_inducer, Spot::room, 1, 0, 0};
    desk.seconds(4.0);
    CHECK(inwc(meter.display) < -0.6);
    meter.setting.plus = Spot::hose_tee_switch;
    desk.seconds(4.0);
    // Behind a plug that seals stays what was there: the draft of the warm house through the idle furnace.
    CHECK(std::abs(inwc(meter.display)) < 0.03);
}

TEST_CASE("manometer: the zero creeps within its accuracy; the button takes off what stands there") {
    Desk desk;
    Manometer& meter = desk.bag.manometer;
    meter.setting.on = 1; // both ports open
    double most = 0.0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        desk.seed = seed;
        desk.seconds(30.0);
        const Value zero = shown(meter.display);
        CHECK(std::abs(zero.value) <= zero.half_width);
        most = std::max(most, std::abs(zero.value));
    }
    CHECK(most > 0.0005 * units::pascals_per_inwc); // it does creep
    ++meter.setting.zero_presses;
    desk.seconds(3.0);
    CHECK(text(meter.display) == "0.000 in. w.c.");
    // Zeroed with a hose on a tap under pressure: wrong by that pressure from then on.
    meter.setting.plus = Spot::inlet_tap;
    desk.seconds(3.0);
    ++meter.setting.zero_presses;
    desk.seconds(3.0);
    CHECK(std::abs(inwc(meter.display)) < 0.01);
    meter.setting.plus = Spot::room;
    desk.seconds(3.0);
    CHECK(inwc(meter.display) == Approx(-7.1).margin(0.15)); // static pressure of the supply
}

TEST_CASE("thermometer: spots, a lag of some seconds, radiation in sight of the exchanger") {
    Desk desk(600.0);
    Thermometer& meter = desk.bag.thermometer;
    meter.setting = {Spot::supply_duct, Spot::return_duct, 1, 0};
    desk.seconds(40.0);
    const furnace::State& state = desk.rig.world.state;
    CHECK(fits(shown(meter.t1), state.signals.heat.supply_air_k));
    CHECK(fits(shown(meter.t2), state.heat.temperature.house));
    CHECK(fits(shown(meter.difference), state.signals.heat.supply_air_k - state.heat.temperature.house));
    const double rise_k = shown(meter.difference).value;
    CHECK(units::k_difference_to_fahrenheit(rise_k) > 49.0); // physics: 50-55 F
    CHECK(units::k_difference_to_fahrenheit(rise_k) < 56.0);
    meter.setting.probe_1 = Spot::supply_plenum;
    desk.seconds(40.0);
    CHECK(shown(meter.difference).value > rise_k + 1.0);
    meter.setting.probe_1 = Spot::vent_connector;
    desk.seconds(40.0);
    CHECK(fits(shown(meter.t1), state.signals.heat.vent_connector_gas_k));
    // From 70 F into hot gas: 63 % of the way after one lag of 3-5 s (common practice, no source).
    Desk cold(600.0);
    cold.bag.thermometer.setting = {Spot::room, Spot::room, 1, 0};
    cold.seconds(5.0);
    const double from = shown(cold.bag.thermometer.t1).value;
    cold.bag.thermometer.setting.probe_1 = Spot::vent_connector;
    cold.seconds(4.0);
    const double reached = (shown(cold.bag.thermometer.t1).value - from) /
                           (cold.rig.world.state.signals.heat.vent_connector_gas_k - from);
    CHECK(reached == Approx(1.0 - std::exp(-1.0)).margin(0.04));
}

TEST_CASE("voltage tester: glows at live wires, is fooled by a ghost, blind to 24 V and to neutral") {
    Desk desk;
    VoltageTester& tester = desk.bag.voltage_tester;
    const auto glows = [&](const std::string& place) {
        tester.setting = {desk.node(place), 1};
        desk.seconds(1.0);
        return tester.glow.has(kBeep);
    };
    CHECK(glows("board.line"));
    CHECK_FALSE(glows("board.neutral"));
    CHECK_FALSE(glows("board.R"));
    CHECK_FALSE(glows("cabinet.metal"));
    desk.rig.open("cabinet.neutral_to_board");
    CHECK(glows("board.neutral")); // the broken side of an open neutral is live through the loads
    // A piece of wire that is connected to nothing, beside the inducer's live one.
    Desk ghost(12.0);
    ghost.rig.open("harness.igniter_line");
    ghost.rig.open("harness.igniter_neutral");
    ghost.lift("igniter_plug.line");
    ghost.bag.voltage_tester.setting = {ghost.node("igniter_plug.line.lug"), 1};
    ghost.seconds(1.0);
    INFO(ghost.rig.volts("igniter_plug.line.lug", "cabinet.metal") << " V against the cabinet, unloaded");
    CHECK(ghost.bag.voltage_tester.glow.has(kBeep));
    CHECK(ghost.measure(Function::low_z_volts, "igniter_plug.line.lug", "cabinet.metal").value < 1.0);
}
