// SPDX-License-Identifier: MIT
//
// The multimeter as a part of the furnace's network. Source of every expected value: ngspice on the exported
// deck, the meter's burden or test source in it.
#include "desk.hpp"
#include "electrical/spice_deck.hpp"
#include "support/ngspice_circuit.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <complex>
#include <vector>

using namespace lightoff;
using namespace lightoff::test;

namespace {

namespace el = lightoff::electrical;

/// What ngspice finds between the leads: volts of red against black.
std::complex<double> spice_v(Desk& desk, bool ac) {
    static NgspiceCircuit spice;
    const furnace::Model& model = desk.rig.model;
    const bench::World& w = desk.rig.world;
    const el::Netlist& net = model.wiring.netlist;
    const el::AcSolution solution =
        furnace::solve_ac(model, w.state, w.condition, w.inputs, desk.rig.workspace);
    const el::PortInputs ports = furnace::port_inputs(model, w.state);
    const el::DcSolution dc = desk.rig.workspace.network.solve_dc(ports);
    el::OperatingPoint point{w.condition.wiring, desk.rig.workspace.inputs, ports, {}, {}};
    for (std::size_t k = 0; k < net.ports.size(); ++k) {
        if (net.ports[k].kind != el::PortKind::flame)
            continue;
        const double volts = abs(solution.port_v[k]);
        point.flame_siemens[k] = volts > 0.0 ? abs(solution.port_a[k]) / volts : 0.0;
        point.flame_dc_a[k] = dc.port_a[k];
    }
    spice.load(el::spice_deck(net, point, ac ? el::Analysis::ac : el::Analysis::dc));
    const auto volts = ac ? spice.ac(net.node_count()) : spice.dc(net.node_count());
    const MultimeterSetting& leads = desk.bag.multimeter.setting;
    return volts[static_cast<std::size_t>(leads.red)] - volts[static_cast<std::size_t>(leads.black)];
}

double spice_ac_v(Desk& desk) {
    return std::abs(spice_v(desk, true));
}

/// Ohms between the leads, by hand from ngspice's voltage: the source of 1 V behind 1 Mohm.
double spice_ohm(Desk& desk) {
    const double volts = spice_v(desk, false).real();
    return 1e6 * volts / (1.0 - volts);
}

constexpr double kLeadsOhm = 0.2;

void check_ohms(Desk& desk, const std::string& red, const std::string& black, double low, double high) {
    const Value shown = desk.measure(Function::ohms, red, black);
    const double spice = spice_ohm(desk);
    INFO(red << " to " << black << ": shows " << desk.window() << ", ngspice " << spice);
    CHECK(fits(shown, spice + kLeadsOhm));
    CHECK(spice >= low);
    CHECK(spice <= high);
    CHECK(is_settled(desk.bag.multimeter.display));
}

} // namespace

TEST_CASE("volts on the running furnace agree with ngspice on every function") {
    Desk desk(240.0);
    for (const auto& [red, black] : {std::pair<std::string, std::string>{"board.line", "board.neutral"},
                                     {"board.R", "board.C"},
                                     {"board.W", "board.C"},
                                     {"valve.hot", "valve.common"},
                                     {"limit.in", "limit.out"},
                                     {"board.park_1", "board.neutral"},
                                     {"board.flame", "board.neutral"},
                                     {"blower_capacitor.a", "blower_capacitor.b"}})
        for (const Function function : {Function::ac_volts, Function::low_z_volts}) {
            const Value shown = desk.measure(function, red, black);
            const double spice = spice_ac_v(desk);
            INFO(red << " to " << black << " on " << function_row(function).id << ": shows " << desk.window()
                     << ", ngspice " << spice);
            CHECK(fits(shown, spice));
        }
}

TEST_CASE("the sense voltage of the flame circuit falls on low impedance: loading, not a fault") {
    Desk desk(3.0);
    desk.lift("board.flame"); // nothing but the meter behind 3.3 Mohm
    const Value high_z = desk.measure(Function::ac_volts, "board.flame", "board.neutral");
    const double spice_high_z = spice_ac_v(desk);
    const Value low_z = desk.measure(Function::low_z_volts, "board.flame", "board.neutral");
    CHECK(fits(high_z, spice_high_z));
    CHECK(fits(low_z, spice_ac_v(desk)));
    // By hand: 120 V x 10 / 13.3 (and stray capacitance takes a little), 120 V x 3 / 3,303.
    CHECK(high_z.value == Approx(90.2).epsilon(0.03));
    CHECK(low_z.value == Approx(0.109).epsilon(0.06));
}

TEST_CASE("an open W beside live wires shows a ghost on 10 Mohm and nothing on low impedance") {
    Desk desk(8.0); // the call is there
    desk.rig.open("thermostat.wire_W");
    const Value ghost = desk.measure(Function::ac_volts, "board.W.lug", "board.C");
    CHECK(fits(ghost, spice_ac_v(desk)));
    desk.lift("board.W"); // so that the board's own 1.5 kohm does not load it
    const Value floating = desk.measure(Function::ac_volts, "board.W.lug", "board.C");
    CHECK(fits(floating, spice_ac_v(desk)));
    CHECK(floating.value >= 3.0); // common practice, no source: 3-15 V beside a 24 V wire
    CHECK(floating.value <= 15.0);
    const Value low_z = desk.measure(Function::low_z_volts, "board.W.lug", "board.C");
    CHECK(fits(low_z, spice_ac_v(desk)));
    CHECK(low_z.value < 1.0);
}

TEST_CASE("an open neutral is no ghost: high on both settings") {
    Desk desk(3.0);
    desk.rig.open("cabinet.neutral_to_board");
    const Value line_to_neutral = desk.measure(Function::ac_volts, "board.line", "board.neutral");
    CHECK(line_to_neutral.value < 5.0);
    const Value high_z = desk.measure(Function::ac_volts, "board.neutral", "cabinet.metal");
    CHECK(fits(high_z, spice_ac_v(desk)));
    CHECK(high_z.value == Approx(120.0).epsilon(0.03));
    const Value low_z = desk.measure(Function::low_z_volts, "board.neutral", "cabinet.metal");
    CHECK(fits(low_z, spice_ac_v(desk)));
    CHECK(low_z.value > 50.0); // common practice, no source
}

TEST_CASE("ohms with the power off read every path in parallel, and the part alone when it is pulled") {
    Desk desk(3.0);
    desk.power_off();
    // The valve's coil is 40 ohm; its circuit offers the board's sense resistor beside it.
    check_ohms(desk, "valve.hot", "valve.common", 39.0, 40.2);
    check_ohms(desk, "igniter_plug.line", "igniter_plug.neutral", 40.0, 90.0);
    check_ohms(desk, "transformer.hot", "transformer.common", 0.5, 1.0);
    check_ohms(desk, "transformer.line", "transformer.neutral", 12.0, 15.0);
    check_ohms(desk, "limit.in", "limit.out", 0.005, 0.02);
    // Across the open pressure switch there is no open circuit: the board's inputs are in parallel.
    check_ohms(desk, "pressure_switch.in", "pressure_switch.out", 100.0, 40e3);
    desk.lift("pressure_switch.in");
    desk.measure(Function::ohms, "pressure_switch.in.pin", "pressure_switch.out.pin");
    CHECK(desk.window() == "OL");
    CHECK(spice_ohm(desk) > 40e6);
    // An open coil: the rest of the circuit still reads something; pulled, it reads OL.
    desk.rig.open("valve.coil");
    check_ohms(desk, "valve.hot", "valve.common", 100.0, 40e3);
    desk.lift("valve.hot");
    desk.measure(Function::ohms, "valve.hot.pin", "valve.common.pin");
    CHECK(desk.window() == "OL");
    CHECK(spice_ohm(desk) > 40e6);
}

TEST_CASE("ohms behind an open door switch, the line still live in front of it, are steady and right") {
    Desk desk(3.0);
    desk.rig.world.inputs.blower_door_on = 0;
    desk.seconds(60.0);
    CHECK(desk.measure(Function::ac_volts, "door_switch.in", "cabinet.metal").value > 115.0);
    check_ohms(desk, "valve.hot", "valve.common", 39.0, 40.2);
    check_ohms(desk, "igniter_plug.line", "igniter_plug.neutral", 40.0, 90.0);
    check_ohms(desk, "transformer.hot", "transformer.common", 0.5, 1.0);
    check_ohms(desk, "blower.common", "blower.medium_low", 1.0, 5.0);
}

TEST_CASE("microamps in series with the flame: the shunt's burden is in the circuit") {
    Desk desk(240.0);
    desk.in_series(Function::dc_microamps, "board.flame");
    desk.seconds(5.0);
    const Value shown = value_of(desk.bag.multimeter.display);
    const double spice = spice_v(desk, false).real() / function_row(Function::dc_microamps).ohm;
    INFO("shows " << desk.window() << ", ngspice " << spice);
    CHECK(shown.value > 2e-6); // red on the board: current goes from the board into the flame
    CHECK(shown.value < 6e-6); // common practice, no source
    CHECK(fits(shown, spice));
    // The same flame at the same moment with and without the meter, where the board senses it. Closed form of
    // the half-wave average: current goes as 1/(R + 1/g), here 1/(3.3 Mohm + 10 Mohm); the flame is stronger
    // or weaker than at the factory by some percent, and so is the second digit of what the shunt takes.
    const auto board_senses = [&](const furnace::Inputs& inputs) {
        const bench::World& w = desk.rig.world;
        furnace::solve_ac(desk.rig.model, w.state, w.condition, inputs, desk.rig.workspace);
        el::Workspace& network = desk.rig.workspace.network;
        const el::DcSolution dc = network.solve_dc(furnace::port_inputs(desk.rig.model, w.state));
        return network.dc_sense(dc, desk.rig.model.wiring.flame_sense);
    };
    furnace::Inputs without = desk.rig.world.inputs;
    without.attachments = {};
    without.parted = {};
    const double share = 1.0 - board_senses(desk.rig.world.inputs) / board_senses(without);
    CHECK(share == Approx(2e3 / 13.3e6).epsilon(0.15));
    // The other way round: a negative sign.
    std::swap(desk.bag.multimeter.setting.red, desk.bag.multimeter.setting.black);
    desk.seconds(5.0);
    CHECK(value_of(desk.bag.multimeter.display).value == Approx(-shown.value).epsilon(0.02));
    CHECK(desk.window()[0] == '-');
}

TEST_CASE("amps in series: the igniter's current through 0.03 ohm") {
    Desk desk(38.0); // igniter warm
    desk.in_series(Function::ac_amps, "igniter_plug.line");
    desk.seconds(1.5);
    const Value shown = value_of(desk.bag.multimeter.display);
    const double spice = spice_ac_v(desk) / function_row(Function::ac_amps).ohm;
    INFO("shows " << desk.window() << ", ngspice " << spice);
    CHECK(shown.value == Approx(spice).epsilon(0.02)); // it still warms while the window follows
    CHECK(spice > 2.0);
    CHECK(spice < 4.6);
}

TEST_CASE("ohms on a live circuit are off by what ngspice finds across the leads") {
    // A twentieth of the AC volts, another part at every number, adds to what 600 ohm full scale drop: 0.6 V.
    constexpr double kTestA = 1e-3;
    const auto numbers_of = [](Desk& desk) {
        std::vector<Display> all;
        for (int i = 0; i < 240; ++i) {
            desk.ticks(5);
            all.push_back(desk.bag.multimeter.display);
        }
        return all;
    };
    SECTION("a closed switch that carries current: ohms too many or too few, some below nothing") {
        Desk desk(240.0);
        desk.leads(Function::ohms, "pressure_switch.in", "pressure_switch.out");
        desk.seconds(1.0);
        const double off_ohm = spice_ac_v(desk) / 20.0 / kTestA;
        const double true_ohm = spice_ohm(desk) + kLeadsOhm;
        double least = 1e9;
        double most = -1e9;
        for (const Display& shown : numbers_of(desk)) {
            const Value value = value_of(shown);
            REQUIRE(value.known);
            CHECK(std::abs(value.value - true_ohm) <= off_ohm + value.half_width);
            least = std::min(least, value.value);
            most = std::max(most, value.value);
        }
        INFO(least << " to " << most << " ohm, ngspice " << true_ohm << " and " << off_ohm << " either way");
        CHECK(off_ohm > 0.2);
        CHECK(most - least > 1.5 * off_ohm);
    }
    SECTION("24 V: OL as often as that part is more than the meter's 1 V") {
        Desk desk(3.0);
        desk.leads(Function::ohms, "board.R", "board.C");
        desk.seconds(1.0);
        const double off_v = spice_ac_v(desk) / 20.0;
        CHECK(off_v > 1.0);
        int overload = 0;
        int negative = 0;
        for (const Display& shown : numbers_of(desk)) {
            overload += shown.has(kOverload) ? 1 : 0;
            negative += !shown.has(kOverload) && shown.mantissa < 0 ? 1 : 0;
        }
        CHECK(overload / 240.0 == Approx(1.0 - 1.0 / off_v).margin(0.1));
        CHECK(negative / 240.0 == Approx(0.5 / off_v).margin(0.1));
    }
}

TEST_CASE("a meter with its fuse blown is an open circuit, to the furnace and to ngspice") {
    SECTION("microamps in series with the flame: nothing flows, and the leads have the sense voltage") {
        Desk desk(240.0);
        desk.bag.multimeter.state.microamp_fuse_blown = 1;
        desk.in_series(Function::dc_microamps, "board.flame");
        desk.seconds(0.5); // it still burns
        REQUIRE(desk.rig.world.state.signals.gas.burners_total_m3_s > 0.0);
        CHECK(std::abs(value_of(desk.bag.multimeter.display).value) < 0.03e-6);
        const double ohm = attachment_of(desk.bag.multimeter).ohm;
        CHECK(std::abs(spice_v(desk, false).real()) / ohm < 1e-10);
        CHECK(spice_ac_v(desk) / ohm < 1e-10);
        CHECK(spice_ac_v(desk) > 60.0);
    }
    SECTION("amps across the line: nothing flows, and the leads have the line's volts") {
        Desk desk(3.0);
        desk.leads(Function::ac_amps, "board.line", "board.neutral");
        desk.seconds(3.0);
        REQUIRE(desk.bag.multimeter.state.amp_fuse_blown == 1);
        CHECK(fits(value_of(desk.bag.multimeter.display), 0.0));
        CHECK(spice_ac_v(desk) == Approx(120.0).epsilon(0.02));
        CHECK(spice_ac_v(desk) / attachment_of(desk.bag.multimeter).ohm < 1e-10);
        const Value volts = desk.measure(Function::ac_volts, "board.line", "board.neutral");
        CHECK(fits(volts, spice_ac_v(desk)));
    }
}
