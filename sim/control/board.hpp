// SPDX-License-Identifier: MIT
#pragma once
#include "control/lamp.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// The control board: a table of states (board_description.hpp) stepped once a tick. It knows only
/// what its terminals sense; what its drivers cause, others compute.
namespace lightoff::control {

inline constexpr std::size_t kMaxInputs = 16;
inline constexpr std::size_t kMaxOutputs = 16;
inline constexpr std::size_t kMaxMachines = 4;
inline constexpr std::size_t kMaxCounters = 8;
inline constexpr std::size_t kMaxSettings = 4;
inline constexpr std::size_t kMaxChoices = 8;
inline constexpr std::size_t kMaxStates = 64;

/// Comparator with hysteresis and a counting filter.
struct Sense {
    double on_above = 0.0;               ///< volts, or amperes for the flame
    double off_below = 0.0;              ///< same unit
    std::array<std::uint8_t, 2> ticks{}; ///< ticks to turn true [0], to turn false [1]
};

/// A way out of a state, as bit masks.
struct Exit {
    std::uint16_t care = 0; ///< inputs that are looked at
    std::uint16_t want = 0; ///< how they must read
    std::uint8_t go_to = 0;
    std::uint8_t setting = kMaxSettings; ///< delay from this setting; kMaxSettings: none
    bool looks_further = false;          ///< has conditions on machines or counters
    std::uint32_t after_ticks = 0;
    std::array<std::uint64_t, kMaxMachines> allowed{}; ///< for each machine the states it may be in
    std::array<std::uint8_t, kMaxCounters> at_least{};
};

/// A state: what it drives, what its entry does, where its exits stand.
struct BoardStep {
    std::uint16_t outputs = 0;
    std::uint16_t first_exit = 0;
    std::uint16_t exit_count = 0;
    std::uint8_t lamp = kNoPattern;
    std::uint8_t reach = 0;
    std::uint8_t count_up = 0; ///< counters, as bits
    std::uint8_t clear = 0;
    bool end_trial = false;
    bool new_call = false;
};

struct Machine {
    std::vector<BoardStep> states;
    std::vector<Exit> exits;
    std::uint8_t start = 0;
    std::uint8_t standby = 0;
    std::string name;
    std::vector<std::string> state_names;
    std::vector<std::string> state_titles;
};

struct Setting {
    std::string name;
    std::array<std::uint32_t, kMaxChoices> choice_ticks{};
    std::uint8_t choice_count = 1;
    std::uint8_t chosen = 0;
};

/// How a step that the lamp counts is known to the board.
enum class Proof : std::uint8_t { sensed, timed, commanded };

struct CountedStep {
    std::string step;
    Proof proof = Proof::sensed;
    std::vector<std::string> inputs; ///< that the exits leading there look for
    std::vector<std::string> measure;
};

/// An immutable board, made by build_board and shared by all that step it.
struct Board {
    double tick_s = 0.0; ///< the tick that all durations were counted in
    Sense supply;
    std::vector<Sense> inputs;
    std::uint8_t self_check_input = kMaxInputs; ///< bit of the board's own check; kMaxInputs: none
    std::vector<Machine> machines;
    std::vector<Setting> settings;
    std::vector<LampPattern> patterns;
    std::uint8_t change_dark_ticks = 0;
    std::uint8_t pattern_at_zero = kNoPattern;

    std::string name;
    std::string supply_terminal;
    std::vector<std::string> input_names; ///< the self check, if any, stands last
    std::vector<std::string> input_terminals;
    std::vector<std::uint8_t> input_is_flame;
    std::vector<std::string> output_names;
    std::vector<std::string> counter_names;
    std::vector<std::string> pattern_names;
    std::vector<std::string> pattern_meanings;
    std::vector<CountedStep> steps; ///< count 1 first

    /// Indices by name; std::invalid_argument if there is none of that name. For wiring up and tests.
    [[nodiscard]] std::size_t input(std::string_view name_) const;
    [[nodiscard]] std::size_t output(std::string_view name_) const;
    [[nodiscard]] std::size_t counter(std::string_view name_) const;
    [[nodiscard]] std::size_t setting(std::string_view name_) const;
    [[nodiscard]] std::size_t machine(std::string_view name_) const;
    [[nodiscard]] std::size_t state(std::size_t machine_, std::string_view name_) const;
};

/// How the board IS. Neutral: healthy, set as it should be.
struct BoardCondition {
    /// Gain of each input's divider: 1 healthy, 0 burnt away, in between drifted.
    std::array<double, kMaxInputs> sense_gain;
    std::uint32_t bad_memory_cells = 0; ///< any: the board's own check fails
    /// Choice of each setting, counted from the proper one, cyclic.
    std::array<std::uint8_t, kMaxSettings> choice{};

    BoardCondition() { sense_gain.fill(1.0); }

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("sense_gain", "", self.sense_gain);
        visit("bad_memory_cells", "", self.bad_memory_cells);
        visit("choice", "", self.choice);
    }
};

/// What the board's terminals carry.
struct BoardInputs {
    double supply_v = 0.0; ///< R to C at the board, rms
    /// In the order of the table's inputs: volts rms to C, or amperes DC for the flame input.
    std::array<double, kMaxInputs> sensed{};
};

struct BoardState {
    std::array<std::uint32_t, kMaxMachines> ticks_in_state{};
    LampState lamp;
    std::uint16_t sensed = 0;                      ///< filtered inputs, as bits
    std::uint16_t outputs = 0;                     ///< drivers, as bits
    std::array<std::uint8_t, kMaxInputs> filter{}; ///< ticks that a comparator has disagreed
    std::array<std::uint8_t, kMaxMachines> state{};
    std::array<std::uint8_t, kMaxCounters> counter{};
    LampRegisters steps;
    std::uint8_t powered = 0;
    std::uint8_t supply_filter = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("ticks_in_state", "ticks", self.ticks_in_state);
        visit("lamp", self.lamp);
        visit("sensed", "", self.sensed);
        visit("outputs", "", self.outputs);
        visit("filter", "ticks", self.filter);
        visit("state", "", self.state);
        visit("counter", "", self.counter);
        visit("steps", self.steps);
        visit("powered", "", self.powered);
        visit("supply_filter", "ticks", self.supply_filter);
    }
};

/// Drivers and lamp after this tick; relays and network act on them in the next.
struct BoardOutputs {
    std::uint16_t drivers = 0; ///< in the order of the table's outputs, as bits
    bool lamp_on = false;
    bool powered = false;

    [[nodiscard]] bool drives(std::size_t output) const {
        return (std::uint32_t{drivers} >> output & 1U) != 0;
    }
};

/// How long a state must have lasted for an exit, as the board is set.
std::uint32_t delay_ticks(const Board& board, const BoardCondition& condition, const Exit& exit);

/// The exit that a machine takes as things stand: the first whose conditions all hold; nullptr if it stays.
const Exit* open_exit(const Board& board, const BoardCondition& condition, const BoardState& state,
                      std::size_t machine);

/// One tick of board.tick_s. A board without power forgets everything and drives nothing.
BoardOutputs step(const Board& board, const BoardCondition& condition, BoardState& state,
                  const BoardInputs& inputs);

} // namespace lightoff::control
