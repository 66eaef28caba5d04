// SPDX-License-Identifier: MIT
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

/// A control board as people write it down: names, seconds, volts. `build_board` (board_builder.hpp)
/// checks it and turns it into the numbers that are stepped. The structs mirror the JSON file one to
/// one: a member is a key of the same name, a vector is an array, a map is an object, and a member
/// left at its default may be left out of the file.
///
/// How to read a table: one or several machines run side by side, each in one state. In each tick the
/// exits of the current state are tried in order (shared exits first, then its own); the first whose
/// conditions ALL hold is taken. All machines look at the same moment, the start of the tick.
/// Every duration must be a whole number of ticks; a state left after N seconds has driven its
/// outputs for exactly N seconds.
namespace lightoff::control {

/// A terminal that the board senses: volts to C, or the flame current. Exactly one pair of thresholds.
struct InputDescription {
    std::string name;                  ///< as the exits call it
    std::string terminal;              ///< place in the wiring; resolved by whoever joins board and network
    std::optional<double> on_above_v;  ///< rms volts to C at or above which the input reads true
    std::optional<double> off_below_v; ///< rms volts below which it reads false again; under on_above_v
    std::optional<double> on_above_ua; ///< the same for a flame input, microamps DC
    std::optional<double> off_below_ua;
    double on_after_s = 0.05;  ///< how long it must stay above, one tick .. 12.75 s
    double off_after_s = 0.05; ///< how long it must stay below
};

/// What the logic itself lives on.
struct SupplyDescription {
    std::string terminal;
    double works_above_v = 0.0;  ///< the logic starts at or above this (R to C)
    double resets_below_v = 0.0; ///< and forgets everything below this, all drivers off
    double hold_up_s = 0.05;     ///< dips shorter than this are ridden through
};

/// A delay that can be chosen on the board.
struct SettingDescription {
    std::string name;
    std::vector<double> choices_s; ///< 1 .. 8 choices
    double chosen_s = 0.0;         ///< one of the choices: as the installer should leave it
};

/// A way out of a state. All conditions must hold.
struct ExitDescription {
    std::map<std::string, bool> inputs;                 ///< input name: must read so
    std::map<std::string, std::vector<std::string>> in; ///< other machine: is in one of these states or sets
    std::map<std::string, std::vector<std::string>> not_in; ///< other machine: is in none of these
    std::map<std::string, int> at_least;                    ///< counter name: has counted so far, 1 .. 255
    double after_s = 0.0;      ///< time since the state was entered; 0 = at the next tick
    std::string after_setting; ///< or the time that this setting is set to
    std::string go_to;         ///< state of the same machine
};

/// An exit that several states have in common; tried before their own exits.
struct SharedExitDescription {
    std::vector<std::string> from; ///< states or sets of this machine
    ExitDescription exit;          ///< its keys stand beside "from" in the file
};

struct StateDescription {
    std::string name;
    std::string title;                  ///< for people: "Prepurge"
    std::vector<std::string> outputs;   ///< drivers that are on in this state
    std::string lamp;                   ///< lamp pattern; empty: this machine has nothing to say here
    bool new_call = false;              ///< on entry: both lamp registers are cleared
    int reach = 0;                      ///< on entry: this count has been passed (0: none)
    bool end_trial = false;             ///< on entry: the trial's count becomes the interrupted count
    std::vector<std::string> count_up;  ///< on entry
    std::vector<std::string> clear;     ///< on entry, after count_up
    bool held_until_power_loss = false; ///< there is deliberately no way back to standby
    std::vector<ExitDescription> exits;
};

struct MachineDescription {
    std::string name;
    std::string start;   ///< state after power comes on
    std::string standby; ///< state of rest; every state not held until power loss can get back to it
    std::map<std::string, std::vector<std::string>> sets; ///< name for a group of states
    std::vector<SharedExitDescription> shared_exits;
    std::vector<StateDescription> states;
};

/// One cycle: flashes (on, off) one after another, then a glow, then a rest.
struct LampPatternDescription {
    std::string name;
    std::string meaning;  ///< for the door chart
    bool counted = false; ///< as many flashes as steps passed, instead of `flashes`
    int flashes = 0;
    double on_s = 0.0;
    double off_s = 0.0;
    double glow_s = 0.0;
    double rest_s = 0.0;
};

struct LampDescription {
    double change_dark_s = 0.0; ///< dark before a new pattern or count begins
    std::string at_zero;        ///< pattern shown for a counted one without glow while no step is passed
    std::vector<LampPatternDescription> patterns; ///< no more than 3 flashes a second
};

/// A step that the lamp counts.
struct StepDescription {
    int count = 0; ///< 1, 2, 3 ... without a gap
    std::string step;
    std::string how; ///< "sensed", "timed" or "commanded"; checked against the exits that lead there
    std::vector<std::string> measure; ///< what to measure when the lamp stops at this count
};

struct BoardDescription {
    std::string name;
    SupplyDescription supply;
    std::string
        self_check; ///< name of the input that is false when the board's own check fails; may be empty
    std::vector<InputDescription> inputs;
    std::vector<std::string> outputs;
    std::vector<std::vector<std::string>>
        never_together; ///< groups of outputs no two of which one state may drive
    std::vector<std::string> counters;
    std::vector<SettingDescription> settings;
    std::vector<MachineDescription> machines;
    LampDescription lamp;
    std::vector<StepDescription> steps;
};

} // namespace lightoff::control
