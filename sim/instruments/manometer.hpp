// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"

/// Dual-port manometer: port 1 minus port 2.
namespace lightoff::instruments {

struct ManometerSetting {
    Spot plus = Spot::room;  ///< port 1
    Spot minus = Spot::room; ///< port 2
    std::uint8_t on = 0;
    std::uint8_t spare = 0;
    std::uint32_t zero_presses = 0; ///< so often has the zero button been pressed

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("plus", "", self.plus);
        visit("minus", "", self.minus);
        visit("on", "", self.on);
        visit("spare", "", self.spare);
        visit("zero_presses", "", self.zero_presses);
    }
    friend bool operator==(const ManometerSetting&, const ManometerSetting&) = default;
};

struct ManometerState {
    double filtered_pa = 0.0;
    double zero_pa = 0.0;  ///< what the zero button takes off
    ManometerSetting seen; ///< in the last tick

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("filtered", "Pa", self.filtered_pa);
        visit("zero", "Pa", self.zero_pa);
        visit("seen", self.seen);
    }
};

struct Manometer {
    ManometerState state;
    ManometerSetting setting;
    Display display;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("display", self.display);
    }
};

/// Pressure over the room's at a spot that takes pressure, Pa.
double gauge_pressure_pa(const Moment& now, Spot spot);

/// How far the zero has crept, Pa: at most kZeroDrift_pa either way, a new aim every kZeroDrift_s.
double zero_drift_pa(std::uint64_t seed, std::uint64_t tick);
inline constexpr double kZeroDrift_pa = 0.37; ///< 0.0015 in. w.c. (teaching value)
inline constexpr double kZeroDrift_s = 300.0;

void step(Moment& now, Manometer& meter);

} // namespace lightoff::instruments
