// SPDX-License-Identifier: MIT
// What the builder refuses, and that a quite different table runs by the same code.
#include "control/bench.hpp"
#include "control/door_chart.hpp"

#include <catch2/catch.hpp>

using namespace lightoff::control;
using Catch::Matchers::Contains;
using control_tests::load_board;
using control_tests::reference_board;

namespace {

BoardDescription good() {
    return load_board("board.json");
}

StateDescription& state(BoardDescription& d, const std::string& name) {
    for (auto& machine : d.machines)
        for (auto& each : machine.states)
            if (each.name == name)
                return each;
    throw std::runtime_error("no state " + name);
}

void refused(const BoardDescription& d, const std::string& first, const std::string& second = "") {
    CHECK_THROWS_WITH(build_board(d), Contains(first) && Contains(second));
}

} // namespace

TEST_CASE("the builder refuses durations that are not whole ticks") {
    auto d = good();
    state(d, "prepurge").exits[0].after_s = 15.03;
    refused(d, "machine 'burner', state 'prepurge', exit to 'warm_up': after_s: 15.03 s",
            "not a whole number of ticks of 0.05 s");
    d = good();
    d.inputs[0].on_after_s = 0.07;
    refused(d, "input 'call': on_after_s: 0.07 s");
    d = good();
    d.settings[0].choices_s[1] = -1.0;
    refused(d, "setting 'blower_on_delay': choices_s: -1 s", "allowed: 0 or more");
    d = good();
    d.lamp.patterns[0].on_s = 0.12;
    refused(d, "lamp: pattern 'wink': on_s: 0.12 s");
}

TEST_CASE("the builder refuses names that it does not know, and says which there are") {
    auto d = good();
    state(d, "prepurge").exits[0].go_to = "warmup";
    refused(d, "no state is called 'warmup'", "warm_up");
    d = good();
    state(d, "standby").exits[0].inputs = {{"w", true}};
    refused(d, "no input is called 'w'", "call, fan_call");
    d = good();
    state(d, "prepurge").outputs = {"fan"};
    refused(d, "state 'prepurge': outputs: no output is called 'fan'");
    d = good();
    state(d, "prepurge").lamp = "blink";
    refused(d, "no lamp pattern is called 'blink'");
    d = good();
    state(d, "draft_rest").exits[0].at_least = {{"tries", 3}};
    refused(d, "no counter is called 'tries'");
    d = good();
    state(d, "heat").exits[0].not_in = {{"burner", {"on_fire"}}};
    refused(d, "no state or set is called 'on_fire'");
    d = good();
    state(d, "heat").exits[0].not_in = {{"boiler", {"run"}}};
    refused(d, "no machine is called 'boiler'");
    d = good();
    state(d, "on_delay").exits[1].after_setting = "delay";
    refused(d, "no setting is called 'delay'");
    d = good();
    d.inputs[1].name = "call";
    refused(d, "inputs: 'call' is there twice");
}

TEST_CASE("the builder refuses a machine without standby, lost states and dead ends") {
    auto d = good();
    d.machines[0].standby = "";
    refused(d, "machine 'burner': names no standby state");
    d = good();
    d.machines[0].standby = "stand_by";
    refused(d, "standby: no state is called 'stand_by'");
    d = good();
    StateDescription island;
    island.name = "island";
    island.exits.push_back({});
    island.exits[0].go_to = "standby";
    d.machines[0].states.push_back(island);
    refused(d, "state 'island': can't be reached from 'power_up'");
    d = good();
    state(d, "board_fault").held_until_power_loss = false;
    refused(d, "state 'board_fault': has no way back to 'standby'");
    d = good();
    state(d, "run").held_until_power_loss = true;
    refused(d, "state 'run': says held_until_power_loss but has a way back");
}

TEST_CASE("the builder refuses exits that can never be taken") {
    auto d = good();
    auto& exits = state(d, "trial_lit").exits;
    exits.push_back(exits[1]);
    exits.back().after_s = 5.0;
    refused(d, "state 'trial_lit', exit", "can never be taken: exit");
    d = good();
    state(d, "draft_rest").count_up.clear();
    refused(d, "no state counts up 'draft_failures'");
    d = good();
    state(d, "heat").exits[0].in = {{"burner", {"run"}}};
    state(d, "heat").exits[0].not_in = {{"burner", {"run"}}};
    refused(d, "allows no state of machine 'burner'");
    d = good();
    state(d, "run").exits[0].go_to = "run";
    refused(d, "has an exit to itself");
    d = good();
    state(d, "run").exits[0].in = {{"burner", {"run"}}};
    refused(d, "looks at its own machine");
    d = good();
    state(d, "run").exits[0].at_least = {{"trials", 0}};
    refused(d, "at_least trials = 0; allowed: 1 to 255");
}

TEST_CASE("the builder refuses bad thresholds, unused things and two speeds at once") {
    auto d = good();
    d.inputs[0].off_below_v = 16.0;
    refused(d, "input 'call'", "0 < off_below < on_above");
    d = good();
    d.inputs[0].on_above_ua = 1.0;
    refused(d, "input 'call': needs on_above_v and off_below_v, or on_above_ua and off_below_ua");
    d = good();
    d.supply.resets_below_v = 20.0;
    refused(d, "supply", "0 < off_below < on_above");
    d = good();
    d.outputs.push_back("humidifier");
    refused(d, "output 'humidifier': is never used");
    d = good();
    d.counters.push_back("moons");
    refused(d, "counter 'moons': is never used");
    d = good();
    d.machines[0].sets["odd"] = {"run"};
    refused(d, "set 'odd': is never used");
    d = good();
    state(d, "heat").outputs.push_back("blower_cool");
    refused(d, "state 'heat': drives more than one of blower_heat, blower_cool");
    d = good();
    state(d, "off_delay").exits[1].after_s = 3.0;
    refused(d, "has after_s and after_setting");
    d = good();
    d.outputs.resize(17, "x");
    refused(d, "outputs: 17 of them; at most 16");
}

TEST_CASE("the builder refuses a lamp faster than 3 flashes a second, and steps not as they say") {
    auto d = good();
    d.lamp.patterns[3].off_s = 0.15; // 0.30 s from flash to flash
    refused(d, "lamp: pattern 'flutter': flashes too fast", "at most 3 flashes a second");
    d = good();
    d.lamp.change_dark_s = 0.3;
    refused(d, "lamp: change_dark_s: 0.3 s is out of range");
    d = good();
    d.steps[2].how = "guessed";
    refused(d, "step 'Warm-up time run': how", "sensed, timed, commanded");
    d = good();
    d.steps[2].how = "sensed";
    refused(d, "says sensed, but no exit that leads there looks for an input");
    d = good();
    d.steps[1].count = 3;
    refused(d, "step 'Draft proved': count = 3; allowed: 2");
    d = good();
    state(d, "heat").reach = 0;
    refused(d, "step 'Blower switched on': no state has reach = 5");
}

TEST_CASE("the door chart says what the table does") {
    const DoorChart chart = door_chart(reference_board());
    REQUIRE(chart.steps.size() == 5); // design: 1 call seen .. 5 blower switched on
    const std::vector<std::string> known_by{"sensed", "sensed", "timed", "sensed", "commanded"};
    for (std::size_t i = 0; i < 5; ++i) {
        CHECK(chart.steps[i].count == static_cast<int>(i) + 1);
        CHECK(chart.steps[i].known_by == known_by[i]);
        CHECK(chart.steps[i].measure.size() >= 2);
    }
    CHECK(chart.steps[0].inputs == std::vector<std::string>{"call"});
    CHECK(chart.steps[1].inputs == std::vector<std::string>{"pressure_switch"});
    CHECK(chart.steps[3].inputs == std::vector<std::string>{"flame"});
    REQUIRE(chart.signals.size() == 6);
    CHECK(chart.signals[0].signal == "1 flash of 0.1 s, then dark 2.6 s, repeating");
    CHECK(chart.signals[1].signal ==
          "the count: flashes of 0.25 s, one every 0.5 s, then dark 1.5 s, repeating");
    CHECK(chart.signals[2].signal == "the count: flashes of 0.25 s, one every 0.5 s, then one long glow of 2 "
                                     "s, then dark 1.5 s, repeating");
    CHECK(chart.signals[3].signal == "1 flash of 0.15 s, one every 0.35 s, repeating");
    CHECK(chart.signals[4].signal == "dark");
    CHECK(chart.signals[5].signal == "steady");

    auto d = good(); // another table, another chart
    d.lamp.patterns[1].rest_s = 2.0;
    CHECK(door_chart(build_board(d)).signals[1].signal ==
          "the count: flashes of 0.25 s, one every 0.5 s, then dark 2 s, repeating");
}

TEST_CASE("a natural-draft furnace with a standing pilot runs by the same code") {
    const Board board = build_board(load_board("board_pilot.json"));
    const BoardCondition condition;
    BoardState state;
    BoardInputs in;
    in.supply_v = 26.0;
    BoardOutputs out;
    const std::size_t call = board.input("call"), valve = board.input("spill_limit_circuit");
    const std::size_t heat = board.output("blower_heat"), cool = board.output("blower_cool");
    const auto run = [&](double seconds) {
        for (int n = static_cast<int>(seconds / 0.05 + 0.5); n > 0; --n)
            out = step(board, condition, state, in);
    };
    run(2.0);
    CHECK(out.powered);
    in.sensed[call] = in.sensed[valve] = 26.0; // thermostat feeds the valve through limit and spill switch
    run(59.0);
    CHECK_FALSE(out.drives(heat));
    CHECK(state.steps.shown() == 2);
    run(2.0);
    CHECK(out.drives(heat));
    CHECK(state.steps.shown() == 3);
    in.sensed[valve] = 0.0; // limit or spill switch opens
    run(600.0);
    CHECK(out.drives(heat));
    CHECK(state.steps.shown() == 3);
    in.sensed[valve] = 26.0;
    run(10.0);
    in.sensed[call] = in.sensed[valve] = 0.0;
    run(119.0);
    CHECK(out.drives(heat));
    run(2.0);
    CHECK_FALSE(out.drives(heat));
    in.sensed[board.input("fan_call")] = 26.0;
    run(1.0);
    CHECK(out.drives(cool));
    in.sensed[call] = 26.0; // spill switch open from the start: the call is seen, no more
    run(10.0);
    CHECK(state.steps.shown() == 1);
    CHECK(door_chart(board).steps.size() == 3);
}
