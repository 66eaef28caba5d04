// SPDX-License-Identifier: MIT
#include "control/bench.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <stdexcept>
#include <vector>

namespace control_tests {
using namespace lightoff::control;

constexpr double kTick = 0.05;

Bench::Bench(const Board& table)
    : board(table), inducer(table.output("inducer")), igniter(table.output("igniter")),
      gas_valve(table.output("gas_valve")), call(table.input("call")), fan_call(table.input("fan_call")),
      rollout(table.input("rollout")), limit(table.input("limit")),
      pressure_switch(table.input("pressure_switch")), valve_feedback(table.input("valve_feedback")),
      flame(table.input("flame")) {}

void Bench::follow() {
    Plant& p = plant;
    const bool inducer_on = out.drives(inducer);
    p.inducer_on_s = inducer_on ? p.inducer_on_s + kTick : 0.0;
    p.inducer_off_s = inducer_on ? 0.0 : p.inducer_off_s + kTick;
    constexpr double hair = 1e-9; // the sums of ticks are a little off
    if (p.inducer_on_s + hair >= p.switch_closes_after_s && !p.hose_plugged)
        p.pressure_switch = true;
    if (p.inducer_off_s + hair >= p.switch_opens_after_s || p.hose_plugged)
        p.pressure_switch = false;
    if (p.switch_stuck_closed)
        p.pressure_switch = true;

    const bool chain = p.supply_v > 10.0 && p.rollout_closed && p.limit_closed && p.pressure_switch;
    const bool gas = chain && (out.drives(gas_valve) || p.valve_relay_welded) && p.gas_open;
    p.igniter_on_s = out.drives(igniter) && p.igniter_good ? p.igniter_on_s + kTick : 0.0;
    const bool hot = p.igniter_on_s > 15.0;
    p.gas_s = gas && hot ? p.gas_s + kTick : (gas ? p.gas_s : 0.0);
    if (!gas || p.flame_out)
        p.flame = false;
    if (gas && !p.flame_out && p.gas_s + hair >= p.flame_after_s && hot)
        p.flame = true;
    if (p.valve_leaks)
        p.flame = true;
}

BoardInputs Bench::wire() const {
    const Plant& p = plant;
    BoardInputs in;
    in.supply_v = p.supply_v;
    const auto put = [&](std::size_t input, double value) { in.sensed[input] = value; };
    double chain = p.supply_v;
    put(call, p.call ? p.supply_v : 0.0);
    put(fan_call, p.fan ? p.supply_v : 0.0);
    put(rollout, chain *= p.rollout_closed ? 1.0 : 0.0);
    put(limit, chain *= p.limit_closed ? 1.0 : 0.0);
    put(pressure_switch, chain *= p.pressure_switch ? 1.0 : 0.0);
    put(valve_feedback, chain *= out.drives(gas_valve) || p.valve_relay_welded ? 1.0 : 0.0);
    put(flame, p.flame ? p.flame_ua * 1e-6 : 0.0);
    return in;
}

void Bench::tick() {
    follow();
    out = step(board, condition, state, wire());
    plant.time_s += kTick;
    if (watch)
        watch();
}

void Bench::run(double seconds) {
    for (int n = static_cast<int>(seconds / kTick + 0.5); n > 0; --n)
        tick();
}

double Bench::run_to(const std::string& burner_state, double limit_s) {
    const double start = plant.time_s;
    const std::size_t wanted = board.state(0, burner_state);
    while (state.powered == 0 || state.state[0] != wanted) {
        if (plant.time_s - start > limit_s)
            throw std::runtime_error("never came to " + burner_state + "; is in " + burner());
        tick();
    }
    return plant.time_s - start;
}

std::string Bench::burner() const {
    return board.machines[0].state_names[state.state[0]];
}
std::string Bench::blower() const {
    return board.machines[1].state_names[state.state[1]];
}
bool Bench::on(const std::string& output) const {
    return out.drives(board.output(output));
}

Bench::Seen Bench::look() {
    // lengths of on and off, as an eye with a stop watch would note them over 20 s
    std::vector<std::pair<bool, int>> spells;
    for (int n = 0; n < 400; ++n) {
        tick();
        if (spells.empty() || spells.back().first != out.lamp_on)
            spells.emplace_back(out.lamp_on, 0);
        ++spells.back().second;
    }
    Seen seen;
    for (const auto& spell : spells)
        (spell.first ? seen.ever_lit : seen.ever_dark) = true;
    for (std::size_t i = 1; i + 2 < spells.size(); ++i)
        if (spells[i].first)
            seen.fastest_s = std::min(seen.fastest_s, kTick * (spells[i].second + spells[i + 1].second));
    const auto is_rest = [](const std::pair<bool, int>& s) { return !s.first && s.second * kTick > 1.0; };
    std::size_t i = 1; // the first spell may be cut
    while (i < spells.size() && !is_rest(spells[i]))
        ++i;
    for (++i; i < spells.size() && !is_rest(spells[i]); ++i) {
        if (!spells[i].first)
            continue;
        if (spells[i].second * kTick > 1.0)
            seen.glow = true;
        else
            ++seen.flashes;
    }
    return seen;
}

const Board& reference_board() {
    static const Board board = build_board(load_board("board.json"));
    return board;
}

} // namespace control_tests
