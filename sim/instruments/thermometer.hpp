// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"

/// Two-probe thermometer: T1, T2 and their difference.
namespace lightoff::instruments {

struct ThermometerSetting {
    Spot probe_1 = Spot::room;
    Spot probe_2 = Spot::room;
    std::uint8_t on = 0;
    std::uint8_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("probe_1", "", self.probe_1);
        visit("probe_2", "", self.probe_2);
        visit("on", "", self.on);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const ThermometerSetting&, const ThermometerSetting&) = default;
};

struct ThermometerState {
    double probe_1_k = 0.0; ///< 0 before its first use
    double probe_2_k = 0.0;
    ThermometerSetting seen; ///< in the last tick
    std::uint32_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("probe_1", "K", self.probe_1_k);
        visit("probe_2", "K", self.probe_2_k);
        visit("seen", self.seen);
        visit("spare", "", self.spare);
    }
};

struct Thermometer {
    ThermometerState state;
    ThermometerSetting setting;
    std::uint32_t spare = 0;
    Display t1;
    Display t2;
    Display difference; ///< T1 - T2

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("spare", "", self.spare);
        visit("t1", self.t1);
        visit("t2", self.t2);
        visit("difference", self.difference);
    }
};

/// What a probe at a spot that takes temperature comes to, K.
double temperature_k(const Moment& now, Spot spot);

void step(Moment& now, Thermometer& meter);

} // namespace lightoff::instruments
