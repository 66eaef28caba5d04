// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"
#include "units/convert.hpp"

#include <string>

// Fifteen chains of evidence that students meet most: what broke, what it reads at the places where a
// technician puts a meter or a manometer, at which step the sequence stops, how often it tries, what the lamp
// counts. One number of the Condition is changed in each; the readings are common practice without a single
// published source (CP).

using lightoff::test::Rig;
namespace units = lightoff::units;

namespace {

const std::string kTrial = "board, burner: Trial for ignition, igniter on";

bool is_locked_out(const Rig& r) {
    return r.board_state() == "soft_lockout";
}

bool in_state(Rig& r, const std::string& state, double limit_s = 200.0) {
    return r.run_until(limit_s, [&](const Rig& rig) { return rig.board_state() == state; }).has_value();
}

double inwc(double pa) {
    return units::pa_to_inwc(pa);
}

/// Three trials, then the count of 3 and the long glow.
void check_three_trials(Rig& r) {
    REQUIRE(r.run_until(600.0, is_locked_out));
    r.run(5.0);
    CHECK(r.count_of(kTrial) == 3);
    CHECK(r.lamp() == "held");
    CHECK(r.lamp_count() == 3);
}

/// Three tries for draft without an igniter, then the count of 1 and the long glow.
void check_no_draft(Rig& r) {
    REQUIRE(r.run_until(900.0, is_locked_out));
    r.run(5.0);
    CHECK(r.count_of(kTrial) == 0);
    CHECK_FALSE(r.time_of("board, burner: Igniter warm-up").has_value());
    CHECK(r.lamp() == "held");
    CHECK(r.lamp_count() == 1);
}

/// The limit opens, all of the evidence, and it restarts by itself.
void check_limit_cycling(Rig& r, double within_s) {
    REQUIRE(r.run_until(within_s, [](const Rig& rig) { return rig.world.state.heat.limit_open != 0; }));
    r.run(2.0);
    CHECK(r.read("across the limit") > 24.0);
    CHECK(r.read("across the pressure switch") < 0.2); // not because it is closed: its feed is gone
    CHECK(r.volts("pressure_switch.in", "board.C") < 0.5);
    CHECK(r.drives("inducer"));
    CHECK(r.drives("blower_heat"));
    CHECK(r.lamp_count() == 5);
    REQUIRE(r.run_until(900.0, [](const Rig& rig) { return rig.count_of(kTrial) >= 2; }));
    CHECK(r.read("across the limit") < 0.2);
    CHECK(r.lamp_count() == 5); // the interrupted trial's count shows on
}

} // namespace

TEST_CASE("chain: hose plugged") {
    Rig r;
    r.set("draft.sense_line.hose_plug", 1.0);
    r.run(40.0);
    CHECK(r.board_state() == "prove_draft");
    CHECK(r.read("inducer speed") > 2800.0);
    CHECK(r.read("across the pressure switch") > 24.0);
    CHECK(inwc(r.world.state.signals.draft.switch_side_suction_pa) == Approx(0.0).margin(0.02));
    CHECK(inwc(r.world.state.signals.draft.inducer_side_suction_pa) > 0.85); // full suction
    CHECK(r.read("igniter current") < 0.01);
    check_no_draft(r);
}

TEST_CASE("chain: port in the collector box plugged, rodded out") {
    Rig r;
    r.set("draft.sense_line.port_plug", 1.0);
    r.run(40.0);
    CHECK(r.read("inducer speed") > 2800.0);
    CHECK(r.read("suction at the port") > 0.85); // behind the plug, where no tee reaches
    CHECK(inwc(r.world.state.signals.draft.inducer_side_suction_pa) == Approx(0.0).margin(0.02));
    CHECK(inwc(r.world.state.signals.draft.switch_side_suction_pa) == Approx(0.0).margin(0.02));
    r.set("draft.sense_line.port_plug", 0.0);
    r.run(3.0);
    CHECK(inwc(r.world.state.signals.draft.switch_side_suction_pa) > 0.85);
    CHECK(r.senses("pressure_switch"));

    Rig left;
    left.set("draft.sense_line.port_plug", 1.0);
    check_no_draft(left);
}

TEST_CASE("chain: vent part-blocked: starts, drops out hot") {
    Rig r;
    r.set("draft.path.vent_blockage", 0.84);
    r.run(44.0);
    CHECK(r.senses("pressure_switch"));
    const double cold = r.read("suction at the port");
    REQUIRE(r.run_until(1200.0, [](const Rig& rig) { return rig.board_state() == "draft_lost"; }));
    CHECK(r.read("suction at the port") < cold - 0.05);
    CHECK(r.read("across the pressure switch") > 24.0);
    CHECK(r.lamp_count() >= 4);
    CHECK(r.lamp_count() <= 5);
    REQUIRE(r.run_until(3600.0, is_locked_out));
    CHECK(r.lamp() == "held");
    CHECK(r.lamp_count() >= 4);
}

TEST_CASE("chain: vent blocked in full") {
    Rig r;
    r.set("draft.path.vent_blockage", 1.0);
    r.run(40.0);
    CHECK(r.read("inducer speed") > 2800.0);
    CHECK(r.read("suction at the port") < 0.1);
    CHECK(r.read("vent connector pressure") > 0.5);
    check_no_draft(r);
}

TEST_CASE("chain: inducer dead, lead open or seized") {
    Rig open;
    open.open("inducer.lead_line");
    open.run(40.0);
    CHECK(open.read("inducer plug") > 115.0);
    CHECK(open.read("inducer current") < 0.01);
    CHECK(open.read("inducer speed") == 0.0);
    CHECK(open.read("suction at the port") < 0.05);
    check_no_draft(open);

    Rig sound;
    sound.run(40.0);
    Rig seized;
    seized.set("draft.inducer.bearing_drag_added", 10.0);
    seized.run(40.0);
    CHECK(seized.read("inducer plug") > 115.0);
    CHECK(seized.read("inducer current") > 2.0 * sound.read("inducer current"));
    CHECK(seized.read("inducer current") < 3.0 * sound.read("inducer current"));
    CHECK(seized.read("inducer speed") == 0.0);
    CHECK(seized.read("suction at the port") < 0.05);
    check_no_draft(seized);
}

TEST_CASE("chain: pressure switch stuck closed") {
    Rig r;
    r.set("draft.sense_line.stuck", 2.0);
    r.run(120.0);
    CHECK_FALSE(r.time_of("inducer turns").has_value());
    CHECK(r.volts("pressure_switch.in", "board.C") > 24.0);
    CHECK(r.volts("pressure_switch.out", "board.C") > 24.0);
    CHECK(r.lamp() == "flutter");
}

TEST_CASE("chain: igniter open") {
    Rig r;
    r.open("igniter.element");
    REQUIRE(in_state(r, "warm_up"));
    r.run(10.0);
    CHECK(r.read("igniter plug") > 115.0);
    CHECK(r.read("igniter current") < 0.01);
    REQUIRE(in_state(r, "trial_lit"));
    r.run(1.5);
    CHECK(r.read("gas valve") > 24.0);
    CHECK(r.read("manifold pressure") == Approx(3.5).margin(0.05));
    CHECK(r.count_of("first burner lights") == 0);
    check_three_trials(r);
}

TEST_CASE("chain: flame rod coated") {
    Rig r;
    r.set("wiring/rod.surface/series_resistance", 1e8);
    REQUIRE(in_state(r, "trial_dark"));
    r.run(1.0);
    CHECK(r.count_of("all burners are lit") == 1);
    CHECK(r.read("flame current") > 0.1);
    CHECK(r.read("flame current") < 0.5);
    CHECK(r.volts("board.flame", "cabinet.metal") > 50.0); // the sense voltage is there
    const auto gas_s = r.time_of("gas valve opens");
    check_three_trials(r);
    CHECK(*r.time_of("gas valve closes") - *gas_s == Approx(7.0).margin(0.1)); // at the END of the trial
}

TEST_CASE("chain: reversed polarity") {
    Rig r;
    r.open("whip.line");
    r.open("whip.neutral");
    r.bridge("disconnect.line_out", "junction.neutral", 0.02, 0);
    r.bridge("disconnect.neutral", "junction.line", 0.02, 1);
    REQUIRE(in_state(r, "trial_dark"));
    r.run(1.0);
    CHECK(r.count_of("all burners are lit") == 1);
    CHECK(r.read("flame current") < 0.1); // and the rod is clean
    CHECK(r.volts("board.line", "cabinet.metal") < 2.0);
    CHECK(r.volts("board.neutral", "cabinet.metal") > 115.0);
    check_three_trials(r);
    r.act("blower-door off"); // the door switch opens what is now the neutral: parts stay live
    r.run(2.0);
    CHECK(r.lamp() == "dark");
    CHECK(r.volts("board.neutral", "cabinet.metal") > 115.0);
    CHECK(r.volts("board.blower_neutral", "cabinet.metal") > 115.0);
}

TEST_CASE("chain: gas shut") {
    Rig r;
    r.act("gas-cock off");
    REQUIRE(in_state(r, "trial_lit"));
    r.run(3.0);
    CHECK(r.read("gas inlet pressure") < 0.05);
    CHECK(r.read("manifold pressure") < 0.05);
    CHECK(r.read("igniter surface") > 1800.0); // bright
    CHECK(r.read("igniter current") > 3.0);
    CHECK(r.read("gas valve") > 24.0);
    check_three_trials(r);
}

TEST_CASE("chain: low inlet under load") {
    Rig sound;
    sound.run(600.0);
    Rig r;
    r.set("gas.pipe_restriction", 0.905);
    r.run(30.0);
    CHECK(r.read("gas inlet pressure") == Approx(7.0).margin(0.3)); // static
    r.run(570.0);
    CHECK(r.read("gas inlet pressure") == Approx(3.0).margin(0.4)); // flowing
    CHECK(r.read("manifold pressure") == Approx(2.5).margin(0.3));
    CHECK(r.read("oxygen") > sound.read("oxygen") + 1.0);
    CHECK(r.read("temperature rise") < sound.read("temperature rise") - 4.0);
    CHECK(r.board_state() == "run");
    CHECK(r.lamp_count() == 5);
    CHECK(r.count_of(kTrial) == 1);
}

TEST_CASE("chain: gas valve's coil open") {
    Rig r;
    r.open("valve.coil");
    REQUIRE(in_state(r, "trial_lit"));
    r.run(3.0);
    CHECK(r.read("gas valve") > 24.0);
    CHECK(r.read("gas valve current") < 0.005);
    CHECK(r.world.state.gas.valve_position == 0.0); // no click
    CHECK(r.read("manifold pressure") < 0.05);
    check_three_trials(r);
}

TEST_CASE("chain: dirty filter") {
    Rig r;
    r.set("air.ducts.filter_loading", 25.0);
    REQUIRE(r.run_until(900.0, [](const Rig& rig) { return rig.world.state.heat.limit_open != 0; }));
    CHECK(r.read("temperature rise") > 70.0);
    CHECK(r.read("return static") < -0.5);
    CHECK(r.read("supply static") < 0.25);
    Rig again;
    again.set("air.ducts.filter_loading", 25.0);
    check_limit_cycling(again, 900.0);
}

TEST_CASE("chain: packed blower wheel") {
    Rig r;
    r.set("air.blower.wheel_packing", 1.0);
    REQUIRE(r.run_until(1500.0, [](const Rig& rig) { return rig.world.state.heat.limit_open != 0; }));
    CHECK(r.read("temperature rise") > 70.0);
    CHECK(r.read("return static") > -0.12); // both statics low
    CHECK(r.read("supply static") < 0.22);
    Rig again;
    again.set("air.blower.wheel_packing", 1.0);
    check_limit_cycling(again, 1500.0);
}

TEST_CASE("chain: blower's capacitor open") {
    Rig r;
    r.open("blower_capacitor.element");
    r.run(90.0);
    CHECK(r.read("blower current") > 10.0); // hum
    CHECK(r.read("blower speed") == 0.0);
    CHECK(r.read("airflow") < 1.0);
    const auto lit = r.time_of("first burner lights");
    check_limit_cycling(r, 300.0);
    const auto opened = r.time_of("limit opens");
    REQUIRE(lit.has_value());
    REQUIRE(opened.has_value());
    CHECK(*opened - *lit >= 90.0);
    CHECK(*opened - *lit <= 150.0);
}

TEST_CASE("chain: R and C shorted in the thermostat's cable") {
    Rig r;
    r.bridge("thermostat.R", "thermostat.C", 0.05);
    r.run(10.0);
    CHECK(r.lamp() == "dark");
    CHECK(r.volts("transformer.hot", "transformer.common") == Approx(26.5).margin(1.0));
    CHECK(r.read("control, R-C") < 0.2);
    CHECK(r.volts("board.track_hot", "board.track_R") == Approx(27.0).margin(1.0));
    r.set("wiring/board.fuse/series_resistance", 0.0);
    r.run(0.6);
    CHECK(r.count_of("control fuse melts") == 2); // the new one blows at once
    r.open("thermostat.wire_R");
    r.open("thermostat.wire_W");
    r.set("wiring/board.fuse/series_resistance", 0.0);
    r.run(30.0);
    CHECK(r.count_of("control fuse melts") == 2); // and holds with R and W lifted
    CHECK(r.lamp() == "wink");
}

TEST_CASE("chain: W open between thermostat and board") {
    Rig r;
    r.open("thermostat.wire_W");
    r.run(120.0);
    CHECK(r.read("control, R-C") == Approx(26.5).margin(1.0));
    CHECK(r.read("call, W-C") < 1.0);
    const double r_to_c = r.volts("thermostat.R", "thermostat.C");
    CHECK(r.volts("thermostat.W", "thermostat.C") == Approx(r_to_c).margin(0.1));
    CHECK(r.volts("thermostat.R", "thermostat.W") < 0.1);
    CHECK(r.board_state() == "standby");
    CHECK(r.lamp() == "wink"); // no fault to show
    CHECK(r.count_of(kTrial) == 0);
    r.act("blower-door off");
    r.act("tape on");
    r.act("jumper board.R board.W");
    CHECK(in_state(r, "run"));
}

TEST_CASE("chain: rollout") {
    Rig r;
    r.set("draft.path.exchanger_blockage", 0.6);
    REQUIRE(in_state(r, "rollout_open", 300.0));
    r.run(5.0);
    CHECK(r.read("across the rollout switch") > 24.0);
    CHECK(r.volts("limit.in", "board.C") < 0.5); // everything behind it is dead
    CHECK(r.world.state.signals.combustion.heat_released_hhv_w == 0.0);
    CHECK(r.drives("inducer"));
    CHECK(r.drives("blower_heat"));
    CHECK(r.lamp() == "held");
    CHECK(r.lamp_count() >= 4);
    CHECK(r.lamp_count() <= 5);
    r.run(600.0);
    CHECK(r.drives("blower_heat"));
    lightoff::heat::reset_rollout(r.model.heat, r.world.condition.heat, r.world.state.heat);
    r.run(10.0);
    r.act("disconnect off");
    r.run(5.0);
    r.act("disconnect on");
    CHECK(in_state(r, "rollout_open", 300.0)); // opens again if only reset
}
