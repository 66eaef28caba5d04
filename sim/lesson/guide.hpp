// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"
#include "bench/captions.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace lightoff::lesson {

/// When a step of a guided call is done. Always something that came about at the furnace or on paper, never
/// which button was pressed.
struct GuideUntil {
    enum class Kind : std::uint8_t {
        did,         ///< an action: the same verb, and the same words if it has them
        noticed,     ///< a caption about something
        read,        ///< the multimeter, on these two points either way round
        struck,      ///< some block of the suspects sheet
        proved_dead, ///< the supply
        fire         ///< burners are heard or seen to burn
    };
    Kind kind = Kind::fire;
    bench::Action action;                    ///< did
    bool any_words = false;                  ///< did: the verb is enough
    bench::About about = bench::About::lamp; ///< noticed
    int red = 0, black = 0;                  ///< read: nodes
};

struct GuideStep {
    std::string say; ///< what to do now
    std::string why; ///< one sentence more; may be empty
    GuideUntil until;
};

/// A call with a hand on the shoulder: one step after the other.
struct Guide {
    std::string call;
    std::vector<GuideStep> steps;
};

} // namespace lightoff::lesson
