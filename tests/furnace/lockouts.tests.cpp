// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"

#include <functional>
#include <string>
#include <utility>
#include <vector>

// What the furnace does when something fails, and how it comes back. One part is broken by a number of the
// Condition (or by a switch), everything after it is left to the equations. Sequences, counts and times are
// common practice without a single published source, unless a source is named.

using lightoff::test::Rig;

namespace {

const std::string kTrial = "board, burner: Trial for ignition, igniter on";
const std::string kLockout = "board, burner: Lockout for an hour";
const std::string kRun = "board, burner: Run";

bool is_locked_out(const Rig& rig) {
    return rig.board_state() == "soft_lockout";
}

bool is_heating(const Rig& rig) {
    return rig.board_state() == "run" && rig.drives("blower_heat");
}

double seconds_between(const Rig& rig, const std::string& first, const std::string& then,
                       double from_s = 0.0) {
    const auto a = rig.time_of(first, from_s);
    REQUIRE(a.has_value());
    const auto b = rig.time_of(then, *a);
    REQUIRE(b.has_value());
    return *b - *a;
}

/// Board and motors as a lockout leaves them: nothing driven, the count and then the long glow.
void check_held(Rig& rig, int count) {
    CHECK(rig.lamp() == "held");
    CHECK(rig.lamp_count() == count);
    CHECK_FALSE(rig.drives("gas_valve"));
    CHECK_FALSE(rig.drives("igniter"));
    CHECK_FALSE(rig.drives("inducer"));
    CHECK(rig.read("gas valve") < 1.0);
    CHECK(rig.read("manifold pressure") < 0.01);
}

struct Break {
    std::string name;
    std::function<void(Rig&)> apply;
    std::function<void(Rig&)> repair;
};

Break number(const std::string& path, double broken, double sound) {
    return {path, [=](Rig& r) { r.set(path, broken); }, [=](Rig& r) { r.set(path, sound); }};
}

Break open_wire(const std::string& element) {
    const std::string path = "wiring/" + element + "/series_resistance";
    return number(path, 1e9, 0.0);
}

std::vector<Break> causes_of_no_flame() {
    return {open_wire("igniter.element"),
            open_wire("harness.igniter_line"),
            number("heat.igniter_resistance_factor", 2.0, 1.0),
            number("combustion.igniter_displacement", 1.0, 0.0),
            number("gas.cock_open", 0.0, 1.0),
            open_wire("harness.valve_out"),
            number("gas.valve_travel_max", 0.0, 1.0)};
}

} // namespace

TEST_CASE("no flame: three trials, then a lockout that shows 3 and the long glow (CP)") {
    for (const Break& cause : causes_of_no_flame()) {
        INFO(cause.name);
        Rig rig;
        cause.apply(rig);
        REQUIRE(rig.run_until(600.0, is_locked_out));
        CHECK(rig.count_of(kTrial) == 3);
        CHECK_FALSE(rig.time_of("first burner lights").has_value());
        // Trial 4-7 s, warm-up 20 s and purge 15 s between two trials at the least.
        CHECK(seconds_between(rig, kTrial, "board, burner: No flame at the end of the trial") == Approx(7.0));
        CHECK(*rig.time_of(kTrial, 0.0, 2) - *rig.time_of(kTrial) > 7.0 + 15.0 + 20.0);
        rig.run(30.0);
        check_held(rig, 3);
        CHECK_FALSE(rig.drives("blower_heat"));
        CHECK(rig.read("call, W-C") > 24.0); // the thermostat still asks
    }
}

TEST_CASE("the lockout ends after an hour, by cycling the power or by the thermostat (CP)") {
    Rig locked;
    locked.set("gas.cock_open", 0.0);
    REQUIRE(locked.run_until(600.0, is_locked_out));
    const double since_s = locked.now_s();
    locked.set("gas.cock_open", 1.0);

    SECTION("by itself, after an hour and not before") {
        locked.run(3590.0);
        CHECK(is_locked_out(locked));
        const auto lit_s = locked.run_until(120.0, is_heating);
        REQUIRE(lit_s.has_value());
        CHECK(*lit_s - since_s > 3600.0);
    }
    SECTION("by cycling the power") {
        locked.act("breaker off");
        locked.run(3.0);
        CHECK(locked.lamp() == "dark");
        CHECK(locked.lamp_count() == 0); // power loss erases the memory
        locked.act("breaker on");
        CHECK(locked.run_until(120.0, is_heating));
    }
    SECTION("by the thermostat") {
        locked.act("thermostat-mode off");
        locked.run(3.0);
        CHECK(locked.board_state() == "standby");
        locked.act("thermostat-mode heat");
        CHECK(locked.run_until(120.0, is_heating));
    }
    SECTION("and comes again if nothing was repaired") {
        locked.set("gas.cock_open", 0.0);
        locked.act("breaker off");
        locked.act("breaker on");
        locked.run(10.0);
        REQUIRE(locked.run_until(600.0, is_locked_out));
        CHECK(locked.lamp_count() == 3);
    }
}

TEST_CASE("flame signal lost in the run: valve closed within 2 s, re-trial, lockout (CP)") {
    Rig rig;
    rig.run(300.0);
    REQUIRE(is_heating(rig));
    const double lost_s = rig.now_s();
    rig.open("harness.flame"); // lead of the rod falls off
    const auto closed_s = rig.run_until(5.0, [](const Rig& r) { return !r.drives("gas_valve"); });
    REQUIRE(closed_s.has_value());
    CHECK(*closed_s - lost_s >= 0.8); // flame failure response 0.8-2 s
    CHECK(*closed_s - lost_s <= 2.0);
    CHECK(rig.drives("inducer"));
    CHECK(rig.drives("blower_heat")); // finishes its off-delay
    CHECK(rig.lamp_count() == 5);     // what the interrupted trial had reached
    REQUIRE(rig.run_until(600.0, is_locked_out));
    CHECK(rig.count_of(kTrial) == 1 + 3); // it lights in each of them, and no trial sees it
    CHECK(rig.count_of("first burner lights") == 4);
    check_held(rig, 3);
}

TEST_CASE("a flame that is lost again and again in one call locks out (CP)") {
    Rig rig;
    rig.set("draft.path.crack_area", 6e-4); // the blower blows the flame off the rod each time it starts
    REQUIRE(rig.run_until(3000.0, is_locked_out));
    CHECK(rig.count_of("board, burner: Flame lost") >= 3);
    CHECK(rig.count_of("board, burner: Flame lost") <= 5);
    CHECK(rig.lamp() == "held");
    const auto blower_s = rig.time_of("board, blower: Blower on heating speed");
    const auto lost_s = rig.time_of("board, burner: Flame lost");
    REQUIRE(blower_s.has_value());
    REQUIRE(lost_s.has_value());
    CHECK(*lost_s > *blower_s);
}

TEST_CASE("limit opens: valve off at once, blower and inducer on, restart by itself, lockout at last (CP)") {
    Rig rig;
    rig.set("air.ducts.filter_loading", 30.0);
    REQUIRE(rig.run_until(900.0, [](const Rig& r) { return r.world.state.heat.limit_open != 0; }));
    const double opened_s = rig.now_s();
    rig.run(0.1);
    CHECK(rig.read("gas valve") < 1.0);
    rig.run(1.0);
    CHECK(rig.board_state() == "limit_open");
    CHECK(rig.drives("inducer"));
    CHECK(rig.drives("blower_heat"));
    CHECK(rig.read("across the limit") > 24.0);
    const auto closed_s =
        rig.run_until(300.0, [](const Rig& r) { return r.world.state.heat.limit_open == 0; });
    REQUIRE(closed_s.has_value());
    CHECK(*closed_s - opened_s > 20.0);
    CHECK(*closed_s - opened_s < 180.0);
    REQUIRE(rig.run_until(120.0, is_heating)); // nobody has touched anything
    REQUIRE(rig.run_until(3600.0, is_locked_out));
    CHECK(rig.count_of("limit opens") == 5);
    rig.run(300.0); // the blower takes the last heat out
    check_held(rig, 5);

    rig.set("air.ducts.filter_loading", 1.15); // a new filter, and the power cycled
    rig.act("breaker off");
    rig.act("breaker on");
    REQUIRE(rig.run_until(120.0, is_heating));
    rig.run(900.0);
    CHECK(rig.count_of("limit opens") == 5); // a clean furnace never trips its limit
}

TEST_CASE("pressure switch opens in the run: valve off at once, inducer on, restart when it closes (CP)") {
    Rig rig;
    rig.run(300.0);
    REQUIRE(is_heating(rig));
    rig.set("draft.sense_line.hose_off", 1.0);
    const double off_s = rig.now_s();
    const auto shut_s =
        rig.run_until(1.0, [](const Rig& r) { return r.world.state.gas.valve_position == 0.0; });
    REQUIRE(shut_s.has_value());
    CHECK(*shut_s - off_s < 0.5); // in hardware: the switch itself carries the valve's current
    rig.run(10.0);
    CHECK(rig.board_state() == "draft_lost");
    CHECK(rig.drives("inducer"));
    CHECK(rig.drives("blower_heat"));
    CHECK(rig.read("across the pressure switch") > 24.0);
    rig.set("draft.sense_line.hose_off", 0.0);
    REQUIRE(rig.run_until(120.0, is_heating));
    CHECK(rig.count_of(kTrial) == 2);
}

TEST_CASE("blower finishes its off-delay after the draft was lost (CP)") {
    Rig rig;
    rig.run(300.0);
    rig.set("draft.sense_line.hose_off", 1.0);
    const double off_s = rig.now_s();
    const auto still_s = rig.run_until(300.0, [](const Rig& r) { return !r.drives("blower_heat"); });
    REQUIRE(still_s.has_value());
    CHECK(*still_s - off_s >= 90.0);
    CHECK(*still_s - off_s <= 181.0);
}

TEST_CASE("pressure switch never closes: tries for draft, then lockout that shows 1 (CP)") {
    for (const Break& cause :
         {number("draft.sense_line.hose_off", 1.0, 0.0), number("draft.sense_line.stuck", 1.0, 0.0),
          number("draft.sense_line.make_factor", 2.0, 1.0), number("draft.path.vent_blockage", 1.0, 0.0),
          open_wire("harness.inducer_line")}) {
        INFO(cause.name);
        Rig rig;
        cause.apply(rig);
        REQUIRE(rig.run_until(900.0, is_locked_out));
        CHECK(rig.count_of("board, burner: Prove draft") == 3);
        CHECK(rig.count_of(kTrial) == 0);
        CHECK_FALSE(rig.time_of("igniter glows bright enough to light gas").has_value());
        rig.run(5.0);
        check_held(rig, 1);
        cause.repair(rig);
        rig.act("breaker off");
        rig.act("breaker on");
        CHECK(rig.run_until(120.0, is_heating));
    }
}

TEST_CASE("pressure switch closed before the inducer: no start, flutter, starts once it opens (CP)") {
    Rig rig;
    rig.set("draft.sense_line.stuck", 2.0);
    rig.run(300.0);
    CHECK(rig.board_state() == "switch_closed");
    CHECK(rig.lamp() == "flutter");
    CHECK(rig.read("inducer speed") == 0.0);
    CHECK(rig.volts("pressure_switch.in", "board.C") > 24.0); // 24 V on both sides
    CHECK(rig.volts("pressure_switch.out", "board.C") > 24.0);
    rig.set("draft.sense_line.stuck", 0.0);
    CHECK(rig.run_until(120.0, is_heating));
}

TEST_CASE("rollout opens: hard lockout until reset by hand, and again if only reset (CP)") {
    Rig rig;
    rig.set("draft.path.exchanger_blockage", 0.7);
    REQUIRE(rig.run_until(300.0, [](const Rig& r) { return r.world.state.heat.rollout_tripped != 0; }));
    rig.run(0.1);
    CHECK(rig.read("gas valve") < 1.0);
    rig.run(5.0);
    CHECK(rig.world.state.signals.combustion.heat_released_hhv_w == 0.0);
    CHECK(rig.drives("inducer"));
    CHECK(rig.drives("blower_heat"));
    CHECK(rig.read("across the rollout switch") > 24.0);
    CHECK(rig.lamp() == "held");
    CHECK(rig.lamp_count() >= 4);
    CHECK(rig.lamp_count() <= 5);

    rig.run(4000.0); // no hour ends it
    CHECK(rig.board_state() == "rollout_open");
    CHECK(rig.drives("blower_heat"));
    rig.act("breaker off"); // nor does the power
    rig.act("breaker on");
    rig.run(300.0);
    CHECK(rig.board_state() == "rollout_open");

    const auto reset = [&] {
        lightoff::heat::reset_rollout(rig.model.heat, rig.world.condition.heat, rig.world.state.heat);
        rig.run(10.0);
        rig.act("breaker off");
        rig.run(5.0);
        rig.act("breaker on");
    };
    reset();
    CHECK(rig.world.state.heat.rollout_tripped == 0);
    REQUIRE(rig.run_until(300.0, [](const Rig& r) { return r.world.state.heat.rollout_tripped != 0; }));
    rig.set("draft.path.exchanger_blockage", 0.0);
    rig.run(300.0);
    reset();
    REQUIRE(rig.run_until(200.0, is_heating));
    rig.run(900.0);
    CHECK(is_heating(rig));
}

TEST_CASE("valve hangs open at the end of a call: inducer and blower run, flutter (CP)") {
    Rig rig;
    rig.run(300.0);
    rig.set("gas.valve_travel_min", 1.0);
    rig.act("thermostat-mode off");
    rig.run(30.0);
    CHECK(rig.read("gas valve") < 1.0); // no voltage, and yet:
    CHECK(rig.read("manifold pressure") == Approx(3.5).epsilon(0.02));
    CHECK(rig.lamp() == "flutter");
    CHECK(rig.drives("inducer"));
    CHECK(rig.drives("blower_heat"));
    rig.run(600.0);
    CHECK(rig.drives("blower_heat"));
    rig.act("gas-cock off");
    REQUIRE(rig.run_until(300.0, [](const Rig& r) { return r.board_state() == "standby"; }));
    CHECK(rig.run_until(300.0, [](const Rig& r) { return !r.drives("blower_heat"); }));
}

TEST_CASE("line and neutral exchanged: everything runs, no flame is proved (CP)") {
    Rig rig;
    rig.open("whip.line");
    rig.open("whip.neutral");
    rig.bridge("disconnect.line_out", "junction.neutral", 0.02, 0);
    rig.bridge("disconnect.neutral", "junction.line", 0.02, 1);
    REQUIRE(rig.run_until(600.0, is_locked_out));
    CHECK(rig.count_of(kTrial) == 3);
    CHECK(rig.count_of("all burners are lit") == 3);
    check_held(rig, 3);
    CHECK(rig.volts("board.line", "cabinet.metal") < 2.0);
    CHECK(rig.volts("board.neutral", "cabinet.metal") == Approx(120.0).margin(3.0));
    CHECK(rig.read("line, L-N at the board") == Approx(120.0).margin(3.0)); // a meter L-N sees nothing wrong

    rig.world.condition.wiring = Rig().world.condition.wiring; // wired right again
    rig.act("breaker off");
    rig.act("breaker on");
    CHECK(rig.run_until(120.0, is_heating));
}

TEST_CASE("ground open: runs as long as gas pipe or vent bonds the cabinet (CP)") {
    struct Bonds {
        bool pipe, vent, runs;
    };
    for (const Bonds& bonds :
         {Bonds{true, true, true}, {true, false, true}, {false, true, true}, {false, false, false}}) {
        INFO("pipe " << bonds.pipe << ", vent " << bonds.vent);
        Rig rig;
        rig.open("cabinet.ground");
        if (!bonds.pipe)
            rig.open("cabinet.gas_pipe");
        if (!bonds.vent)
            rig.open("cabinet.vent");
        rig.run(300.0);
        if (bonds.runs) {
            CHECK(is_heating(rig));
            CHECK(rig.read("flame current") > 3.0);
        } else {
            CHECK(is_locked_out(rig));
            CHECK(rig.lamp_count() == 3);
            CHECK(rig.count_of("all burners are lit") == 3);
        }
    }
}

TEST_CASE("power lost in the run: flame out at once, start from the beginning when it is back (CP)") {
    // Once the exchanger is hot, the limit opens on the heat that is left while purge and warm-up pass
    // without the blower, and closes again: one trial more. Soon after the first heat it does not. Where it
    // begins (between 120 and 150 s of running) is the model's; that a blink of the supply does it to a hot
    // furnace is common.
    const auto [run_s, trials] = GENERATE(std::pair{100.0, 2}, std::pair{300.0, 3});
    CAPTURE(run_s);
    Rig rig;
    rig.run(run_s);
    rig.act("breaker off");
    rig.run(0.5);
    CHECK(rig.world.state.signals.combustion.heat_released_hhv_w == 0.0);
    CHECK(rig.read("manifold pressure") < 0.01);
    rig.run(4.5);
    CHECK(rig.lamp() == "dark");
    rig.act("breaker on");
    const double back_s = rig.now_s();
    const auto lit_s = rig.run_until(300.0, is_heating);
    REQUIRE(lit_s.has_value());
    CHECK(*lit_s - back_s > 60.0); // purge, warm-up, trial, blower delay
    CHECK(rig.count_of(kTrial) == trials);
    CHECK(rig.count_of("board, burner: Prepurge") == rig.count_of(kTrial));
}

TEST_CASE(
    "power lost for minutes in the run: the hot exchanger may open the limit; it still comes back (CP)") {
    Rig rig;
    rig.run(900.0);
    const double element_f = rig.read("limit element");
    rig.act("breaker off");
    rig.run(120.0);
    CHECK(rig.read("limit element") > element_f + 10.0); // heat soak: no blower takes it away
    rig.act("breaker on");
    CHECK(rig.run_until(600.0, is_heating));
}

TEST_CASE("a short from R to C in the thermostat cable blows the control fuse, and the next one (CP)") {
    Rig rig;
    rig.run(300.0);
    rig.bridge("thermostat.R", "thermostat.C", 0.05);
    rig.run(1.0);
    CHECK(rig.count_of("control fuse melts") == 1);
    CHECK(rig.lamp() == "dark");
    CHECK(rig.world.state.gas.valve_position == 0.0);
    rig.run(10.0);
    CHECK(rig.read("line, L-N at the board") > 118.0);
    CHECK(rig.volts("transformer.hot", "transformer.common") == Approx(27.0).margin(1.0));
    CHECK(rig.volts("board.track_hot", "board.track_R") == Approx(27.0).margin(1.0)); // across the blown fuse
    CHECK(rig.read("control, R-C") < 0.2);

    const std::string fuse = "wiring/board.fuse/series_resistance";
    rig.set(fuse, 0.0); // a new one
    rig.run(1.0);
    CHECK(rig.count_of("control fuse melts") == 2);
    rig.open("thermostat.wire_R"); // R and W lifted at the board
    rig.open("thermostat.wire_W");
    rig.set(fuse, 0.0);
    // The blower had stopped on a hot exchanger: the limit may have to close first.
    CHECK(rig.run_until(600.0, [](const Rig& r) { return r.board_state() == "standby"; }));
    rig.run(30.0);
    CHECK(rig.count_of("control fuse melts") == 2);
    CHECK(rig.lamp() == "wink");

    rig.world.condition.wiring = Rig().world.condition.wiring;
    CHECK(rig.run_until(200.0, is_heating));
}

TEST_CASE("a valve wire chafed through to the cabinet blows the fuse at the trial, not before (CP)") {
    Rig rig;
    rig.bridge("valve.hot", "cabinet.metal", 0.05);
    REQUIRE(rig.run_until(120.0, [](const Rig& r) { return r.board_state() == "trial_lit"; }));
    CHECK(rig.count_of("control fuse melts") == 0);
    CHECK(rig.read("control, R-C") > 24.0);
    rig.run(1.0);
    CHECK(rig.count_of("control fuse melts") == 1);
    rig.run(5.0);
    CHECK(rig.lamp() == "dark");
    CHECK(rig.count_of("first burner lights") == 0);
    rig.set("wiring/board.fuse/series_resistance", 0.0); // the new one holds until the next trial
    rig.run(20.0);
    CHECK(rig.count_of("control fuse melts") == 1);
    rig.run(60.0);
    CHECK(rig.count_of("control fuse melts") == 2);
}
