// SPDX-License-Identifier: MIT
#include "instruments/co_alarm.hpp"

namespace lightoff::instruments {
namespace {

constexpr int kUpdateTicks = 20;
constexpr double kLag_s = 15.0; // 90 % in 35 s (common practice, no source)

} // namespace

/// Leaves out that CO is richer beside the furnace than the room's mean.
void step(Moment& now, CoAlarm& alarm) {
    if (alarm.setting.on == 0) {
        if (alarm.display.has(kOn))
            blank(alarm.display);
        return;
    }
    age(alarm.display);
    if (!now.renews(kUpdateTicks))
        return;
    alarm.sensor_fraction += (now.state.gas.room.co_fraction - alarm.sensor_fraction) *
                             lag_share(kUpdateTicks * units::seconds_per_tick, kLag_s);
    const double read =
        with_error(Quantity::ambient_co, alarm.sensor_fraction, calibration(now.seed, Quantity::ambient_co));
    std::uint8_t flags = 0;
    if (read >= kActCo)
        flags |= kBeep;
    if (read >= kLeaveCo)
        flags |= kAlarm;
    show(alarm.display, Quantity::ambient_co, read, flags);
}

} // namespace lightoff::instruments
