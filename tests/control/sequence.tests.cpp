// SPDX-License-Identifier: MIT
// Sequence of operation of the reference board. Nominal times and behaviour: common practice, no
// source, with terms of IEC 60730-2-5; the numbers are those of the profile's own table.
#include "control/bench.hpp"

#include <catch2/catch.hpp>

using control_tests::Bench;
using control_tests::reference_board;

namespace {

Bench in_standby() {
    Bench bench(reference_board());
    bench.run(3.0);
    REQUIRE(bench.burner() == "standby");
    return bench;
}

Bench running(double seconds = 60.0) {
    Bench bench = in_standby();
    bench.plant.call = true;
    bench.run_to("run", 120.0);
    bench.run(seconds);
    REQUIRE(bench.burner() == "run");
    return bench;
}

} // namespace

TEST_CASE("a call runs through the sequence in its nominal times") {
    Bench bench = in_standby();
    bench.plant.call = true;
    const double start = bench.plant.time_s;
    bench.run_to("prove_draft", 1.0);
    CHECK(bench.plant.time_s - start < 1.0); // call to inducer
    CHECK(bench.on("inducer"));
    CHECK_FALSE(bench.on("igniter"));
    CHECK(bench.run_to("prepurge") == Approx(4.05).margin(0.051)); // the plant's switch: 4 s
    CHECK(bench.shown() == 2);
    CHECK(bench.run_to("warm_up") == Approx(15.0));
    CHECK(bench.on("igniter"));
    CHECK_FALSE(bench.on("gas_valve"));
    CHECK(bench.run_to("trial_lit") == Approx(20.0));
    CHECK(bench.on("gas_valve"));
    CHECK(bench.on("igniter"));
    CHECK(bench.shown() == 3);
    bench.run_to("stabilise");
    CHECK(bench.plant.time_s - start >= 39.0); // call to flame 39-43 s
    CHECK(bench.plant.time_s - start <= 43.0);
    CHECK_FALSE(bench.on("igniter")); // goes off when flame is proved
    CHECK(bench.shown() == 4);
    bench.run(29.9);
    CHECK_FALSE(bench.on("blower_heat"));
    bench.run(0.2);
    CHECK(bench.on("blower_heat")); // 30 s after flame
    CHECK(bench.shown() == 5);
    bench.run(600.0);
    CHECK(bench.burner() == "run");

    bench.plant.call = false;
    bench.run(0.15);
    CHECK_FALSE(bench.on("gas_valve"));
    CHECK(bench.burner() == "post_purge");
    CHECK(bench.run_to("standby") == Approx(15.0).margin(0.06));
    CHECK_FALSE(bench.on("inducer"));
    CHECK(bench.on("blower_heat"));
    bench.run(120.0 - 15.0 - 0.2);
    CHECK(bench.on("blower_heat"));
    bench.run(0.4);
    CHECK_FALSE(bench.on("blower_heat"));
}

TEST_CASE("call to flame over the ordinary range of switch and ignition") {
    for (const double closes : {3.0, 4.0, 5.0})
        for (const double lights : {1.0, 2.0, 3.0}) {
            Bench bench = in_standby();
            bench.plant.switch_closes_after_s = closes;
            bench.plant.flame_after_s = lights;
            bench.plant.call = true;
            const double start = bench.plant.time_s;
            while (!bench.plant.flame)
                bench.tick();
            const double time = bench.plant.time_s - start;
            INFO("switch " << closes << " s, flame " << lights << " s: " << time << " s");
            CHECK(time ==
                  Approx(closes + 15.0 + 20.0 + lights).margin(0.6)); // the board's own share is under 0.6 s
        }
}

TEST_CASE("the igniter burns 4 s of a 7 s trial when no flame comes") {
    Bench bench = in_standby();
    bench.plant.gas_open = false;
    bench.plant.call = true;
    bench.run_to("warm_up");
    CHECK(bench.run_to("trial_dark") == Approx(24.0));
    CHECK_FALSE(bench.on("igniter"));
    CHECK(bench.on("gas_valve"));
    CHECK(bench.run_to("trial_failed") == Approx(3.0));
    CHECK_FALSE(bench.on("gas_valve"));
}

TEST_CASE("igniter open: three trials, lockout for an hour, count 3 and a long glow") {
    Bench bench = in_standby();
    bench.plant.igniter_good = false;
    bench.plant.call = true;
    int trials = 0;
    bool gas = false;
    bench.watch = [&] {
        if (bench.on("gas_valve") && !gas)
            ++trials;
        gas = bench.on("gas_valve");
    };
    bench.run_to("soft_lockout", 600.0);
    CHECK(trials == 3);
    CHECK(bench.out.drivers == 0);
    CHECK(bench.shown() == 3);
    const auto seen = bench.look();
    CHECK(seen.flashes == 3);
    CHECK(seen.glow);
    bench.plant.igniter_good = true;
    CHECK(bench.run_to("prove_draft") == Approx(3600.0 - 20.0 + 0.25).margin(0.11));
    CHECK(bench.shown() == 3); // the interrupted trial's count stands until the new one ends or passes it
    bench.run_to("run");
    CHECK(bench.shown() == 4);
}

TEST_CASE("a lockout ends when the thermostat or the power is cycled") {
    for (const bool by_power : {false, true}) {
        Bench bench = in_standby();
        bench.plant.gas_open = false;
        bench.plant.call = true;
        bench.run_to("soft_lockout", 600.0);
        bench.plant.gas_open = true;
        bench.plant.supply_v = by_power ? 0.0 : 26.0;
        bench.plant.call = by_power;
        bench.run(2.0);
        CHECK(bench.shown() == (by_power ? 0 : 3)); // power loss erases; the thermostat alone doesn't
        bench.plant.supply_v = 26.0;
        bench.plant.call = true;
        bench.run_to("run", 120.0);
    }
}

TEST_CASE("flame lost in the run: valve closed within 2 s, retry, lockout after five losses") {
    Bench bench = running(60.0);
    REQUIRE(bench.shown() == 5);
    int losses = 0;
    double longest = 0.0;
    while (bench.burner() != "soft_lockout" && losses < 10) {
        bench.plant.flame_out = true;
        double response = 0.0;
        for (; bench.on("gas_valve"); response += 0.05)
            bench.tick();
        CHECK(response >= 0.8); // flame failure response 0.8-2 s, common practice
        CHECK(response <= 2.0);
        longest = std::max(longest, response);
        ++losses;
        bench.plant.flame_out = false;
        bench.plant.gas_s = 0.0;
        for (double t = 0.0; t < 200.0 && bench.burner() != "run" && bench.burner() != "soft_lockout";
             t += 0.05)
            bench.tick();
    }
    CHECK(losses == 5);
    CHECK(longest > 0.0);
    CHECK(bench.burner() == "soft_lockout");
}

TEST_CASE("flame lost before the blower is switched on: count 4") {
    Bench bench = running(5.0);
    REQUIRE(bench.shown() == 4);
    bench.plant.flame_out = true;
    bench.run_to("interpurge");
    CHECK(bench.look().flashes == 4);
    bench.plant.gas_open = false; // and now no flame: the new trial ends at 3
    bench.run_to("trial_dark");
    CHECK(bench.shown() == 4);
    bench.run_to("interpurge");
    CHECK(bench.shown() == 3);
}

TEST_CASE("hose plugged: the inducer tries three times 60 s, then lockout at count 1") {
    Bench bench = in_standby();
    bench.plant.hose_plugged = true;
    bench.plant.call = true;
    bench.run_to("prove_draft");
    CHECK(bench.run_to("draft_rest") == Approx(60.0));
    CHECK_FALSE(bench.on("inducer"));
    CHECK(bench.look().flashes == 1);
    bool igniter = false;
    bench.watch = [&] { igniter = igniter || bench.on("igniter") || bench.on("gas_valve"); };
    bench.run_to("soft_lockout", 400.0);
    CHECK_FALSE(igniter);
    const auto seen = bench.look();
    CHECK(seen.flashes == 1);
    CHECK(seen.glow);
}

TEST_CASE("pressure switch closed before the inducer: no start, flutter, start once it opens") {
    Bench bench = in_standby();
    bench.plant.switch_stuck_closed = true;
    bench.plant.call = true;
    bench.run(10.0);
    CHECK(bench.burner() == "switch_closed");
    CHECK(bench.out.drivers == 0);
    const auto seen = bench.look();
    CHECK(seen.fastest_s == Approx(0.35));
    CHECK_FALSE(seen.glow);
    bench.plant.switch_stuck_closed = false;
    bench.run_to("run", 120.0);
}

TEST_CASE("limit opens: valve off, inducer and blower on until it closes, restarts by itself, count 5") {
    Bench bench = running(120.0);
    for (int opening = 1; opening <= 5; ++opening) {
        bench.plant.limit_closed = false;
        bench.run(0.2);
        CHECK_FALSE(bench.on("gas_valve"));
        CHECK(bench.on("inducer"));
        CHECK(bench.on("blower_heat"));
        CHECK(bench.look().flashes ==
              (opening == 1 ? 5 : 4)); // later ones open before the blower's delay has run
        bench.run(100.0);
        CHECK(bench.burner() == "limit_open");
        CHECK(bench.on("blower_heat"));
        bench.plant.limit_closed = true;
        if (opening < 5)
            bench.run_to("run", 120.0);
    }
    bench.run(0.2);
    CHECK(bench.burner() == "soft_lockout");
}

TEST_CASE("limit opens before the blower was due: forced on, the count stays 4") {
    Bench bench = running(5.0);
    bench.plant.limit_closed = false;
    bench.run(0.2);
    CHECK(bench.on("blower_heat"));
    bench.run(60.0);
    CHECK(bench.shown() == 4);
}

TEST_CASE("limit open with no call: inducer and blower run, the lamp still shows the last call") {
    Bench bench = running(120.0);
    bench.plant.call = false;
    bench.run(5.0);
    bench.plant.limit_closed = false;
    bench.run(0.2);
    CHECK(bench.burner() == "limit_open_idle");
    CHECK(bench.on("inducer"));
    CHECK(bench.on("blower_heat"));
    CHECK(bench.look().flashes == 5);
    bench.plant.call = true; // a call that can't go further than being seen
    bench.run(0.5);
    CHECK(bench.shown() == 1);
    bench.plant.call = false;
    bench.plant.limit_closed = true;
    bench.run_to("standby", 30.0);
}

TEST_CASE("pressure switch opens in the run: valve off, inducer on, blower finishes, sequence restarts") {
    Bench bench = running(120.0);
    bench.plant.hose_plugged = true;
    bench.run(0.1);
    CHECK(bench.burner() == "draft_lost");
    CHECK_FALSE(bench.on("gas_valve"));
    CHECK(bench.on("inducer"));
    bench.run(20.0);
    CHECK(bench.on("blower_heat"));
    CHECK(bench.shown() == 5);
    bench.plant.hose_plugged = false;
    bench.run_to("prepurge", 5.0);
    CHECK(bench.shown() == 5);
    bench.run_to("stabilise", 60.0);
    CHECK(bench.blower() == "off_delay"); // 120 s aren't over: it runs through
    bench.run(0.1);
    CHECK(bench.blower() == "resume_delay");
    CHECK(bench.on("blower_heat"));
}

TEST_CASE("rollout opens: all air on, held until reset by hand and power cycled") {
    Bench bench = running(120.0);
    bench.plant.rollout_closed = false;
    bench.run(0.2);
    CHECK(bench.burner() == "rollout_open");
    CHECK_FALSE(bench.on("gas_valve"));
    CHECK(bench.on("inducer"));
    CHECK(bench.on("blower_heat"));
    const auto seen = bench.look();
    CHECK(seen.flashes == 5);
    CHECK(seen.glow);
    bench.plant.call = false; // the thermostat doesn't help
    bench.run(60.0);
    bench.plant.call = true;
    bench.run(600.0);
    CHECK(bench.burner() == "rollout_open");
    CHECK(bench.on("blower_heat"));
    bench.plant.rollout_closed = true;
    bench.run(600.0);
    CHECK(bench.burner() == "hard_lockout");
    CHECK(bench.out.drivers == 0); // after the off-delay
    CHECK(bench.look().glow);
    bench.plant.supply_v = 0.0;
    bench.run(2.0);
    bench.plant.supply_v = 26.0;
    bench.run_to("run", 120.0);
}

TEST_CASE("flame with the valve off: inducer and blower on, flutter, no start while it burns") {
    Bench bench = in_standby();
    bench.plant.valve_leaks = true;
    bench.run(0.5);
    CHECK(bench.burner() == "unexpected_flame");
    CHECK(bench.on("inducer"));
    CHECK(bench.on("blower_heat"));
    CHECK(bench.look().fastest_s == Approx(0.35));
    bench.plant.call = true;
    bench.run(300.0);
    CHECK_FALSE(bench.on("gas_valve"));
    bench.plant.valve_leaks = false;
    bench.run_to("run", 200.0);
}

TEST_CASE("a flame in a lockout does not shorten it") {
    Bench bench = in_standby();
    bench.plant.gas_open = false;
    bench.plant.call = true;
    bench.run_to("soft_lockout", 600.0);
    bench.plant.valve_leaks = true;
    bench.run(60.0);
    CHECK(bench.burner() == "unexpected_flame");
    bench.plant.valve_leaks = false;
    bench.run_to("soft_lockout", 10.0);
    bench.run(3500.0);
    CHECK(bench.burner() == "soft_lockout");
    CHECK(bench.shown() == 3);
}

TEST_CASE("welded valve relay: the board stops the inducer, so that the pressure switch drops the valve") {
    Bench bench = in_standby();
    bench.plant.valve_relay_welded = true;
    bench.plant.call = true;
    bench.run_to("board_fault", 30.0);
    bench.run(1.0); // a change of the lamp begins dark
    CHECK(bench.out.drivers == 0);
    const auto seen = bench.look();
    CHECK(seen.ever_lit);
    CHECK_FALSE(seen.ever_dark); // steady
    CHECK_FALSE(bench.plant.pressure_switch);
}

TEST_CASE("a board with bad memory holds everything off and its lamp steady") {
    Bench bench = running(60.0);
    bench.condition.bad_memory_cells = 1;
    bench.run(0.1);
    CHECK(bench.burner() == "board_fault");
    bench.run(200.0);
    CHECK(bench.out.drivers == 0);
    CHECK_FALSE(bench.look().ever_dark);
}

TEST_CASE("weak flame current: proved above the pick-up, held down to the drop-out") {
    // Rod coated: all burners light, 0.1-0.5 uA, closed at the END of each trial, count 3 (common practice).
    Bench bench = in_standby();
    bench.plant.flame_ua = 0.5;
    bench.plant.call = true;
    bench.run_to("trial_lit");
    CHECK(bench.run_to("trial_failed") == Approx(7.0));
    CHECK(bench.shown() == 3);
    bench.plant.flame_ua = 2.0;
    bench.run_to("run", 200.0);
    bench.plant.flame_ua = 0.72; // above the drop-out of 0.7
    bench.run(60.0);
    CHECK(bench.burner() == "run");
    bench.plant.flame_ua = 0.68;
    bench.run(1.1);
    CHECK(bench.burner() == "interpurge");
}

TEST_CASE("an input divider burnt away: the board does not see the call") {
    Bench bench = in_standby();
    bench.condition.sense_gain[bench.board.input("call")] = 0.0;
    bench.plant.call = true;
    bench.run(60.0);
    CHECK(bench.burner() == "standby");
    CHECK(bench.look().flashes == 1); // the wink
}

TEST_CASE("ghost volts on a tap are not a call") {
    Bench bench = in_standby();
    const std::size_t call = bench.board.input("call");
    bench.condition.sense_gain[call] = 11.0 / 26.0; // 11 V at the terminal; ghosts reach 15 V only on 10 Mohm
    bench.plant.call = true;
    bench.run(10.0);
    CHECK(bench.burner() == "standby");
}

TEST_CASE("the fan switch: cooling speed, never both speeds, heat has priority") {
    Bench bench = in_standby();
    bench.plant.fan = true;
    bool both = false;
    int gap = 0;
    bool heat_before = false, cool_before = false;
    bench.watch = [&] {
        const bool heat = bench.on("blower_heat"), cool = bench.on("blower_cool");
        both = both || (heat && cool) || (heat && cool_before) || (cool && heat_before);
        gap += !heat && !cool ? 1 : 0;
        heat_before = heat;
        cool_before = cool;
    };
    bench.run(10.0);
    CHECK(bench.on("blower_cool"));
    bench.plant.call = true;
    bench.run_to("run");
    bench.run(60.0);
    CHECK(bench.on("blower_heat"));
    CHECK(bench.shown() == 5);
    bench.plant.call = false;
    bench.run(200.0);
    CHECK(bench.on("blower_cool"));
    CHECK_FALSE(both); // two taps live burn the motor: there is always a gap between them
    CHECK(gap >= 10);
}

TEST_CASE("blower delays follow the settings on the board") {
    Bench bench = running(120.0);
    bench.condition.choice[bench.board.setting("blower_off_delay")] = 2; // 120, 150, 180 s
    bench.plant.call = false;
    bench.run(179.0);
    CHECK(bench.on("blower_heat"));
    bench.run(2.0);
    CHECK_FALSE(bench.on("blower_heat"));
}

TEST_CASE("the call may be lost, or the power cut, in any state: all is shut down, and all can start again") {
    const auto& board = reference_board();
    for (double moment = 0.0; moment < 150.0; moment += 0.35)
        for (const bool power : {false, true}) {
            Bench bench = in_standby();
            bench.plant.call = true;
            bench.run(moment);
            const std::string cut_in = bench.burner();
            INFO("cut in " << cut_in << " after " << moment << " s, " << (power ? "power" : "call"));
            const bool gas_was_on = bench.on("gas_valve");
            if (power)
                bench.plant.supply_v = 0.0;
            else
                bench.plant.call = false;
            bench.run(0.15);
            CHECK_FALSE(bench.on("gas_valve"));
            CHECK_FALSE(bench.on("igniter"));
            if (power) {
                CHECK(bench.out.drivers == 0);
                CHECK_FALSE(bench.out.lamp_on);
                CHECK(bench.shown() == 0);
            } else if (gas_was_on) {
                CHECK(bench.on("inducer")); // post-purge
            }
            bench.run(20.0);
            bench.plant.supply_v = 26.0;
            bench.plant.call = true;
            bench.run_to("run", 200.0);
        }
    CHECK(board.machines[0].states.size() > 20);
}

TEST_CASE("the logic works down to its own supply threshold and rides through one tick") {
    Bench bench = running(60.0);
    bench.plant.supply_v = 17.5; // above resets_below 17
    bench.run(5.0);
    CHECK(bench.burner() == "run");
    bench.plant.supply_v = 16.0;
    bench.run(0.05);
    bench.plant.supply_v = 17.5;
    bench.run(5.0);
    CHECK(bench.burner() == "run");
    bench.plant.supply_v = 16.0;
    bench.run(0.1);
    CHECK(bench.out.drivers == 0);
    bench.plant.supply_v = 17.5; // below works_above 18: still asleep
    bench.run(5.0);
    CHECK_FALSE(bench.out.powered);
    bench.plant.supply_v = 18.5;
    bench.run(0.1);
    CHECK(bench.out.powered);
}
