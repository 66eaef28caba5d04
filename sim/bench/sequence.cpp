// SPDX-License-Identifier: MIT
#include "bench/sequence.hpp"

#include <algorithm>

namespace lightoff::bench {
namespace {

bool has_bit(std::uint64_t bits, std::size_t bit) {
    return (bits >> bit & 1U) != 0;
}

/// The board as it stood when its machines looked for a way out of their states: what they were at, and what
/// the tick had just sensed.
control::BoardState at_the_look(const control::BoardState& before, const control::BoardState& after) {
    control::BoardState look = before;
    look.sensed = after.sensed;
    for (std::uint32_t& ticks : look.ticks_in_state)
        ++ticks;
    return look;
}

bool are_alike(const control::Exit& a, const control::Exit& b) {
    return a.care == b.care && a.want == b.want && a.go_to == b.go_to && a.setting == b.setting &&
           a.after_ticks == b.after_ticks && a.allowed == b.allowed && a.at_least == b.at_least;
}

/// The states that a machine may be in, if not all are allowed, or those that it may not: the shorter list.
WayOn::Elsewhere elsewhere(const control::Machine& machine, std::uint64_t allowed) {
    std::vector<std::string> in;
    std::vector<std::string> out;
    for (std::size_t s = 0; s < machine.state_titles.size(); ++s)
        (has_bit(allowed, s) ? in : out).push_back(machine.state_titles[s]);
    const bool by_in = in.size() <= out.size();
    return {machine.name, by_in ? std::move(in) : std::move(out), by_in};
}

} // namespace

void SequenceWatch::look(const World& world, std::vector<SequenceStep>& out) {
    const control::Board& board = model_->board;
    const control::BoardState now = world.state.board;
    const bool first = !seen_;
    const control::BoardState before = seen_.value_or(now);
    seen_ = now;
    const bool powered = now.powered != 0;
    const bool was_powered = before.powered != 0;
    if (!powered) {
        if (first || was_powered)
            out.push_back({world.tick, false, 0, 0, before.state[0], 0, before.outputs, {}});
        return;
    }
    for (std::size_t m = 0; m < board.machines.size(); ++m) {
        const bool begins = first || !was_powered; // a machine at rest then has no step of its own
        if (begins ? m > 0 : now.state[m] == before.state[m])
            continue;
        SequenceStep step{world.tick, true, m, now.state[m], before.state[m], 0, 0, {}};
        step.switched_on = static_cast<std::uint16_t>(now.outputs & ~before.outputs);
        step.switched_off = static_cast<std::uint16_t>(before.outputs & ~now.outputs);
        if (!begins)
            if (const control::Exit* exit =
                    control::open_exit(board, world.condition.board, at_the_look(before, now), m))
                step.by = *exit;
        out.push_back(step);
    }
}

std::string title_of(const furnace::Model& model, const SequenceStep& step) {
    return step.powered ? model.board.machines[step.machine].state_titles[step.state] : "No control power";
}

WayOn way_of(const furnace::Model& model, const furnace::Condition& condition, std::size_t machine,
             const control::Exit& exit) {
    const control::Board& board = model.board;
    WayOn way;
    for (std::size_t i = 0; i < board.input_names.size(); ++i)
        if (has_bit(exit.care, i))
            way.sensed.push_back({i, has_bit(exit.want, i)});
    way.after_s = board.tick_s * control::delay_ticks(board, condition.board, exit);
    if (exit.looks_further) {
        for (std::size_t m = 0; m < board.machines.size(); ++m)
            if (WayOn::Elsewhere other = elsewhere(board.machines[m], exit.allowed[m]); !other.titles.empty())
                way.elsewhere.push_back(std::move(other));
        for (std::size_t c = 0; c < board.counter_names.size(); ++c)
            if (exit.at_least[c] > 0)
                way.counted.push_back({board.counter_names[c], exit.at_least[c]});
    }
    way.leads_to = board.machines[machine].state_titles[exit.go_to];
    const std::vector<control::Exit>& all = board.machines[machine].exits;
    way.common = std::count_if(all.begin(), all.end(),
                               [&](const control::Exit& other) { return are_alike(exit, other); }) > 1;
    return way;
}

std::vector<WayOn> ways_out(const furnace::Model& model, const furnace::Condition& condition,
                            std::size_t machine, std::size_t state) {
    const control::Machine& of = model.board.machines[machine];
    const control::BoardStep& step = of.states[state];
    std::vector<WayOn> ways;
    for (std::size_t i = 0; i < step.exit_count; ++i)
        ways.push_back(way_of(model, condition, machine, of.exits[step.first_exit + i]));
    return ways;
}

} // namespace lightoff::bench
