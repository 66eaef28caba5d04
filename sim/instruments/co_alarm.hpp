// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"

/// Personal CO alarm: ppm in the room.
namespace lightoff::instruments {

struct CoAlarmSetting {
    std::uint32_t on = 0; ///< worn where the furnace stands
    std::uint32_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("on", "", self.on);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const CoAlarmSetting&, const CoAlarmSetting&) = default;
};

struct CoAlarm {
    double sensor_fraction = 0.0;
    CoAlarmSetting setting;
    Display display;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("sensor_fraction", "1", self.sensor_fraction);
        visit("setting", self.setting);
        visit("display", self.display);
    }
};

/// Beeps from here on: find out why (trade: act at 9 ppm, common practice, no source).
inline constexpr double kActCo = 9e-6;
/// Full alarm: leave (70 ppm, the lowest level of UL 2034).
inline constexpr double kLeaveCo = 70e-6;

void step(Moment& now, CoAlarm& alarm);

} // namespace lightoff::instruments
