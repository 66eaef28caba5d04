// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"

/// Clamp-on wattmeter: volts, amps, watts, power factor. The burden of its voltage leads is left out
/// (above 1 Mohm, common practice, no source).
namespace lightoff::instruments {

struct WattmeterSetting {
    std::int32_t element = -1; ///< the jaw is round this wire
    std::int32_t line = 0;     ///< node of the voltage leads
    std::int32_t neutral = 0;  ///< node
    std::uint32_t on = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("element", "", self.element);
        visit("line", "", self.line);
        visit("neutral", "", self.neutral);
        visit("on", "", self.on);
    }
    friend bool operator==(const WattmeterSetting&, const WattmeterSetting&) = default;
};

struct WattmeterState {
    double volts = 0.0;
    double amps = 0.0;
    double watts = 0.0;
    WattmeterSetting seen; ///< in the last tick

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("volts", "V", self.volts);
        visit("amps", "A", self.amps);
        visit("watts", "W", self.watts);
        visit("seen", self.seen);
    }
};

struct Wattmeter {
    WattmeterState state;
    WattmeterSetting setting;
    Display volts;
    Display amps;
    Display watts;
    Display power_factor;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("volts", self.volts);
        visit("amps", self.amps);
        visit("watts", self.watts);
        visit("power_factor", self.power_factor);
    }
};

/// Round the wire that feeds the furnace, leads on it and on the supply's neutral.
WattmeterSetting at_furnace_supply(const furnace::Model& model);

void step(Moment& now, Wattmeter& meter);

} // namespace lightoff::instruments
