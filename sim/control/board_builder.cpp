// SPDX-License-Identifier: MIT
#include "control/board_builder.hpp"

#include "control/board_checks.hpp"
#include "control/plain_number.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::control {
namespace {

using Names = std::vector<std::string>;

[[noreturn]] void refuse(const std::string& where, const std::string& what) {
    throw std::invalid_argument(where + ": " + what);
}

std::string listed(const Names& names) {
    std::string text;
    for (const auto& name : names)
        text += (text.empty() ? "" : ", ") + name;
    return text.empty() ? "none" : text;
}

template <class Named>
Names names_of(const std::vector<Named>& all) {
    Names names;
    for (const auto& each : all)
        names.push_back(each.name);
    return names;
}

/// Names of one kind: not empty, all different, and not more than there's room for.
void check_names(const Names& names, std::size_t most, const std::string& where) {
    if (names.size() > most)
        refuse(where,
               std::to_string(names.size()) + " of them; at most " + std::to_string(most) + " are allowed");
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i].empty())
            refuse(where, "one has an empty name; each needs a name of its own");
        if (std::find(names.begin(), names.begin() + static_cast<std::ptrdiff_t>(i), names[i]) !=
            names.begin() + static_cast<std::ptrdiff_t>(i))
            refuse(where, "'" + names[i] + "' is there twice; each needs a name of its own");
    }
}

std::size_t find(const Names& names, const std::string& name, const std::string& where, const char* kind) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end())
        refuse(where, std::string("no ") + kind + " is called '" + name + "'; allowed: " + listed(names));
    return static_cast<std::size_t>(found - names.begin());
}

/// Seconds as ticks; `least` and `most` in ticks.
std::uint32_t whole_ticks(double seconds, double tick_s, std::uint32_t least, std::uint32_t most,
                          const std::string& where) {
    const double exact = seconds / tick_s;
    if (!(exact >= 0.0 && exact <= 4.0e9))
        refuse(where, plain_number(seconds) + " s is not a duration; allowed: 0 or more seconds");
    const auto ticks = static_cast<std::uint32_t>(exact + 0.5);
    const double off = exact - static_cast<double>(ticks);
    if (off > 1e-6 || off < -1e-6)
        refuse(where,
               plain_number(seconds) + " s is not a whole number of ticks of " + plain_number(tick_s) + " s");
    if (ticks < least || ticks > most)
        refuse(where, plain_number(seconds) + " s is out of range; allowed: " + plain_number(least * tick_s) +
                          " to " + plain_number(most * tick_s) + " s");
    return ticks;
}

constexpr std::uint32_t kLongest = 20U * 86400U; // a day of 50 ms ticks: no board waits longer
constexpr std::uint32_t kFilterLongest = 255;

Sense hysteresis(double on_above, double off_below, const std::string& where) {
    if (!(off_below > 0.0 && on_above > off_below))
        refuse(where, "reads true above " + plain_number(on_above) + " and false below " +
                          plain_number(off_below) + "; allowed: 0 < off_below < on_above");
    Sense sense;
    sense.on_above = on_above;
    sense.off_below = off_below;
    return sense;
}

class Builder {
public:
    Builder(const BoardDescription& description, double tick_s) : from(description), tick(tick_s) {}

    Board build() {
        if (!(tick > 0.0))
            refuse("board", "the tick must be longer than 0 s");
        board.name = from.name;
        board.tick_s = tick;
        add_supply();
        add_inputs();
        add_names();
        add_settings();
        add_lamp();
        for (std::size_t m = 0; m < from.machines.size(); ++m)
            add_machine(m);
        add_steps();
        check_board(board, from);
        return std::move(board);
    }

private:
    void add_supply() {
        const auto& s = from.supply;
        board.supply = hysteresis(s.works_above_v, s.resets_below_v, "supply");
        const auto hold =
            static_cast<std::uint8_t>(whole_ticks(s.hold_up_s, tick, 1, kFilterLongest, "supply: hold_up_s"));
        board.supply.ticks = {hold, hold};
        board.supply_terminal = s.terminal;
    }

    void add_inputs() {
        for (const auto& input : from.inputs) {
            const std::string where = "input '" + input.name + "'";
            const bool volts = input.on_above_v && input.off_below_v;
            const bool flame = input.on_above_ua && input.off_below_ua;
            const int given = (input.on_above_v ? 1 : 0) + (input.off_below_v ? 1 : 0) +
                              (input.on_above_ua ? 1 : 0) + (input.off_below_ua ? 1 : 0);
            if (given != 2 || volts == flame)
                refuse(where,
                       "needs on_above_v and off_below_v, or on_above_ua and off_below_ua, and no others");
            if (input.terminal.empty())
                refuse(where, "has no terminal; it must sense one");
            constexpr double amperes_per_microampere = 1e-6;
            Sense sense = volts ? hysteresis(*input.on_above_v, *input.off_below_v, where)
                                : hysteresis(*input.on_above_ua, *input.off_below_ua, where);
            if (flame) {
                sense.on_above *= amperes_per_microampere;
                sense.off_below *= amperes_per_microampere;
            }
            sense.ticks = {static_cast<std::uint8_t>(whole_ticks(input.on_after_s, tick, 1, kFilterLongest,
                                                                 where + ": on_after_s")),
                           static_cast<std::uint8_t>(whole_ticks(input.off_after_s, tick, 1, kFilterLongest,
                                                                 where + ": off_after_s"))};
            board.inputs.push_back(sense);
            board.input_terminals.push_back(input.terminal);
            board.input_is_flame.push_back(flame ? 1 : 0);
        }
    }

    void add_names() {
        board.input_names = names_of(from.inputs);
        if (!from.self_check.empty()) {
            board.self_check_input = static_cast<std::uint8_t>(board.input_names.size());
            board.input_names.push_back(from.self_check);
        }
        check_names(board.input_names, kMaxInputs, "inputs");
        board.output_names = from.outputs;
        check_names(board.output_names, kMaxOutputs, "outputs");
        board.counter_names = from.counters;
        check_names(board.counter_names, kMaxCounters, "counters");
        check_names(names_of(from.settings), kMaxSettings, "settings");
        check_names(names_of(from.machines), kMaxMachines, "machines");
        if (from.machines.empty())
            refuse("machines", "there is none; a board needs at least one");
        check_names(names_of(from.lamp.patterns), kNoPattern, "lamp: patterns");
        for (const auto& machine : from.machines) {
            check_names(names_of(machine.states), kMaxStates, "machine '" + machine.name + "': states");
            for (const auto& [set, members] : machine.sets) {
                const std::string where = "machine '" + machine.name + "': set '" + set + "'";
                const Names states = names_of(machine.states);
                if (std::find(states.begin(), states.end(), set) != states.end())
                    refuse(where, "a state has that name already");
                if (members.empty())
                    refuse(where, "is empty");
                for (const auto& member : members)
                    find(states, member, where, "state");
            }
        }
    }

    void add_settings() {
        for (const auto& setting : from.settings) {
            const std::string where = "setting '" + setting.name + "'";
            if (setting.choices_s.empty() || setting.choices_s.size() > kMaxChoices)
                refuse(where, std::to_string(setting.choices_s.size()) + " choices; allowed: 1 to " +
                                  std::to_string(kMaxChoices));
            Setting made;
            made.name = setting.name;
            made.choice_count = static_cast<std::uint8_t>(setting.choices_s.size());
            bool known = false;
            const std::uint32_t chosen =
                whole_ticks(setting.chosen_s, tick, 1, kLongest, where + ": chosen_s");
            for (std::size_t i = 0; i < setting.choices_s.size(); ++i) {
                made.choice_ticks[i] =
                    whole_ticks(setting.choices_s[i], tick, 1, kLongest, where + ": choices_s");
                if (made.choice_ticks[i] != chosen)
                    continue;
                made.chosen = static_cast<std::uint8_t>(i);
                known = true;
            }
            if (!known)
                refuse(where, "chosen_s = " + plain_number(setting.chosen_s) + " is not one of its choices");
            board.settings.push_back(made);
        }
    }

    void add_lamp() {
        const auto& lamp = from.lamp;
        for (const auto& pattern : lamp.patterns) {
            const std::string where = "lamp: pattern '" + pattern.name + "'";
            const auto ticks = [&](double s, const char* key) {
                return whole_ticks(s, tick, 0, kLongest, where + ": " + key);
            };
            LampPattern made;
            made.counted = pattern.counted;
            if (pattern.flashes < 0 || pattern.flashes > 10 || (pattern.counted && pattern.flashes != 0))
                refuse(where, "flashes = " + std::to_string(pattern.flashes) +
                                  "; allowed: 0 to 10, and 0 for a counted pattern");
            made.flashes = static_cast<std::uint32_t>(pattern.flashes);
            made.on_ticks = ticks(pattern.on_s, "on_s");
            made.flash_ticks = made.on_ticks + ticks(pattern.off_s, "off_s");
            made.glow_ticks = ticks(pattern.glow_s, "glow_s");
            made.rest_ticks = ticks(pattern.rest_s, "rest_s");
            check_flash_rate(made, tick, where);
            board.patterns.push_back(made);
            board.pattern_names.push_back(pattern.name);
            board.pattern_meanings.push_back(pattern.meaning);
        }
        board.change_dark_ticks = static_cast<std::uint8_t>(whole_ticks(
            lamp.change_dark_s, tick, least_flash_ticks(tick), kFilterLongest, "lamp: change_dark_s"));
        if (!lamp.at_zero.empty()) {
            const std::size_t zero = find(board.pattern_names, lamp.at_zero, "lamp: at_zero", "pattern");
            if (board.patterns[zero].counted)
                refuse("lamp: at_zero", "'" + lamp.at_zero + "' counts; it must be one that doesn't");
            board.pattern_at_zero = static_cast<std::uint8_t>(zero);
        }
    }

    /// The states that a list of states and sets names, as bits.
    std::uint64_t members(std::size_t m, const Names& list, const std::string& where) const {
        const auto& machine = from.machines[m];
        const Names states = names_of(machine.states);
        if (list.empty())
            refuse(where, "an empty list of states; name at least one");
        std::uint64_t bits = 0;
        for (const auto& name : list) {
            const auto set = machine.sets.find(name);
            if (set != machine.sets.end()) {
                for (const auto& member : set->second)
                    bits |= std::uint64_t{1} << find(states, member, where, "state");
                continue;
            }
            Names allowed = states;
            for (const auto& each : machine.sets)
                allowed.push_back(each.first);
            bits |= std::uint64_t{1} << find(allowed, name, where, "state or set");
        }
        return bits;
    }

    std::uint64_t members_of_other(std::size_t self, const std::string& machine, const Names& list,
                                   std::size_t& m, const std::string& where) const {
        m = find(names_of(from.machines), machine, where, "machine");
        if (m == self)
            refuse(where, "looks at its own machine '" + machine + "'; its state is known there");
        return members(m, list, where);
    }

    Exit make_exit(std::size_t m, const ExitDescription& exit, const std::string& place) {
        const std::string where = place + ", exit to '" + exit.go_to + "'";
        Exit made;
        made.go_to =
            static_cast<std::uint8_t>(find(names_of(from.machines[m].states), exit.go_to, where, "state"));
        for (const auto& [name, reads] : exit.inputs) {
            const auto bit = static_cast<std::uint16_t>(1U << find(board.input_names, name, where, "input"));
            made.care = static_cast<std::uint16_t>(made.care | bit);
            if (reads)
                made.want = static_cast<std::uint16_t>(made.want | bit);
        }
        made.allowed.fill(~std::uint64_t{0});
        std::size_t other = 0;
        for (const auto& [machine, list] : exit.in) {
            const std::uint64_t bits = members_of_other(m, machine, list, other, where + ": in");
            made.allowed[other] &= bits;
        }
        for (const auto& [machine, list] : exit.not_in) {
            const std::uint64_t bits = members_of_other(m, machine, list, other, where + ": not_in");
            made.allowed[other] &= ~bits;
        }
        for (const auto& [counter, least] : exit.at_least) {
            const std::size_t c = find(board.counter_names, counter, where + ": at_least", "counter");
            if (least < 1 || least > 0xFF)
                refuse(where, "at_least " + counter + " = " + std::to_string(least) + "; allowed: 1 to 255");
            made.at_least[c] = static_cast<std::uint8_t>(least);
        }
        made.looks_further = !exit.in.empty() || !exit.not_in.empty() || !exit.at_least.empty();
        made.after_ticks = whole_ticks(exit.after_s, tick, 0, kLongest, where + ": after_s");
        if (!exit.after_setting.empty()) {
            if (exit.after_s != 0.0)
                refuse(where, "has after_s and after_setting; give only one of them");
            made.setting = static_cast<std::uint8_t>(
                find(names_of(from.settings), exit.after_setting, where + ": after_setting", "setting"));
        }
        return made;
    }

    std::uint8_t counter_bits(const Names& list, const std::string& where) const {
        std::uint32_t bits = 0;
        for (const auto& name : list)
            bits |= 1U << find(board.counter_names, name, where, "counter");
        return static_cast<std::uint8_t>(bits);
    }

    BoardStep make_state(const StateDescription& state, const std::string& where) const {
        BoardStep made;
        for (const auto& output : state.outputs)
            made.outputs = static_cast<std::uint16_t>(
                made.outputs | 1U << find(board.output_names, output, where + ": outputs", "output"));
        for (const auto& group : from.never_together) {
            int driven = 0;
            for (const auto& output : group)
                driven += made.outputs >> find(board.output_names, output, "never_together", "output") & 1;
            if (driven > 1)
                refuse(where, "drives more than one of " + listed(group) + ", which never go together");
        }
        if (!state.lamp.empty())
            made.lamp = static_cast<std::uint8_t>(
                find(board.pattern_names, state.lamp, where + ": lamp", "lamp pattern"));
        if (state.reach < 0 || state.reach > static_cast<int>(from.steps.size()))
            refuse(where, "reach = " + std::to_string(state.reach) + "; allowed: 0 to " +
                              std::to_string(from.steps.size()) + ", the steps that are listed");
        made.reach = static_cast<std::uint8_t>(state.reach);
        made.end_trial = state.end_trial;
        made.new_call = state.new_call;
        made.count_up = counter_bits(state.count_up, where + ": count_up");
        made.clear = counter_bits(state.clear, where + ": clear");
        return made;
    }

    void add_machine(std::size_t m) {
        const auto& machine = from.machines[m];
        const std::string place = "machine '" + machine.name + "'";
        const Names states = names_of(machine.states);
        Machine made;
        made.name = machine.name;
        made.state_names = states;
        if (machine.standby.empty())
            refuse(place, "names no standby state; allowed: " + listed(states));
        made.standby = static_cast<std::uint8_t>(find(states, machine.standby, place + ": standby", "state"));
        made.start = static_cast<std::uint8_t>(find(states, machine.start, place + ": start", "state"));
        std::vector<std::uint64_t> shared_by;
        for (const auto& shared : machine.shared_exits) {
            const std::string where = place + ", shared exit to '" + shared.exit.go_to + "'";
            shared_by.push_back(members(m, shared.from, where + ": from"));
            if ((shared_by.back() >> find(states, shared.exit.go_to, where, "state") & 1U) != 0)
                refuse(where, "leads from '" + shared.exit.go_to + "' to itself; take it out of from");
        }
        for (std::size_t s = 0; s < machine.states.size(); ++s) {
            const auto& state = machine.states[s];
            const std::string where = place + ", state '" + state.name + "'";
            BoardStep step = make_state(state, where);
            step.first_exit = static_cast<std::uint16_t>(made.exits.size());
            for (std::size_t e = 0; e < machine.shared_exits.size(); ++e)
                if ((shared_by[e] >> s & 1U) != 0)
                    made.exits.push_back(make_exit(m, machine.shared_exits[e].exit, where));
            for (const auto& exit : state.exits) {
                if (exit.go_to == state.name)
                    refuse(where, "has an exit to itself; it must lead elsewhere");
                made.exits.push_back(make_exit(m, exit, where));
            }
            step.exit_count = static_cast<std::uint16_t>(made.exits.size() - step.first_exit);
            made.states.push_back(step);
            made.state_titles.push_back(state.title);
        }
        board.machines.push_back(std::move(made));
    }

    void add_steps() {
        for (std::size_t i = 0; i < from.steps.size(); ++i) {
            const auto& step = from.steps[i];
            const std::string where = "step '" + step.step + "'";
            if (step.count != static_cast<int>(i) + 1)
                refuse(where, "count = " + std::to_string(step.count) +
                                  "; allowed: " + std::to_string(i + 1) + ", counts run 1, 2, 3 ...");
            CountedStep made;
            made.step = step.step;
            made.measure = step.measure;
            made.proof = static_cast<Proof>(
                find({"sensed", "timed", "commanded"}, step.how, where + ": how", "proof"));
            board.steps.push_back(std::move(made));
        }
    }

    const BoardDescription& from;
    double tick;
    Board board;
};

} // namespace

Board build_board(const BoardDescription& description, double tick_s) {
    return Builder(description, tick_s).build();
}

} // namespace lightoff::control
