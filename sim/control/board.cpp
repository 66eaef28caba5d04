// SPDX-License-Identifier: MIT
#include "control/board.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::control {
namespace {

std::size_t index_of(const std::vector<std::string>& names, std::string_view name, const char* kind) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found != names.end())
        return static_cast<std::size_t>(found - names.begin());
    std::string message = std::string("board has no ") + kind + " '" + std::string(name) + "'; it has:";
    for (const auto& each : names)
        message += " " + each;
    throw std::invalid_argument(message);
}

template <class Named>
std::vector<std::string> names_of(const std::vector<Named>& all) {
    std::vector<std::string> names;
    for (const auto& each : all)
        names.push_back(each.name);
    return names;
}

bool has_bit(std::uint64_t bits, std::size_t i) {
    return (bits >> i & 1U) != 0;
}

/// True if the filtered reading turns over in this tick.
bool turns(const Sense& sense, bool now, double value, std::uint8_t& filter) {
    const bool raw = value >= (now ? sense.off_below : sense.on_above);
    filter = raw == now ? std::uint8_t{0} : static_cast<std::uint8_t>(filter + 1U);
    const bool over = filter >= sense.ticks[now ? 1 : 0];
    if (over)
        filter = 0;
    return over;
}

void sense_inputs(const Board& board, const BoardCondition& condition, BoardState& state,
                  const BoardInputs& inputs) {
    std::uint32_t turned = 0;
    for (std::size_t i = 0; i < board.inputs.size(); ++i) {
        const bool now = has_bit(state.sensed, i);
        const double value = inputs.sensed[i] * condition.sense_gain[i];
        turned |= static_cast<std::uint32_t>(turns(board.inputs[i], now, value, state.filter[i])) << i;
    }
    std::uint32_t sensed = state.sensed ^ turned;
    if (board.self_check_input < kMaxInputs) {
        const std::uint32_t bit = 1U << board.self_check_input;
        sensed = condition.bad_memory_cells == 0 ? sensed | bit : sensed & ~bit;
    }
    state.sensed = static_cast<std::uint16_t>(sensed);
}

} // namespace

std::uint32_t delay_ticks(const Board& board, const BoardCondition& condition, const Exit& exit) {
    if (exit.setting == kMaxSettings)
        return exit.after_ticks;
    const Setting& setting = board.settings[exit.setting];
    const std::uint32_t choice = setting.chosen + std::uint32_t{condition.choice[exit.setting]};
    return setting.choice_ticks[choice % setting.choice_count];
}

namespace {

bool others_allow(const Exit& exit, const std::array<std::uint8_t, kMaxMachines>& at,
                  const std::array<std::uint8_t, kMaxCounters>& counter) {
    for (std::size_t m = 0; m < kMaxMachines; ++m)
        if (!has_bit(exit.allowed[m], at[m]))
            return false;
    for (std::size_t c = 0; c < kMaxCounters; ++c)
        if (counter[c] < exit.at_least[c])
            return false;
    return true;
}

} // namespace

const Exit* open_exit(const Board& board, const BoardCondition& condition, const BoardState& state,
                      std::size_t machine) {
    const Machine& of = board.machines[machine];
    const BoardStep& here = of.states[state.state[machine]];
    const Exit* exit = of.exits.data() + here.first_exit;
    for (const Exit* end = exit + here.exit_count; exit != end; ++exit) {
        if ((state.sensed & exit->care) != exit->want)
            continue;
        if (state.ticks_in_state[machine] < delay_ticks(board, condition, *exit))
            continue;
        if (exit->looks_further && !others_allow(*exit, state.state, state.counter))
            continue;
        return exit;
    }
    return nullptr;
}

namespace {

void count(const BoardStep& entered, std::array<std::uint8_t, kMaxCounters>& counter) {
    for (std::size_t c = 0; c < kMaxCounters; ++c) {
        if (has_bit(entered.count_up, c) && counter[c] < 0xFF)
            ++counter[c];
        if (has_bit(entered.clear, c))
            counter[c] = 0;
    }
}

/// All machines leave at the same moment; what their entries do comes after, in a fixed order (a step
/// reached in the very tick that ends the trial still belongs to that trial).
void move_machines(const Board& board, const BoardCondition& condition, BoardState& state) {
    std::array<const Exit*, kMaxMachines> taken{};
    bool any = false;
    for (std::size_t m = 0; m < board.machines.size(); ++m) {
        if (state.ticks_in_state[m] < 0xFFFFFFFF)
            ++state.ticks_in_state[m];
        taken[m] = open_exit(board, condition, state, m);
        any = any || taken[m] != nullptr;
    }
    if (!any)
        return;
    std::array<const BoardStep*, kMaxMachines> entered{};
    for (std::size_t m = 0; m < board.machines.size(); ++m) {
        if (taken[m] == nullptr)
            continue;
        state.state[m] = taken[m]->go_to;
        state.ticks_in_state[m] = 0;
        entered[m] = &board.machines[m].states[taken[m]->go_to];
    }
    for (const BoardStep* step : entered)
        if (step != nullptr && step->new_call)
            state.steps.new_call();
    for (const BoardStep* step : entered)
        if (step != nullptr)
            state.steps.reach(step->reach);
    for (const BoardStep* step : entered)
        if (step != nullptr && step->end_trial)
            state.steps.end_trial();
    for (const BoardStep* step : entered)
        if (step != nullptr)
            count(*step, state.counter);
}

void drive(const Board& board, BoardState& state) {
    std::uint32_t outputs = 0;
    std::uint8_t pattern = kNoPattern;
    for (std::size_t m = 0; m < board.machines.size(); ++m) {
        const BoardStep& here = board.machines[m].states[state.state[m]];
        outputs |= here.outputs;
        if (pattern == kNoPattern)
            pattern = here.lamp;
    }
    state.outputs = static_cast<std::uint16_t>(outputs);

    std::uint8_t shown = 0;
    if (pattern != kNoPattern && board.patterns[pattern].counted) {
        shown = state.steps.shown();
        if (shown == 0 && board.patterns[pattern].glow_ticks == 0)
            pattern = board.pattern_at_zero;
    }
    const LampPattern* picture = pattern == kNoPattern ? nullptr : &board.patterns[pattern];
    step_lamp(state.lamp, picture, pattern, shown, board.change_dark_ticks);
}

/// Follows the supply; true while the logic works.
bool keep_power(const Board& board, BoardState& state, double supply_v) {
    if (!turns(board.supply, state.powered != 0, supply_v, state.supply_filter))
        return state.powered != 0;
    const bool on = state.powered == 0;
    state = {};
    if (!on)
        return false;
    state.powered = 1;
    for (std::size_t m = 0; m < board.machines.size(); ++m)
        state.state[m] = board.machines[m].start;
    return true;
}

} // namespace

std::size_t Board::input(std::string_view name_) const {
    return index_of(input_names, name_, "input");
}
std::size_t Board::output(std::string_view name_) const {
    return index_of(output_names, name_, "output");
}
std::size_t Board::counter(std::string_view name_) const {
    return index_of(counter_names, name_, "counter");
}
std::size_t Board::setting(std::string_view name_) const {
    return index_of(names_of(settings), name_, "setting");
}
std::size_t Board::machine(std::string_view name_) const {
    return index_of(names_of(machines), name_, "machine");
}
std::size_t Board::state(std::size_t machine_, std::string_view name_) const {
    return index_of(machines[machine_].state_names, name_, "state");
}

BoardOutputs step(const Board& board, const BoardCondition& condition, BoardState& state,
                  const BoardInputs& inputs) {
    if (!keep_power(board, state, inputs.supply_v))
        return {};
    sense_inputs(board, condition, state, inputs);
    move_machines(board, condition, state);
    drive(board, state);
    BoardOutputs outputs;
    outputs.drivers = state.outputs;
    outputs.lamp_on = state.lamp.on != 0;
    outputs.powered = true;
    return outputs;
}

} // namespace lightoff::control
