// SPDX-License-Identifier: MIT
#include "instruments/gas_detector.hpp"

#include "gas/orifice.hpp"
#include "instruments/timing.hpp"
#include "units/pinned_math.hpp"

#include <algorithm>

namespace lightoff::instruments {
namespace {

constexpr double kAlarmShare = 0.10; ///< of the lower flammable limit

// Air that passes the tip with what escapes there (teaching values). A joint whose leak blows a 5 mm bubble
// in 10 s then shows about 65 ppm, which a detector finds.
constexpr double kAirAtJoint_m3_s = 1e-4;
constexpr double kAirAtBurners_m3_s = 2e-3;

constexpr double kSlowestTicks_hz = 1.0;
constexpr double kMostTicks_hz = 40.0;

/// Part of what leaks at the valve's inlet that comes out of the open inlet tap; the rest is the union's.
double tap_share(const Moment& now) {
    const double tap_m2 =
        now.condition.gas.inlet_tap_open * gas::circle_area_m2(now.model.gas.tap_diameter_m);
    const double all_m2 = tap_m2 + now.condition.gas.inlet_leak_area_m2;
    return all_m2 > 0.0 ? tap_m2 / all_m2 : 0.0;
}

} // namespace

double ticking_hz(double fraction) {
    constexpr double knee = 20e-6;
    constexpr double per_factor_e = 2.6;
    return std::min(kMostTicks_hz, kSlowestTicks_hz + per_factor_e * units::log(1.0 + fraction / knee));
}

double escaping_gas_m3_s(const Moment& now, Spot spot) {
    const furnace::Signals& s = now.state.signals;
    switch (spot) {
    case Spot::inlet_tap:
        return s.gas.inlet_leak_m3_s * tap_share(now);
    case Spot::gas_union:
        return s.gas.inlet_leak_m3_s * (1.0 - tap_share(now));
    case Spot::manifold_tap:
        return s.gas.outlet_leak_m3_s;
    case Spot::burner_compartment:
        return s.combustion.spilled_gas_m3_s;
    default:
        return 0.0;
    }
}

double gas_fraction_at(const Moment& now, Spot spot) {
    const double gas_m3_s = escaping_gas_m3_s(now, spot);
    const double air_m3_s = spot == Spot::burner_compartment ? kAirAtBurners_m3_s : kAirAtJoint_m3_s;
    const double room = now.state.gas.room.raw_gas_fraction;
    return room + (1.0 - room) * gas_m3_s / (gas_m3_s + air_m3_s);
}

void step(Moment& now, GasDetector& detector) {
    GasDetectorState& s = detector.state;
    if (detector.setting.on == 0 && s.seen.on == 0)
        return;
    age(detector.explosive_limit);
    age(detector.ticking);
    if (has_changed(s.seen, detector.setting)) {
        detector.explosive_limit.ticks_settled = 0;
        detector.ticking.ticks_settled = 0;
    }
    if (detector.setting.on == 0) {
        s.fraction = 0.0;
        blank(detector.explosive_limit);
        blank(detector.ticking);
        return;
    }
    if (!now.renews(kGasDetectorTiming.update_ticks))
        return;
    s.fraction += (gas_fraction_at(now, detector.setting.tip) - s.fraction) * kGasDetectorTiming.share();
    const double of_limit =
        with_error(Quantity::explosive_limit, s.fraction / now.model.combustion.fuel.lower_limit,
                   calibration(now.seed, Quantity::explosive_limit));
    show(detector.explosive_limit, Quantity::explosive_limit, of_limit,
         of_limit >= kAlarmShare ? kAlarm : std::uint8_t{0});
    show(detector.ticking, Quantity::ticking, ticking_hz(s.fraction));
}

} // namespace lightoff::instruments
