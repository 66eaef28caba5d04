// SPDX-License-Identifier: MIT
//
// Instruments for gas: meter dial and stopwatch, detector, solution, CO alarm.
#include "desk.hpp"
#include "support/csv.hpp"
#include "units/convert.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff;
using namespace lightoff::test;

namespace {

double shown(const Display& display) {
    return value_of(display).value;
}

/// Area of a round hole, m2.
double hole_m2(double diameter_m) {
    return units::pi / 4.0 * diameter_m * diameter_m;
}

} // namespace

TEST_CASE("clocking: one turn of the 2 ft3 dial takes 94.5 s at 76.1 ft3/h") {
    // Physics, settled targets; meter clocking, tests/reference/rules_and_constants.csv (published):
    // cfh = 3600 x dial / seconds.
    Desk desk(300.0);
    DialWatch& watch = desk.bag.dial_watch;
    watch.setting = {1, 1, 1, 0};
    const double before_m3 = desk.rig.world.state.gas.meter_volume_m3;
    desk.seconds(60.0);
    CHECK(watch.state.running == 1);
    desk.seconds(60.0);
    CHECK(watch.state.running == 0);
    CHECK(is_settled(watch.stopwatch));
    CHECK(shown(watch.stopwatch) == Approx(94.5).epsilon(0.005));
    const double cfh = 3600.0 * 2.0 / shown(watch.stopwatch);
    const double passed_m3 = desk.rig.world.state.gas.meter_volume_m3 - before_m3;
    const double true_cfh = passed_m3 / units::cubic_metres_per_cubic_foot / 120.0 * 3600.0;
    CHECK(cfh == Approx(true_cfh).epsilon(0.003));
    CHECK(shown(watch.dial) == Approx(desk.rig.world.state.signals.gas.meter_dial_fraction).margin(0.011));

    // Another appliance on the same meter: clocked too fast.
    desk.rig.world.inputs.other_gas_m3_s = units::cfh_to_m3s(38.05);
    ++watch.setting.starts;
    desk.seconds(70.0);
    CHECK(watch.state.running == 0);
    CHECK(shown(watch.stopwatch) == Approx(63.0).epsilon(0.02)); // two thirds of 94.5 s
}

TEST_CASE("the dial stands still and the stopwatch runs on when no gas flows") {
    Desk desk(3.0);
    DialWatch& watch = desk.bag.dial_watch;
    watch.setting = {1, 1, 1, 0};
    desk.seconds(10.0);
    const std::int32_t stood = watch.dial.mantissa;
    desk.ticks(20);
    CHECK(watch.dial.mantissa == stood);
    CHECK(watch.state.running == 1);
    CHECK(shown(watch.stopwatch) > 10.0);
}

TEST_CASE("detector: finds a leaking union where it leaks, at the joint and not in the room") {
    Desk desk(3.0);
    GasDetector& detector = desk.bag.gas_detector;
    detector.setting = {Spot::gas_union, 1, 0};
    desk.seconds(10.0);
    CHECK(shown(detector.explosive_limit) <= 0.02);
    const double quiet = shown(detector.ticking);
    desk.rig.set("gas.inlet_leak_area", hole_m2(0.0003)); // a hole of 0.3 mm
    desk.seconds(10.0);
    // By hand: orifice formula Q = K A sqrt(2 dp / rho) with 0.9, 7.1 in. w.c. = 1,769 Pa, 0.735 kg/m3.
    const double leak_m3_s = 0.9 * hole_m2(0.0003) * std::sqrt(2.0 * 1769.0 / 0.735);
    Moment now(desk.rig.model, desk.rig.world.state, desk.rig.world.condition, desk.rig.world.inputs, 1, 0,
               desk.rig.workspace);
    CHECK(escaping_gas_m3_s(now, Spot::gas_union) == Approx(leak_m3_s).epsilon(0.03));
    CHECK(escaping_gas_m3_s(now, Spot::gas_cock) == 0.0);
    CHECK(shown(detector.ticking) > 3.0 * quiet);
    CHECK(shown(detector.explosive_limit) > 0.5);
    CHECK(detector.explosive_limit.has(kAlarm));
    detector.setting.tip = Spot::room;
    desk.seconds(15.0);
    CHECK(shown(detector.explosive_limit) <= 0.02);
    detector.setting.tip = Spot::gas_cock;
    desk.seconds(15.0);
    CHECK(shown(detector.explosive_limit) <= 0.02);
    // The tap's plug out: most comes out there.
    desk.rig.set("gas.inlet_tap_open", 1.0);
    detector.setting.tip = Spot::inlet_tap;
    desk.seconds(10.0);
    CHECK(text(detector.explosive_limit) == "OL");
}

TEST_CASE("solution: bubbles grow at a leaking joint, only under pressure, only there") {
    Desk desk(3.0);
    LeakSolution& solution = desk.bag.leak_solution;
    desk.rig.set("gas.inlet_leak_area", hole_m2(20e-6)); // twenty thousandths of a millimetre
    solution.setting = {Spot::gas_union, 1, 0};
    desk.seconds(10.0);
    // By hand: 0.9 x 3.14e-10 m2 x 69.4 m/s = 2.0e-8 m3/s; in 10 s a ball of 7.2 mm.
    CHECK(shown(solution.bubble) == Approx(0.0072).margin(0.0008));
    solution.setting.joint = Spot::gas_cock;
    desk.seconds(10.0);
    CHECK(shown(solution.bubble) == 0.0);
    desk.rig.world.inputs.gas_cock_open = 0;
    desk.rig.set("gas.inlet_leak_area", hole_m2(0.002));
    desk.seconds(30.0); // the pipe runs empty
    desk.rig.set("gas.inlet_leak_area", hole_m2(20e-6));
    solution.setting.joint = Spot::gas_union;
    desk.seconds(20.0);
    CHECK(shown(solution.bubble) == 0.0);
}

TEST_CASE("personal CO alarm: the room's ppm with a lag; beeps from 9, alarms at 70") {
    Desk desk(3.0);
    CoAlarm& alarm = desk.bag.co_alarm;
    alarm.setting = {1, 0};
    desk.seconds(5.0);
    CHECK(shown(alarm.display) <= 1e-6);
    CHECK_FALSE(alarm.display.has(kBeep));
    const auto breathe = [&](double ppm) {
        for (int i = 0; i < 90; ++i) {
            desk.rig.world.state.gas.room.co_fraction = 1e-6 * ppm;
            desk.seconds(1.0);
        }
        return value_of(alarm.display);
    };
    CHECK(fits(breathe(30.0), 30e-6));
    CHECK(alarm.display.has(kBeep));
    CHECK_FALSE(alarm.display.has(kAlarm));
    // The lowest level of UL 2034 (tests/reference/rules_and_constants.csv, published, quoted) is 70 ppm.
    CHECK(fits(breathe(90.0), 90e-6));
    CHECK(alarm.display.has(kAlarm));
    CHECK(fits(breathe(4.0), 4e-6));
    CHECK_FALSE(alarm.display.has(kBeep));
}
