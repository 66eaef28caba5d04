// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"

/// Clocking the gas meter: its test dial and a stopwatch.
namespace lightoff::instruments {

struct DialWatchSetting {
    std::uint32_t looking = 0; ///< at the gas meter's test dial
    std::uint32_t starts = 0;  ///< so often has the stopwatch been started
    std::uint32_t turns = 1;   ///< after which it is stopped; 0: let it run
    std::uint32_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("looking", "", self.looking);
        visit("starts", "", self.starts);
        visit("turns", "", self.turns);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const DialWatchSetting&, const DialWatchSetting&) = default;
};

struct DialWatchState {
    double from_m3 = 0.0;        ///< meter reading at the start
    std::uint64_t from_tick = 0; ///< of the start
    DialWatchSetting seen;       ///< in the last tick
    std::uint32_t running = 0;
    std::uint32_t ticks = 0; ///< since the start

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("from", "m3", self.from_m3);
        visit("from_tick", "", self.from_tick);
        visit("seen", self.seen);
        visit("running", "", self.running);
        visit("ticks", "ticks", self.ticks);
    }
};

struct DialWatch {
    DialWatchState state;
    DialWatchSetting setting;
    Display dial; ///< place of the hand, turns
    Display stopwatch;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("dial", self.dial);
        visit("stopwatch", self.stopwatch);
    }
};

void step(Moment& now, DialWatch& watch);

} // namespace lightoff::instruments
