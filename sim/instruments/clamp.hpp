// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"

/// Clamp ammeter: AC amps through a wire that it is closed round. No burden.
/// Leaves out the stray field of wires beside it.
namespace lightoff::instruments {

struct ClampSetting {
    std::int32_t element = -1; ///< the jaw is round this wire; -1: not on anything
    std::uint32_t on = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("element", "", self.element);
        visit("on", "", self.on);
    }
    friend bool operator==(const ClampSetting&, const ClampSetting&) = default;
};

struct ClampState {
    double filtered = 0.0;
    ClampSetting seen; ///< in the last tick

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("filtered", "A", self.filtered);
        visit("seen", self.seen);
    }
};

struct Clamp {
    ClampState state;
    ClampSetting setting;
    Display display;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("display", self.display);
    }
};

void step(Moment& now, Clamp& clamp);

} // namespace lightoff::instruments
