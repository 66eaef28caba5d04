// SPDX-License-Identifier: MIT
#include "instruments/tachometer.hpp"

#include "instruments/timing.hpp"

namespace lightoff::instruments {
namespace {

double speed_rad_s(const furnace::Signals& signals, Spot target) {
    switch (target) {
    case Spot::blower_wheel:
        return signals.air.wheel_speed_rad_s;
    case Spot::blower_shaft:
        return signals.air.blower_speed_rad_s;
    case Spot::inducer_shaft:
        return signals.draft.inducer_speed_rad_s;
    default:
        return 0.0;
    }
}

} // namespace

void step(Moment& now, Tachometer& meter) {
    if (meter.setting.on == 0 && meter.state.seen.on == 0)
        return;
    age(meter.display);
    if (has_changed(meter.state.seen, meter.setting)) {
        meter.display.ticks_settled = 0;
        meter.state.filtered_rad_s = 0.0;
    }
    if (meter.setting.on == 0) {
        blank(meter.display);
        return;
    }
    if (!now.renews(kTachometerTiming.update_ticks))
        return;
    const double speed = speed_rad_s(now.state.signals, meter.setting.target);
    meter.state.filtered_rad_s += (speed - meter.state.filtered_rad_s) * kTachometerTiming.share();
    show(meter.display, Quantity::speed,
         with_error(Quantity::speed, meter.state.filtered_rad_s, calibration(now.seed, Quantity::speed)));
}

} // namespace lightoff::instruments
