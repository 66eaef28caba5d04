// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"

/// Leak-detection solution: gas that leaks under pressure blows bubbles.
namespace lightoff::instruments {

struct LeakSolutionSetting {
    Spot joint = Spot::room; ///< brushed on here; a spot that takes solution
    std::uint8_t on = 0;     ///< wet; 0 wiped off
    std::uint16_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("joint", "", self.joint);
        visit("on", "", self.on);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const LeakSolutionSetting&, const LeakSolutionSetting&) = default;
};

struct LeakSolutionState {
    double bubble_m3 = 0.0;   ///< blown up so far
    LeakSolutionSetting seen; ///< in the last tick
    std::uint32_t ticks_wet = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("bubble", "m3", self.bubble_m3);
        visit("seen", self.seen);
        visit("ticks_wet", "ticks", self.ticks_wet);
    }
};

struct LeakSolution {
    LeakSolutionState state;
    LeakSolutionSetting setting;
    std::uint32_t spare = 0;
    Display bubble;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("spare", "", self.spare);
        visit("bubble", self.bubble);
    }
};

void step(Moment& now, LeakSolution& solution);

} // namespace lightoff::instruments
