// SPDX-License-Identifier: MIT
//
// What goes wrong with a multimeter, and what it is blind to. Trade: trade.md's two meter mistakes, common
// practice, no source; ranges in the same way unless said.
#include "desk.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace lightoff;
using namespace lightoff::test;

namespace {

/// Windows of the next seconds, each four times a second.
std::vector<Display> windows(Desk& desk, double seconds) {
    std::vector<Display> all;
    for (int i = 0; i < static_cast<int>(4.0 * seconds); ++i) {
        desk.ticks(5);
        all.push_back(desk.bag.multimeter.display);
    }
    return all;
}

struct Kinds {
    int overload = 0;
    int negative = 0;
    int noisy = 0;
    std::size_t different = 0;
};

Kinds kinds_of(const std::vector<Display>& all) {
    Kinds kinds;
    std::set<std::string> texts;
    for (const Display& d : all) {
        kinds.overload += d.has(kOverload) ? 1 : 0;
        kinds.negative += !d.has(kOverload) && d.mantissa < 0 ? 1 : 0;
        kinds.noisy += d.has(kNoisy) ? 1 : 0;
        texts.insert(text(d));
    }
    kinds.different = texts.size();
    return kinds;
}

double line_current_a(Desk& desk) {
    return desk.rig.amps("supply.line");
}

} // namespace

TEST_CASE("the window follows with a lag, changes four times a second, settles within 2 s of the leads") {
    Desk desk;
    desk.leads(Function::ac_volts, "board.R", "board.C");
    std::vector<std::string> seen;
    std::vector<std::uint32_t> settled;
    for (int i = 0; i < 100; ++i) {
        desk.ticks(1);
        if (seen.empty() || desk.window() != seen.back())
            seen.push_back(desk.window());
        settled.push_back(desk.bag.multimeter.display.ticks_settled);
    }
    CHECK(seen.size() >= 4); // on its way
    CHECK(seen.size() <= 12);
    const double last = value_of(desk.bag.multimeter.display).value;
    CHECK(last > 24.0);
    CHECK(last < 27.5);
    CHECK(settled.back() >= kSettledTicks);               // 5 s: 2 s to come to rest, 2 s at rest
    desk.leads(Function::ac_volts, "board.W", "board.C"); // moved: counts anew
    desk.ticks(1);
    CHECK_FALSE(is_settled(desk.bag.multimeter.display));
}

TEST_CASE("leads on nothing: 0 V, OL ohms, 0 A; switched off: an empty window and no burden") {
    Desk desk;
    desk.bag.multimeter.setting.function = Function::ac_volts;
    desk.seconds(2.0);
    CHECK(value_of(desk.bag.multimeter.display).value < 0.002);
    desk.bag.multimeter.setting.function = Function::ohms;
    desk.seconds(2.0);
    CHECK(desk.window() == "OL");
    desk.bag.multimeter.setting.function = Function::dc_microamps;
    desk.seconds(2.0);
    CHECK(std::abs(value_of(desk.bag.multimeter.display).value) < 0.02e-6);
    CHECK(attachment_of(desk.bag.multimeter).a == attachment_of(desk.bag.multimeter).b);
    desk.leads(Function::off, "board.R", "board.C");
    desk.seconds(1.0);
    CHECK(desk.window().empty());
    CHECK(attachment_of(desk.bag.multimeter).a == attachment_of(desk.bag.multimeter).b);
}

TEST_CASE("each function is to the network what it should be") {
    Multimeter meter;
    const auto ohm = [&](Function function) {
        meter.setting = {1, 2, function};
        return attachment_of(meter).ohm;
    };
    CHECK(ohm(Function::ac_volts) == 10e6); // tests/reference/rules_and_constants.csv
    CHECK(ohm(Function::dc_volts) == 10e6);
    CHECK(ohm(Function::low_z_volts) == 3e3);
    CHECK(ohm(Function::dc_microamps) >= 100.0);
    CHECK(ohm(Function::dc_microamps) <= 2e3);
    CHECK(ohm(Function::ac_amps) <= 0.05);
    CHECK(attachment_of(meter).dc_v == 0.0);
    ohm(Function::ohms);
    CHECK(attachment_of(meter).dc_v == 1.0);
}

TEST_CASE("DC volts: blind to AC, signed") {
    Desk desk(240.0); // the flame pushes the rod to a negative mean voltage
    const Value ac_circuit = desk.measure(Function::dc_volts, "board.R", "board.C");
    CHECK(std::abs(ac_circuit.value) < 0.01);
    const Value rod = desk.measure(Function::dc_volts, "board.flame", "board.neutral");
    CHECK(rod.value < -5.0); // minus some volts to tens of volts (common practice, no source)
    CHECK(desk.window()[0] == '-');
}

TEST_CASE("ohms on a live circuit: OL, negative or jumping, never a steady wrong number") {
    Desk desk(240.0);
    for (const auto& [red, black] : {std::pair<std::string, std::string>{"board.line", "board.neutral"},
                                     {"board.R", "board.C"},
                                     {"valve.hot", "valve.common"}}) {
        desk.leads(Function::ohms, red, black);
        desk.seconds(1.0);
        const Kinds kinds = kinds_of(windows(desk, 20.0));
        INFO(red << ": " << kinds.overload << " OL, " << kinds.negative << " negative of 80, "
                 << kinds.different << " different");
        CHECK(kinds.noisy == 80);
        CHECK(kinds.overload >= 5);
        CHECK(kinds.negative >= 5);
        CHECK(kinds.different >= 10);
        CHECK(desk.bag.multimeter.state.microamp_fuse_blown == 0); // protected input: a wrong reading only
        CHECK(desk.bag.multimeter.state.amp_fuse_blown == 0);
    }
    // A closed switch that carries current drops millivolts: the number is unsteady by ohms.
    desk.leads(Function::ohms, "pressure_switch.in", "pressure_switch.out");
    desk.seconds(1.0);
    const Kinds closed = kinds_of(windows(desk, 20.0));
    CHECK(closed.different >= 5);
}

TEST_CASE("continuity beeps through a closed switch, not through a coil or an open one") {
    Desk desk;
    desk.power_off();
    desk.measure(Function::continuity, "limit.in", "limit.out");
    CHECK(desk.bag.multimeter.display.has(kBeep));
    CHECK(value_of(desk.bag.multimeter.display).value < 0.6); // leads: 0.1-0.3 ohm
    desk.measure(Function::continuity, "valve.hot", "valve.common");
    CHECK_FALSE(desk.bag.multimeter.display.has(kBeep));
    CHECK(value_of(desk.bag.multimeter.display).value == Approx(40.0).margin(1.5));
    desk.lift("pressure_switch.in");
    desk.measure(Function::continuity, "pressure_switch.in.pin", "pressure_switch.out.pin");
    CHECK(desk.window() == "OL");
    CHECK_FALSE(desk.bag.multimeter.display.has(kBeep));
}

TEST_CASE("microamps across a voltage blow the meter's small fuse, which is then an open circuit") {
    for (const auto& [red, black] :
         {std::pair<std::string, std::string>{"board.line", "board.neutral"}, {"board.R", "board.C"}}) {
        INFO(red);
        Desk desk;
        desk.leads(Function::dc_microamps, red, black);
        desk.ticks(6);
        CHECK(desk.bag.multimeter.state.microamp_fuse_blown == 1);
        CHECK(desk.bag.multimeter.state.amp_fuse_blown == 0);
        desk.seconds(5.0);
        CHECK(std::abs(value_of(desk.bag.multimeter.display).value) < 0.02e-6);
        CHECK(attachment_of(desk.bag.multimeter).ohm > 1e12);
        // The furnace's 3 A fuse is far slower and has come through.
        CHECK(desk.measure(Function::ac_volts, "board.R", "board.C").value > 24.0);
        // In series with the flame the meter now reads 0, and the board sees no flame: a trap.
        fit_new_fuses(desk.bag.multimeter);
        CHECK(desk.bag.multimeter.state.microamp_fuse_blown == 0);
        desk.leads(Function::dc_microamps, "limit.in", "limit.out"); // closed: no voltage
        desk.seconds(2.0);
        CHECK(desk.bag.multimeter.state.microamp_fuse_blown == 0);
    }
}

TEST_CASE("with a blown fuse in series the flame is not proved: the meter itself breaks the circuit") {
    Desk desk(240.0);
    desk.bag.multimeter.state.microamp_fuse_blown = 1;
    desk.in_series(Function::dc_microamps, "board.flame");
    desk.seconds(10.0);
    CHECK(std::abs(value_of(desk.bag.multimeter.display).value) < 0.02e-6);
    CHECK(desk.rig.world.state.signals.gas.burners_total_m3_s == 0.0);
}

TEST_CASE("amps across the line blow the meter's large fuse; across 24 V the furnace's 3 A fuse goes first") {
    Desk line;
    line.leads(Function::ac_amps, "board.line", "board.neutral");
    line.ticks(2);
    CHECK(line.bag.multimeter.state.amp_fuse_blown == 1);
    line.seconds(3.0);
    CHECK(value_of(line.bag.multimeter.display).value < 0.01);
    CHECK(line_current_a(line) < 1.0); // open again
    CHECK(line.measure(Function::ac_volts, "board.line", "board.neutral").value > 115.0);

    Desk control;
    control.leads(Function::ac_amps, "board.R", "board.C");
    control.seconds(3.0);
    CHECK(control.bag.multimeter.state.amp_fuse_blown == 0);
    CHECK(control.measure(Function::ac_volts, "board.R", "board.C").value < 1.0);
    const Value across_fuse = control.measure(Function::ac_volts, "board.secondary_hot", "board.R");
    CHECK(across_fuse.value > 24.0); // the blown fuse has the whole voltage across it
}

TEST_CASE(
    "capacitance: right on a pulled capacitor, nonsense with the motor beside it, refused when charged") {
    Desk desk;
    desk.power_off();
    const double nominal =
        15e-6 *
        static_cast<double>(desk.rig.world.condition.wiring
                                .factor[static_cast<std::size_t>(desk.element("blower_capacitor.element"))]);
    const Value in_circuit = desk.measure(Function::capacitance, "blower_capacitor.a", "blower_capacitor.b");
    CHECK_FALSE(fits(in_circuit, nominal));
    desk.lift("blower_capacitor.a");
    desk.lift("blower_capacitor.b");
    const Value pulled =
        desk.measure(Function::capacitance, "blower_capacitor.a.pin", "blower_capacitor.b.pin");
    INFO(desk.window());
    CHECK(fits(pulled, nominal));
    CHECK(pulled.half_width < 0.06 * nominal); // good enough to judge 6 %
    desk.rig.set("wiring/blower_capacitor.element/factor", 0.6);
    CHECK(
        fits(desk.measure(Function::capacitance, "blower_capacitor.a.pin", "blower_capacitor.b.pin"), 9e-6));
    desk.rig.set("wiring/inducer_capacitor.element/factor", 1.0);
    desk.lift("inducer_capacitor.a");
    CHECK(fits(desk.measure(Function::capacitance, "inducer_capacitor.a.pin", "inducer_capacitor.b.pin"),
               3e-6));
    desk.bag.multimeter.stored_v = 40.0F;
    desk.seconds(2.0);
    CHECK(desk.window() == "OL");
    desk.bag.multimeter.stored_v = 0.0F;
    // A resistor has none; an open capacitor neither.
    CHECK(desk.measure(Function::capacitance, "valve.hot", "valve.common").value < 0.1e-6);
    desk.rig.set("wiring/inducer_capacitor.element/factor", 0.0);
    CHECK(desk.measure(Function::capacitance, "inducer_capacitor.a.pin", "inducer_capacitor.b.pin").value <
          1e-9);
}

TEST_CASE("capacitance on a live circuit is refused") {
    Desk desk;
    desk.measure(Function::capacitance, "board.R", "board.C");
    CHECK(desk.window() == "OL");
}
