// SPDX-License-Identifier: MIT
#pragma once
#include "control/board.hpp"
#include "control/board_builder.hpp"
#include "control/load_tables.hpp"

#include <functional>
#include <string>

/// A stand-in for the furnace round the reference board: contacts in series with a tap after each,
/// a pressure switch that follows the inducer, a flame that follows gas and a hot igniter.
/// Delays are numbers to be set; nothing here is a model of the real thing.
namespace control_tests {

struct Plant {
    // what a test turns
    double supply_v = 26.0;
    bool call = false, fan = false;
    bool rollout_closed = true, limit_closed = true;
    double switch_closes_after_s = 4.0; ///< after the inducer starts
    double switch_opens_after_s = 2.0;
    bool hose_plugged = false, switch_stuck_closed = false;
    bool igniter_good = true, gas_open = true;
    double flame_after_s = 2.0; ///< after gas at a hot igniter
    double flame_ua = 4.0;
    bool flame_out = false;   ///< blown out, and no way to relight
    bool valve_leaks = false; ///< a flame burns with the valve off
    bool valve_relay_welded = false;
    // what follows
    double inducer_on_s = 0.0, inducer_off_s = 1e9;
    double igniter_on_s = 0.0, gas_s = 0.0;
    bool pressure_switch = false, flame = false;
    double time_s = 0.0;
};

class Bench {
public:
    explicit Bench(const lightoff::control::Board& table);

    const lightoff::control::Board& board;
    lightoff::control::BoardCondition condition;
    lightoff::control::BoardState state;
    lightoff::control::BoardOutputs out;
    Plant plant;
    std::function<void()> watch; ///< called after each tick

    void tick();
    void run(double seconds);
    /// Runs until the burner is in that state; its time, or fails after `limit_s`.
    double run_to(const std::string& burner_state, double limit_s = 7200.0);
    [[nodiscard]] std::string burner() const;
    [[nodiscard]] std::string blower() const;
    [[nodiscard]] bool on(const std::string& output) const;
    [[nodiscard]] int shown() const { return state.steps.shown(); }

    /// What an eye sees in the next `seconds`: flashes, and a glow (longer than a second), in one cycle.
    struct Seen {
        int flashes = 0;
        bool glow = false;
        bool ever_lit = false;
        bool ever_dark = false;
        double fastest_s = 1e9; ///< shortest time between two beginnings
    };
    Seen look();

private:
    void follow();
    lightoff::control::BoardInputs wire() const;
    std::size_t inducer, igniter, gas_valve;
    std::size_t call, fan_call, rollout, limit, pressure_switch, valve_feedback, flame;
};

const lightoff::control::Board& reference_board();

} // namespace control_tests
