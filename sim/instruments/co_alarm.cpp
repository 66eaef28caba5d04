// SPDX-License-Identifier: MIT
#include "instruments/co_alarm.hpp"

#include "instruments/timing.hpp"

namespace lightoff::instruments {

/// Leaves out that CO is richer beside the furnace than the room's mean.
void step(Moment& now, CoAlarm& alarm) {
    if (alarm.setting.on == 0) {
        if (alarm.display.has(kOn))
            blank(alarm.display);
        return;
    }
    age(alarm.display);
    if (!now.renews(kCoAlarmTiming.update_ticks))
        return;
    alarm.sensor_fraction +=
        (now.state.gas.room.co_fraction - alarm.sensor_fraction) * kCoAlarmTiming.share();
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
