// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/scenario.hpp"

#include <string>
#include <vector>

/// Whether a call is fit to be given: the household really lives through what it complains of, and measuring
/// leads to the cause.
namespace lightoff::lesson {

/// What a household could tell of its furnace, from the first call until twenty minutes after the visit would
/// have begun, with nobody touching it.
struct Lived {
    double wanted_s = 0.0;       ///< the thermostat set to heat, and warmer than the house
    double fire_s = 0.0;         ///< burners on
    double longest_wait_s = 0.0; ///< wanted heat, and no fire
    double warmth = 0.0;         ///< of the air at the registers; compared only
    double run_up_s = 0.0;       ///< inducer turning, not yet at its steady tone; the longest
    double hum_s = 0.0;          ///< a motor stalled
    int lights = 0;              ///< times that the burners lit
    int bang = 0;                ///< loudest light-off, bench::Heard::ignition
    int shaking = 0;             ///< bench::Felt::cabinet_vibration at its most
    int gas_smell = 0;           ///< bench::Smelt::gas at its most
    double room_co_ppm = 0.0;    ///< most of it
};
Lived live(const bench::Site& site, const Scenario& scenario, furnace::Workspace& workspace);

struct CallCheck {
    bool complaint_occurs = false;
    std::string lived; ///< one sentence, with the numbers that decide
    bool solvable = false;
    double minutes = 0.0;                 ///< of the cheapest proof
    std::vector<std::string> proof;       ///< its tests, in order
    std::vector<std::string> look_alikes; ///< causes besides the real one that no test on offer clears
    int may_come_and_go = 0; ///< and faults that may just not show at the moment, which no test ever clears
};

/// With nominal parts (seed 0). What comes and goes is looked for while it is there.
CallCheck check_call(const bench::Site& site, const Scenario& scenario);

} // namespace lightoff::lesson
