// SPDX-License-Identifier: MIT
//
// What a meter reads on the reference furnace's wiring. Ranges are common practice, no source, unless said.
#include "moments.hpp"

#include "bench/access.hpp"
#include "units/fields.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace lightoff;
using namespace lightoff::test;

namespace {

constexpr double kMeterOhm = 10e6;
constexpr double kLowImpedanceOhm = 3e3;

/// Volts that a voltmeter shows which loads the circuit with `ohm`.
double metered_v(Rig& rig, const std::string& a, const std::string& b, double ohm) {
    electrical::Attachment& meter = rig.world.inputs.attachments[3];
    meter = {};
    meter.a = rig.model.find_test_point(a);
    meter.b = rig.model.find_test_point(b);
    meter.ohm = ohm;
    REQUIRE(meter.a >= 0);
    REQUIRE(meter.b >= 0);
    const double shown = rig.volts(a, b);
    meter = {};
    return shown;
}

void check_ghost(Rig& rig, const std::string& piece, const std::string& against, double low_v,
                 double high_v) {
    INFO(piece << " to " << against);
    CHECK(metered_v(rig, piece, against, kMeterOhm) >= low_v);
    CHECK(metered_v(rig, piece, against, kMeterOhm) <= high_v);
    CHECK(metered_v(rig, piece, against, kLowImpedanceOhm) < 1.0);
}

} // namespace

TEST_CASE("what a technician measures electrically has places to put the probes on") {
    const furnace::Model& model = reference_model();
    // Line volts, polarity and ground, control volts, call, each switch of the valve's path before and
    // behind, igniter, flame current in series with the lead, valve, blower and inducer leads, capacitors.
    for (const std::string place : {"board.line",
                                    "board.neutral",
                                    "board.R",
                                    "board.C",
                                    "board.W",
                                    "board.G",
                                    "board.Y",
                                    "board.flame",
                                    "board.rollout_feed",
                                    "board.rollout_return",
                                    "board.limit_feed",
                                    "board.limit_return",
                                    "board.pressure_feed",
                                    "board.pressure_return",
                                    "board.valve_feed",
                                    "board.valve_return",
                                    "board.inducer_line",
                                    "board.inducer_neutral",
                                    "board.igniter_line",
                                    "board.igniter_neutral",
                                    "board.blower_heat",
                                    "board.blower_cool",
                                    "board.blower_neutral",
                                    "board.park_1",
                                    "board.park_2",
                                    "board.transformer_line",
                                    "board.transformer_neutral",
                                    "board.secondary_hot",
                                    "board.secondary_common",
                                    "rollout.in",
                                    "rollout.out",
                                    "limit.in",
                                    "limit.out",
                                    "pressure_switch.in",
                                    "pressure_switch.out",
                                    "valve.hot",
                                    "valve.common",
                                    "igniter_plug.line",
                                    "igniter_plug.neutral",
                                    "inducer_plug.line",
                                    "inducer_plug.neutral",
                                    "rod.lead",
                                    "blower_capacitor.a",
                                    "blower_capacitor.b",
                                    "inducer_capacitor.a",
                                    "inducer_capacitor.b",
                                    "transformer.line",
                                    "transformer.neutral",
                                    "transformer.hot",
                                    "transformer.common",
                                    "thermostat.R",
                                    "thermostat.W",
                                    "thermostat.G",
                                    "thermostat.C",
                                    "door_switch.in",
                                    "door_switch.out",
                                    "junction.line",
                                    "junction.neutral",
                                    "junction.ground",
                                    "disconnect.line_in",
                                    "disconnect.line_out",
                                    "disconnect.neutral",
                                    "panel.line",
                                    "panel.neutral",
                                    "panel.ground",
                                    "cabinet.ground_screw"})
        for (const std::string side : {".pin", ".lug"}) {
            INFO(place << side);
            const int node = model.find_test_point(place + side);
            REQUIRE(node > 0);
            CHECK(bench::is_test_point(model, node));
            CHECK_FALSE(bench::is_test_point(model, model.find_test_point("utility.line")));
        }
    for (const std::string metal : {"cabinet.metal", "burner.metal"})
        CHECK(bench::is_test_point(model, model.find_test_point(metal)));
}

TEST_CASE("every terminal is a pin and a lug with a joint between, and its part has a place") {
    const furnace::Model& model = reference_model();
    const el::Netlist& net = model.wiring.netlist;
    int terminals = 0;
    for (const std::string& name : net.node_names) {
        if (name.size() < 4 || name.substr(name.size() - 4) != ".lug")
            continue;
        ++terminals;
        const std::string terminal = name.substr(0, name.size() - 4);
        INFO(terminal);
        const int lug = model.find_test_point(terminal + ".lug");
        const int pin = model.find_test_point(terminal + ".pin");
        CHECK(lug > 0);
        CHECK(pin > 0);
        CHECK(lug != pin);
        const el::Element& joint = net.elements[static_cast<std::size_t>(net.element(terminal + ".joint"))];
        CHECK(std::minmax(joint.a, joint.b) == std::minmax(lug, pin));
        const std::string part = terminal.substr(0, terminal.find('.'));
        CHECK(std::any_of(model.places.begin(), model.places.end(),
                          [&](const furnace::Place& place) { return place.part == part; }));
    }
    CHECK(terminals > 60);
}

TEST_CASE("every joint stands in the way of a current: not two wires on one lug and nothing on the pin") {
    const el::Netlist& net = reference_model().wiring.netlist;
    const auto hangs_on = [&](int node) {
        int count = 0;
        for (std::size_t i = 0; i < net.elements.size(); ++i)
            if (net.element_names[i].find('~') == std::string::npos &&
                (net.elements[i].a == node || net.elements[i].b == node))
                ++count;
        return count;
    };
    for (std::size_t i = 0; i < net.elements.size(); ++i) {
        const std::string& name = net.element_names[i];
        if (name.size() < 6 || name.substr(name.size() - 6) != ".joint")
            continue;
        INFO(name);
        CHECK(hangs_on(net.elements[i].a) <= 2); // the joint and one wire
        if (name.find("park") == std::string::npos)
            CHECK(hangs_on(net.elements[i].b) >= 2);
    }
}

TEST_CASE("without the utility's voltage every node is at exactly 0 V, whatever moves and burns") {
    // So nothing but the network's one source makes a voltage.
    for (const Moment& moment : moments_of_a_call()) {
        INFO(moment.name);
        const el::Netlist& net = reference_model().wiring.netlist;
        el::Workspace workspace(net);
        el::NetworkInputs dead = moment.inputs;
        dead.source_factor.fill(0.0);
        const Solved s = solve(net, workspace, moment.condition, dead, moment.ports);
        double most_v = 0.0;
        for (std::size_t i = 0; i < net.node_names.size(); ++i)
            most_v = std::max({most_v, abs(s.ac_v[i]), std::abs(s.dc_v[i])});
        CHECK(most_v == 0.0);

        const Solved live = solve(net, workspace, moment.condition, moment.inputs, moment.ports);
        CHECK(abs(live.ac_v[static_cast<std::size_t>(reference_model().find_test_point("board.R"))]) > 20.0);
    }
}

TEST_CASE("no voltage of the wiring is state") {
    bench::World world;
    int numbers = 0;
    units::for_each_field(world.state, [&](const std::string& path, std::string_view unit, const auto&) {
        ++numbers;
        INFO(path);
        CHECK(unit != "V");
        CHECK(unit != "mV");
    });
    CHECK(numbers > 100);
}

TEST_CASE("idle speed taps of the running blower motor carry 60-150 V") {
    Rig rig;
    rig.run(240.0);
    REQUIRE(rig.read("blower speed") > 700.0);
    for (const std::string tap : {"board.blower_cool", "board.park_1", "board.park_2"}) {
        INFO(tap);
        CHECK(metered_v(rig, tap, "board.neutral", kMeterOhm) >= 60.0);
        CHECK(metered_v(rig, tap, "board.neutral", kMeterOhm) <= 150.0);
        CHECK(metered_v(rig, tap, "board.neutral", kLowImpedanceOhm) > 50.0); // no ghost: a winding feeds it
    }
}

TEST_CASE("an open W in the cable shows ghost volts: 3-15 V, under 1 V on low impedance") {
    Rig rig;
    rig.run(3.0); // standby, R is live
    SECTION("open at the board") {
        rig.open("board.W.joint");
        check_ghost(rig, "board.W.lug", "board.C", 3.0, 15.0);
    }
    SECTION("open in the middle, at the thermostat") {
        rig.open("thermostat.wire_W");
        check_ghost(rig, "thermostat.W.lug", "thermostat.C", 3.0, 15.0);
    }
}

TEST_CASE("a conductor cut off beside a live 120 V wire shows 5-60 V, under 1 V on low impedance") {
    Rig rig;
    REQUIRE(rig.run_until(60.0, [](const Rig& r) { return r.board_state() == "prepurge"; })); // inducer runs
    rig.open("igniter_plug.line.joint"); // the igniter's line wire, its plug pulled
    check_ghost(rig, "igniter_plug.line.lug", "cabinet.metal", 5.0, 60.0);
}

TEST_CASE("every terminal has a joint between its pin and its lug") {
    const furnace::Wiring& wiring = reference_model().wiring;
    REQUIRE(wiring.terminals.size() > 50);
    for (const furnace::Terminal& t : wiring.terminals) {
        INFO(t.name);
        CHECK(wiring.joint_of_terminal(t.name) == t.joint);
        CHECK(wiring.find_place(t.name + ".pin") == t.pin);
        CHECK(wiring.find_place(t.name + ".lug") == t.lug);
        const electrical::Element& joint = wiring.netlist.elements[static_cast<std::size_t>(t.joint)];
        CHECK(joint.a == t.lug);
        CHECK(joint.b == t.pin);
    }
    CHECK(wiring.joint_of_terminal("board.W.pin") == -1);
    CHECK(wiring.joint_of_terminal("") == -1);
}

TEST_CASE("a wire lifted off its terminal does what a cut one does; back on, nothing of it is left") {
    Rig lifted;
    lifted.run(240.0);
    REQUIRE(lifted.board_state() == "run");
    const Rig before = lifted;
    Rig cut = lifted;
    const furnace::Condition condition = lifted.world.condition;
    electrical::set_element(lifted.world.inputs.parted, lifted.model.wiring.joint_of_terminal("board.W"),
                            true);
    cut.open("board.W.joint");
    lifted.run(30.0);
    cut.run(30.0);
    CHECK(lifted.board_state() != "run");
    CHECK(units::hash_fields(lifted.world.state) == units::hash_fields(cut.world.state));
    CHECK(units::hash_fields(lifted.world.condition) == units::hash_fields(condition));
    lifted.world.inputs.parted = {};
    CHECK(units::hash_fields(lifted.world.inputs) == units::hash_fields(before.world.inputs));
    CHECK(lifted.volts("board.W", "board.C") == Approx(26.0).margin(2.5));
}

TEST_CASE("an open neutral is no ghost: it is fed through the loads") {
    Rig rig;
    rig.run(3.0);
    for (const std::string open : {"cabinet.neutral_to_board", "whip.neutral", "junction.neutral.joint"}) {
        Rig broken = rig;
        broken.open(open);
        INFO(open);
        CHECK(metered_v(broken, "board.line", "board.neutral", kMeterOhm) < 3.0);
        CHECK(metered_v(broken, "board.neutral", "cabinet.metal", kMeterOhm) == Approx(120.0).margin(6.0));
        CHECK(metered_v(broken, "board.neutral", "cabinet.metal", kLowImpedanceOhm) >= 50.0);
    }
}

TEST_CASE("a 10 Mohm meter on the flame terminal reads 80-100 V AC") {
    Rig rig;
    rig.run(3.0);
    CHECK(metered_v(rig, "board.flame", "cabinet.metal", kMeterOhm) >= 80.0);
    CHECK(metered_v(rig, "board.flame", "cabinet.metal", kMeterOhm) <= 100.0);
}

TEST_CASE("polarity and ground: L-G 120 V, N-G under 2 V, running") {
    Rig rig;
    rig.run(240.0);
    CHECK(metered_v(rig, "board.line", "cabinet.metal", kMeterOhm) == Approx(120.0).margin(6.0));
    CHECK(metered_v(rig, "board.neutral", "cabinet.metal", kMeterOhm) < 2.0);
}
