// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

/// What can hurt somebody. What a hazard is called, how grave it is and why stands in the school's table; how
/// it is found, in hazards.cpp.
namespace lightoff::bench {

enum class Hazard : std::uint8_t {
    switch_in_gas,          ///< something switched while gas is smelt
    worked_live,            ///< a part or wire handled that can drive a dangerous current through a hand
    motor_can_start,        ///< hands at a wheel that has power at its command
    not_proved_dead,        ///< hands in where nobody has measured that it is dead
    charged_capacitor,      ///< handled before it was discharged
    rollout_bypassed,       ///< current finds a way round the rollout switch
    burner_on_bypass,       ///< burner kept going for a minute on a bypassed safety
    gas_open_apart,         ///< gas cock open with a gas part off
    trial_in_gas,           ///< an igniter or spark in gas that has gathered
    stayed_in_co,           ///< CO alarm at its second stage, and work goes on
    hot_surface,            ///< handled above 60 C
    ohms_on_live,           ///< resistance measured on a live circuit
    meter_fuse_blown,       ///< a current input put across a voltage
    jumper_forbidden,       ///< the school allows none
    live_testing_forbidden, ///< the school allows none
    left_bypass,            ///< signed off with a jumper, a small breaker or tape in place
    left_open,              ///< signed off with a door, part, wire or plug off
    left_leak_untested,     ///< a gas joint was opened and nobody tested it
    count
};

enum class Gravity : std::uint8_t { slip, serious, stop_work };

struct HazardRow {
    std::string title; ///< "Worked on a live part"
    std::string why;   ///< what happens to people who do it
    Gravity gravity = Gravity::slip;
};
using HazardTable = std::array<HazardRow, static_cast<std::size_t>(Hazard::count)>;

/// "worked-live": the name in files.
std::string_view id_of(Hazard hazard);

} // namespace lightoff::bench
