// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"

/// Combustible-gas detector: percent of the lower flammable limit, and ticking that quickens.
namespace lightoff::instruments {

struct GasDetectorSetting {
    Spot tip = Spot::room; ///< a spot that takes sniffing
    std::uint8_t on = 0;
    std::uint16_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("tip", "", self.tip);
        visit("on", "", self.on);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const GasDetectorSetting&, const GasDetectorSetting&) = default;
};

struct GasDetectorState {
    double fraction = 0.0;   ///< gas in air as its sensor has it
    GasDetectorSetting seen; ///< in the last tick
    std::uint32_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("fraction", "1", self.fraction);
        visit("seen", self.seen);
        visit("spare", "", self.spare);
    }
};

struct GasDetector {
    GasDetectorState state;
    GasDetectorSetting setting;
    std::uint32_t spare = 0;
    Display explosive_limit; ///< percent of the lower flammable limit
    Display ticking;         ///< its ticks, a second

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("spare", "", self.spare);
        visit("explosive_limit", self.explosive_limit);
        visit("ticking", self.ticking);
    }
};

/// Gas that comes out at a spot, m3/s.
double escaping_gas_m3_s(const Moment& now, Spot spot);
/// Gas in the air in front of the detector's tip, volume fraction.
double gas_fraction_at(const Moment& now, Spot spot);

/// Ticks quicken with the logarithm of the concentration (teaching curve): 1 a second in clean air, about 6
/// at 100 ppm, 17 at 1 %.
double ticking_hz(double fraction);

void step(Moment& now, GasDetector& detector);

} // namespace lightoff::instruments
