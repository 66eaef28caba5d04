// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"

/// Non-contact voltage tester: glows near a conductor at AC volts against earth.
namespace lightoff::instruments {

struct VoltageTesterSetting {
    std::int32_t node = 0; ///< conductor that its tip is held to, bare or insulated; 0: none
    std::uint32_t on = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("node", "", self.node);
        visit("on", "", self.on);
    }
    friend bool operator==(const VoltageTesterSetting&, const VoltageTesterSetting&) = default;
};

struct VoltageTester {
    VoltageTesterSetting setting;
    VoltageTesterSetting seen; ///< in the last tick
    Display glow;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("setting", self.setting);
        visit("seen", self.seen);
        visit("glow", self.glow);
    }
};

void step(Moment& now, VoltageTester& tester);

} // namespace lightoff::instruments
