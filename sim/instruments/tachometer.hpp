// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"

/// Photo tachometer with a reflecting mark on what turns.
namespace lightoff::instruments {

struct TachometerSetting {
    Spot target = Spot::blower_wheel; ///< a spot that takes a tachometer
    std::uint8_t on = 0;
    std::uint16_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("target", "", self.target);
        visit("on", "", self.on);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const TachometerSetting&, const TachometerSetting&) = default;
};

struct TachometerState {
    double filtered_rad_s = 0.0;
    TachometerSetting seen; ///< in the last tick
    std::uint32_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("filtered_rad", "rad/s", self.filtered_rad_s);
        visit("seen", self.seen);
        visit("spare", "", self.spare);
    }
};

struct Tachometer {
    TachometerState state;
    TachometerSetting setting;
    std::uint32_t spare = 0;
    Display display;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("spare", "", self.spare);
        visit("display", self.display);
    }
};

void step(Moment& now, Tachometer& meter);

} // namespace lightoff::instruments
