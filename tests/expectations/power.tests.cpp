// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string_view>
#include <utility>

// 120 V, 24 V, the control fuse, the thermostat and its cable.

using namespace lightoff::test;

namespace {

/// Both doors off, the door switch taped, 24 V where they come.
Technician at_the_board(Technician t) {
    t.drive("blower-door off; tape on");
    return t;
}

} // namespace

// ---- chain: R and C shorted in the cable

TEST_CASE("R-C short in the cable: the lamp is dark", "[power][common practice, no source]") {
    CHECK(found("shorted-cable").lamp() == "dark");
}

TEST_CASE("R-C short in the cable: 26 to 27 V on the secondary, R to C 0",
          "[power][common practice, no source]") {
    Technician t = at_the_board(found("shorted-cable"));
    t.drive("leads transformer.hot transformer.common");
    CHECK(t.reading() >= 26.0);
    CHECK(t.reading() <= 27.5);
    t.drive("leads board.R board.C");
    CHECK(t.reading() < 0.2);
}

TEST_CASE("R-C short in the cable: the whole 27 V stand across the blown fuse",
          "[power][common practice, no source]") {
    Technician t = at_the_board(found("shorted-cable"));
    t.drive("leads board.secondary_hot board.R");
    CHECK(t.reading() == Approx(27.0).margin(0.7));
    t.drive("look board_fuse");
    CHECK(t.noticed("the link is gone") == 1);
}

TEST_CASE("R-C short in the cable: the new fuse blows at once", "[power][common practice, no source]") {
    Technician t = at_the_board(found("shorted-cable"));
    t.drive("disconnect off; replace board_fuse; look board_fuse");
    CHECK(t.noticed("the link is whole") == 1);
    t.drive("disconnect on; wait 1s; look board_fuse");
    CHECK(t.noticed("the link is gone") == 1);
    CHECK(t.lamp() == "dark");
}

TEST_CASE("R-C short in the cable: with R and W lifted the new fuse holds and the lamp winks",
          "[power][common practice, no source]") {
    Technician t = at_the_board(found("shorted-cable"));
    REQUIRE(t.lamp() == "dark");
    t.drive("disconnect off; lift board.R; lift board.W; replace board_fuse; disconnect on; wait 30s");
    t.drive("look board_fuse");
    CHECK(t.noticed("the link is whole") == 1);
    CHECK(t.lamp() == kWink);
}

TEST_CASE("R-C short in the cable: a small breaker in the fuse's place snaps out, and holds with R lifted",
          "[power][common practice, no source]") {
    Technician t = at_the_board(found("shorted-cable"));
    t.drive("disconnect off; small-breaker board.secondary_hot board.R; disconnect on");
    t.await("The small breaker snaps out", 30.0);
    t.drive("disconnect off; lift board.R; small-breaker-reset; disconnect on");
    t.forget();
    t.drive("wait 2min");
    CHECK(t.noticed("The small breaker snaps out") == 0);
}

// ---- chafed valve wire

TEST_CASE("valve wire chafed: with a new fuse it dies at the trial, not before",
          "[power][common practice, no source]") {
    Technician t = at_the_board(found("chafed-wire"));
    t.drive("disconnect off; replace board_fuse; leads board.R board.C; disconnect on");
    t.await("Lamp: 2 flashes"); // draft proved
    CHECK(t.reading() >= 24.0);
    t.await("multimeter", below(1.0), 60.0);
    CHECK(t.noticed("burners light") == 0);
    CHECK(t.lamp() == "dark");
    t.drive("look board_fuse");
    CHECK(t.noticed("the link is gone") == 1);
}

// ---- burnt terminals

TEST_CASE("24 V lead burnt at its terminal: 24 V at rest, under 20 with the valve on, the secondary good",
          "[power][common practice, no source]") {
    Technician t = at_the_board(with({{"transformer_lead_burnt", 0.66}}));
    t.drive("leads board.R board.C");
    CHECK(t.reading() >= 24.0);
    t.drive("thermostat-set 84F");
    t.await("multimeter", below(20.0), 90.0);
    t.drive("leads transformer.hot transformer.common");
    CHECK(t.reading() >= 24.0);
}

TEST_CASE("24 V lead burnt at its terminal: the board dies at the trial and starts over, again and again",
          "[power][common practice, no source]") {
    Technician t = with({{"transformer_lead_burnt", 0.66}});
    t.drive("thermostat-set 84F; wait 5min");
    CHECK(t.noticed("Inducer: a whirr rises") >= 4);
    CHECK(t.noticed("burners light") == 0);
}

TEST_CASE("valve's wire burnt at its terminal: 24 V at the board, too little at the valve, no click",
          "[power][common practice, no source]") {
    Technician t = with({{"valve_terminal_burnt", 0.3}});
    t.drive(kOffBoth).drive("leads valve.hot valve.common").drive(kCall);
    t.await("multimeter", above(5.0));
    t.drive("wait 2s");
    CHECK(t.shows("multimeter") < 18.0);
    CHECK(t.noticed("The gas valve clicks") == 0);
    t.await("multimeter", below(1.0));
    t.drive("leads board.valve_feed board.C");
    CHECK(t.await("multimeter", above(24.0)) > 0.0);
}

TEST_CASE("valve's wire burnt at its terminal: with the load off it reads 24 V and nothing wrong",
          "[power][common practice, no source]") {
    const auto at_the_trial = [](std::string_view load) {
        Technician t = with({{"valve_terminal_burnt", 0.3}});
        t.drive(kOffBoth).drive(load).drive("leads valve.hot.lug valve.common").drive(kCall);
        t.await("multimeter", above(5.0));
        t.drive("wait 2s");
        return t.shows("multimeter");
    };
    CHECK(at_the_trial("wait 1s") < 18.0);
    CHECK(at_the_trial("lift valve.hot") >= 24.0);
}

TEST_CASE("disconnect burnt: 120 V at rest, far less as soon as something draws, the rest across its blade",
          "[power][common practice, no source]") {
    Technician t = at_the_board(found("burnt-disconnect"));
    t.drive("thermostat-mode off; leads board.line board.neutral; wait 30s");
    CHECK(t.reading() > 117.0);
    t.drive("thermostat-mode heat");
    t.await("Inducer: a steady whirr");
    CHECK(t.reading() < 108.0);
    t.drive("leads disconnect.line_in disconnect.line_out");
    CHECK(t.reading() > 12.0);
}

// ---- neutral and ground

TEST_CASE("neutral open: line to neutral about 0 V at the board", "[power][common practice, no source]") {
    Technician t = at_the_board(with({{"neutral_open"}}));
    t.drive("leads board.line board.neutral");
    CHECK(t.reading() < 3.0);
    CHECK(t.lamp() == "dark");
}

TEST_CASE("neutral open: its broken side reads 120 V to ground, and 50 V or more on low impedance",
          "[power][common practice, no source]") {
    Technician t = at_the_board(with({{"neutral_open"}}));
    t.drive("leads board.neutral cabinet.metal");
    CHECK(t.reading() == Approx(120.0).margin(6.0));
    t.drive("meter low-z-volts");
    CHECK(t.reading() >= 50.0);
}

// ---- chain: W open between thermostat and board

TEST_CASE("W open: R to C 26 V, W to C about 0 at the board", "[call][common practice, no source]") {
    Technician t = at_the_board(with({{"w_wire_open"}}, 5.0));
    t.drive("leads board.R board.C");
    CHECK(t.reading() == Approx(26.5).margin(1.0));
    t.drive("leads board.W board.C");
    CHECK(t.reading() < 1.0);
}

TEST_CASE("W open: at the thermostat W to C reads what R to C reads, and R to W 0",
          "[call][common practice, no source]") {
    Technician t = with({{"w_wire_open"}}, 5.0);
    t.drive("leads thermostat.R thermostat.C");
    const double r_to_c = t.reading();
    t.drive("leads thermostat.W thermostat.C");
    CHECK(t.reading() == Approx(r_to_c).margin(0.2));
    CHECK(r_to_c > 24.0);
    t.drive("leads thermostat.R thermostat.W");
    CHECK(t.reading() < 0.1);
    CHECK(t.noticed("No sound from the furnace") == 1);
}

TEST_CASE("W open: the lamp winks as at rest and shows no fault", "[call][common practice, no source]") {
    CHECK(with({{"w_wire_open"}}, 25.0).lamp() == kWink);
}

TEST_CASE("W open: a jumper from R to W at the board runs the furnace",
          "[call][common practice, no source]") {
    Technician t = at_the_board(with({{"w_wire_open"}}, 5.0));
    t.drive("jumper board.R board.W");
    t.await("burners light", 90.0);
    t.drive("jumper-off");
    t.await("The burners' roar stops", 2.0);
}

TEST_CASE(
    "thermostat not calling, whatever the reason: R to C good, W to C 0, and the jumper runs the furnace",
    "[call][common practice, no source]") {
    for (const char* reason :
         {"thermostat_batteries_flat", "thermostat_contact_open", "thermostat_reads_high"}) {
        INFO(reason);
        Technician t = with({{reason}}, 5.0);
        CHECK(t.lamp() == kWink);
        t = at_the_board(std::move(t));
        t.drive("leads board.R board.C");
        CHECK(t.reading() >= 24.0);
        t.drive("leads board.W board.C");
        CHECK(t.reading() < 1.0);
        t.drive("jumper board.R board.W");
        t.await("burners light", 90.0);
    }
}

// ---- inputs right, output wrong

TEST_CASE("inducer relay dead: the lamp counts 1, and the inducer's plug has no voltage",
          "[power][common practice, no source]") {
    Technician t = with({{"inducer_relay_dead"}});
    t.drive("burner-door off; leads inducer_plug.line inducer_plug.neutral; thermostat-set 84F; wait 20s");
    CHECK(t.shows("multimeter") < 1.0);
    CHECK(t.noticed("Lamp: 1 flash") == 1);
}

TEST_CASE("board deaf to the pressure switch: 24 V on both its sides with the inducer running, and count 1",
          "[power][common practice, no source]") {
    Technician t = found("deaf-board");
    CHECK(t.lamp() == held(1));
    t.drive(kOffBoth).drive("leads board.pressure_return board.C").drive(kCall);
    t.await("Inducer: a steady whirr");
    CHECK(t.reading() >= 24.0); // behind the closed switch, at the board's own terminal
    t.drive("wait 30s");
    CHECK(t.noticed("Igniter: glows") == 0);
}

// ---- what opening and reading do

TEST_CASE("the blower door off and on again: the lamp has forgotten the last stop",
          "[power][common practice, no source]") {
    Technician t = found("plugged-hose");
    CHECK(t.lamp() == held(1));
    t.drive("thermostat-mode off; blower-door off; blower-door on");
    CHECK(t.lamp() == kWink);
}

TEST_CASE("0 V across a switch: closed, or no feed; only to C can the two be told apart",
          "[power][common practice, no source]") {
    Technician t = with({{"limit_wire_open"}, {"hose_off"}}, 5.0);
    t.drive("burner-door off; leads pressure_switch.in pressure_switch.out");
    CHECK(t.reading() < 0.5); // open, and not fed
    t.drive("leads limit.in limit.out");
    CHECK(t.reading() < 0.5); // closed
    t.drive("leads limit.in valve.common");
    CHECK(t.reading() < 0.5); // its feed is gone: the wire to it is the fault
    t.drive("leads rollout.out valve.common");
    CHECK(t.reading() > 24.0);
}

TEST_CASE("24 V never falls under 20 with all its loads on", "[power][common practice, no source]") {
    Technician t = at_the_board(sound());
    t.drive("leads board.R board.C; thermostat-set 84F");
    double lowest = 99.0;
    for (int i = 0; i < 90; ++i) { // through the trial, its valve and relays
        t.drive("wait 1s");
        lowest = std::min(lowest, t.shows("multimeter"));
    }
    CHECK(t.noticed("burners light") == 1);
    CHECK(lowest >= 20.0);
}

TEST_CASE("locked out: nothing for an hour, then it tries again by itself",
          "[power][common practice, no source]") {
    Technician t = found("plugged-hose"); // the lockout began some minutes before
    t.forget();
    t.drive("wait 30min");
    CHECK(t.noticed("Inducer:") == 0);
    CHECK(t.lamp() == held(1));
    t.await("Inducer: a whirr rises", 1800.0);
}

TEST_CASE("locked out: the thermostat turned off and on ends it at once",
          "[power][common practice, no source]") {
    Technician t = found("plugged-hose");
    t.drive("thermostat-mode off; wait 5s; thermostat-mode heat");
    t.await("Inducer: a whirr rises", 5.0);
}
