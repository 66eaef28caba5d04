// SPDX-License-Identifier: MIT
#include "control/board_checks.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::control {
namespace {

[[noreturn]] void refuse(const std::string& where, const std::string& what) {
    throw std::invalid_argument(where + ": " + what);
}

std::string place(const Machine& machine, std::size_t state) {
    return "machine '" + machine.name + "', state '" + machine.state_names[state] + "'";
}

template <class Visit>
void for_each_exit(const Machine& machine, Visit&& visit) {
    for (std::size_t s = 0; s < machine.states.size(); ++s)
        for (std::size_t e = 0; e < machine.states[s].exit_count; ++e)
            visit(s, machine.exits[machine.states[s].first_exit + e]);
}

/// States connected with those marked, along the exits or against them.
std::uint64_t spread(const Machine& machine, std::uint64_t marked, bool along) {
    for (std::uint64_t last = 0; last != marked;) {
        last = marked;
        for_each_exit(machine, [&](std::size_t s, const Exit& exit) {
            const std::size_t tail = along ? s : exit.go_to;
            const std::size_t head = along ? exit.go_to : s;
            if ((marked >> tail & 1U) != 0)
                marked |= std::uint64_t{1} << head;
        });
    }
    return marked;
}

void check_connected(const Machine& machine, const MachineDescription& from) {
    const std::uint64_t reached = spread(machine, std::uint64_t{1} << machine.start, true);
    const std::uint64_t returns = spread(machine, std::uint64_t{1} << machine.standby, false);
    for (std::size_t s = 0; s < machine.states.size(); ++s) {
        if ((reached >> s & 1U) == 0)
            refuse(place(machine, s),
                   "can't be reached from '" + from.start + "'; lead an exit there or take it out");
        const bool held = from.states[s].held_until_power_loss;
        if ((returns >> s & 1U) == 0 && !held)
            refuse(place(machine, s),
                   "has no way back to '" + from.standby + "'; add an exit or say held_until_power_loss");
        if ((returns >> s & 1U) != 0 && held)
            refuse(place(machine, s),
                   "says held_until_power_loss but has a way back to '" + from.standby + "'");
    }
}

/// True if whatever opens `later` opens `earlier` too, at the same tick or before.
bool shadows(const Exit& earlier, const Exit& later) {
    if (earlier.setting != kMaxSettings && earlier.setting != later.setting)
        return false;
    if (earlier.setting == kMaxSettings && later.setting == kMaxSettings &&
        earlier.after_ticks > later.after_ticks)
        return false;
    if (earlier.setting == kMaxSettings && later.setting != kMaxSettings && earlier.after_ticks > 0)
        return false;
    if ((earlier.care & later.care) != earlier.care || (later.want & earlier.care) != earlier.want)
        return false;
    for (std::size_t m = 0; m < kMaxMachines; ++m)
        if ((later.allowed[m] & ~earlier.allowed[m]) != 0)
            return false;
    for (std::size_t c = 0; c < kMaxCounters; ++c)
        if (earlier.at_least[c] > later.at_least[c])
            return false;
    return true;
}

void check_exits(const Board& board, const Machine& machine, std::uint32_t counted_up) {
    for (std::size_t s = 0; s < machine.states.size(); ++s) {
        const BoardStep& state = machine.states[s];
        for (std::size_t e = 0; e < state.exit_count; ++e) {
            const Exit& exit = machine.exits[state.first_exit + e];
            const std::string where = place(machine, s) + ", exit " + std::to_string(e + 1) + " (to '" +
                                      machine.state_names[exit.go_to] + "')";
            for (std::size_t m = 0; m < board.machines.size(); ++m) {
                const std::uint64_t all = ~std::uint64_t{0} >> (64U - board.machines[m].states.size());
                if ((exit.allowed[m] & all) == 0)
                    refuse(where, "can never be taken: it allows no state of machine '" +
                                      board.machines[m].name + "'");
            }
            for (std::size_t c = 0; c < board.counter_names.size(); ++c)
                if (exit.at_least[c] > 0 && (counted_up >> c & 1U) == 0)
                    refuse(where, "can never be taken: no state counts up '" + board.counter_names[c] + "'");
            for (std::size_t before = 0; before < e; ++before)
                if (shadows(machine.exits[state.first_exit + before], exit))
                    refuse(where, "can never be taken: exit " + std::to_string(before + 1) +
                                      " is taken first whenever it could be");
        }
    }
}

void refuse_unused(const std::vector<std::string>& names, std::uint32_t used, const char* kind) {
    for (std::size_t i = 0; i < names.size(); ++i)
        if ((used >> i & 1U) == 0)
            refuse(std::string(kind) + " '" + names[i] + "'", "is never used; take it out");
}

void check_all_used(const Board& board) {
    std::uint32_t inputs = 0, outputs = 0, counters = 0, settings = 0;
    for (const Machine& machine : board.machines) {
        for (const BoardStep& state : machine.states) {
            outputs |= state.outputs;
        }
        for (const Exit& exit : machine.exits) {
            inputs |= exit.care;
            if (exit.setting < kMaxSettings)
                settings |= 1U << exit.setting;
            for (std::size_t c = 0; c < kMaxCounters; ++c)
                if (exit.at_least[c] > 0)
                    counters |= 1U << c;
        }
    }
    std::vector<std::string> setting_names;
    for (const Setting& setting : board.settings)
        setting_names.push_back(setting.name);
    refuse_unused(board.input_names, inputs, "input");
    refuse_unused(board.output_names, outputs, "output");
    refuse_unused(board.counter_names, counters, "counter");
    refuse_unused(setting_names, settings, "setting");
    for (std::size_t p = 0; p < board.patterns.size(); ++p) {
        bool used = p == board.pattern_at_zero;
        for (const Machine& machine : board.machines)
            for (const BoardStep& state : machine.states)
                used = used || state.lamp == p;
        if (!used)
            refuse("lamp: pattern '" + board.pattern_names[p] + "'", "is never used; take it out");
    }
}

void note(const std::map<std::string, std::vector<std::string>>& looked_at, const std::string& machine,
          std::vector<std::string>& used) {
    const auto found = looked_at.find(machine);
    if (found != looked_at.end())
        used.insert(used.end(), found->second.begin(), found->second.end());
}

void check_sets_used(const BoardDescription& description) {
    for (const auto& machine : description.machines) {
        std::vector<std::string> used;
        for (const auto& shared : machine.shared_exits)
            used.insert(used.end(), shared.from.begin(), shared.from.end());
        for (const auto& other : description.machines) {
            for (const auto& shared : other.shared_exits) {
                note(shared.exit.in, machine.name, used);
                note(shared.exit.not_in, machine.name, used);
            }
            for (const auto& state : other.states)
                for (const auto& exit : state.exits) {
                    note(exit.in, machine.name, used);
                    note(exit.not_in, machine.name, used);
                }
        }
        for (const auto& set : machine.sets)
            if (std::find(used.begin(), used.end(), set.first) == used.end())
                refuse("machine '" + machine.name + "': set '" + set.first + "'",
                       "is never used; take it out");
    }
}

/// States of the machine by their distance from the start, nearest first.
std::vector<std::size_t> by_distance(const Machine& machine) {
    std::vector<std::size_t> order{machine.start};
    for (std::size_t next = 0; next < order.size(); ++next)
        for (std::size_t e = 0; e < machine.states[order[next]].exit_count; ++e) {
            const std::size_t to = machine.exits[machine.states[order[next]].first_exit + e].go_to;
            if (std::find(order.begin(), order.end(), to) == order.end())
                order.push_back(to);
        }
    return order;
}

/// The exits on the shortest way to this count (restarts within a call may come another way).
std::vector<const Exit*> shortest_way(const Machine& machine, std::uint8_t count) {
    std::vector<const Exit*> way;
    for (const std::size_t s : by_distance(machine)) {
        const BoardStep& state = machine.states[s];
        if (state.reach >= count)
            continue;
        for (std::size_t e = 0; e < state.exit_count; ++e) {
            const Exit& exit = machine.exits[state.first_exit + e];
            if (machine.states[exit.go_to].reach == count)
                way.push_back(&exit);
        }
        if (!way.empty())
            break;
    }
    return way;
}

/// Finds what the table looks for on the way to a counted step; it must bear out what the step says.
void prove_step(const Board& board, std::size_t index, CountedStep& step) {
    const auto count = static_cast<std::uint8_t>(index + 1);
    bool timed = false, commanded = false;
    std::uint32_t inputs = 0;
    std::size_t ways = 0;
    for (const Machine& machine : board.machines)
        for (const Exit* exit : shortest_way(machine, count)) {
            ++ways;
            inputs |= exit->want;
            timed = timed || exit->after_ticks > 0 || exit->setting < kMaxSettings;
            commanded = commanded || machine.states[exit->go_to].outputs != 0;
        }
    const std::string where = "step '" + step.step + "'";
    if (ways == 0)
        refuse(where, "no state has reach = " + std::to_string(count));
    if (step.proof == Proof::sensed && inputs == 0)
        refuse(where, "says sensed, but no exit that leads there looks for an input");
    if (step.proof == Proof::timed && !timed)
        refuse(where, "says timed, but no exit that leads there waits");
    if (step.proof == Proof::commanded && !commanded)
        refuse(where, "says commanded, but no state that passes it drives an output");
    if (step.proof != Proof::sensed)
        return;
    for (std::size_t i = 0; i < board.input_names.size(); ++i)
        if ((inputs >> i & 1U) != 0)
            step.inputs.push_back(board.input_names[i]);
}

} // namespace

std::uint32_t least_flash_ticks(double tick_s) {
    const double exact = 1.0 / 3.0 / tick_s;
    const auto whole = static_cast<std::uint32_t>(exact);
    return static_cast<double>(whole) < exact ? whole + 1 : whole;
}

void check_flash_rate(const LampPattern& pattern, double tick_s, const std::string& where) {
    const std::uint32_t least = least_flash_ticks(tick_s);
    const std::string most = "; at most 3 flashes a second are allowed";
    const bool flashes = pattern.counted || pattern.flashes > 0;
    if (flashes && (pattern.on_ticks == 0 || pattern.on_ticks >= pattern.flash_ticks))
        refuse(where, "its flashes need a time on (on_s) and a time off (off_s)");
    if (!flashes && pattern.flash_ticks > 0)
        refuse(where, "has on_s or off_s but no flashes");
    if (flashes && pattern.flash_ticks < least)
        refuse(where, "flashes too fast" + most);
    if (pattern.glow_ticks > 0 && pattern.rest_ticks > 0 && pattern.glow_ticks + pattern.rest_ticks < least)
        refuse(where, "glow and rest are too short" + most);
    if (flashes && pattern.glow_ticks > 0 && pattern.rest_ticks == 0)
        refuse(where, "has a glow and no rest, so the count could not be told from the glow");
    if (!flashes && pattern.glow_ticks == 0 && pattern.rest_ticks == 0)
        refuse(where, "is empty; a dark pattern needs a rest_s");
}

void check_board(Board& board, const BoardDescription& description) {
    std::uint32_t counted_up = 0;
    for (const Machine& machine : board.machines)
        for (const BoardStep& state : machine.states)
            counted_up |= state.count_up;
    for (std::size_t m = 0; m < board.machines.size(); ++m) {
        check_connected(board.machines[m], description.machines[m]);
        check_exits(board, board.machines[m], counted_up);
    }
    check_all_used(board);
    check_sets_used(description);
    for (std::size_t i = 0; i < board.steps.size(); ++i)
        prove_step(board, i, board.steps[i]);
}

} // namespace lightoff::control
