// SPDX-License-Identifier: MIT
#include "instruments/dial_watch.hpp"

#include "instruments/timing.hpp"

namespace lightoff::instruments {
namespace {

void start(const Moment& now, DialWatchState& s) {
    s.from_m3 = now.state.gas.meter_volume_m3;
    s.from_tick = now.tick;
    s.ticks = 0;
    s.running = 1;
}

bool has_turned(const Moment& now, const DialWatch& watch) {
    const double passed_m3 = now.state.gas.meter_volume_m3 - watch.state.from_m3;
    return watch.setting.turns > 0 && passed_m3 >= watch.setting.turns * now.model.gas.meter_dial_m3;
}

/// A hand presses early or late: another error for every start.
double pressed_s(const Moment& now, const DialWatch& watch) {
    return with_error(Quantity::stopwatch, watch.state.ticks * units::seconds_per_tick,
                      calibration(now.seed, Quantity::stopwatch, watch.setting.starts));
}

} // namespace

void step(Moment& now, DialWatch& watch) {
    DialWatchState& s = watch.state;
    if (watch.setting.looking == 0 && s.seen.looking == 0)
        return;
    age(watch.dial);
    age(watch.stopwatch);
    const bool started = s.seen.starts != watch.setting.starts;
    if (has_changed(s.seen, watch.setting))
        watch.dial.ticks_settled = 0;
    if (watch.setting.looking == 0) {
        s.running = 0;
        blank(watch.dial);
        blank(watch.stopwatch);
        return;
    }
    if (started)
        start(now, s);
    else if (s.running != 0) {
        s.ticks = static_cast<std::uint32_t>(now.tick - s.from_tick);
        if (has_turned(now, watch)) {
            s.running = 0;
            show(watch.stopwatch, Quantity::stopwatch, pressed_s(now, watch));
        }
    }
    if (!now.renews(kDialWatchTiming.update_ticks))
        return;
    const double turns = now.state.signals.gas.meter_dial_fraction;
    show(watch.dial, Quantity::dial, turns);
    if (s.running != 0)
        show(watch.stopwatch, Quantity::stopwatch, s.ticks * units::seconds_per_tick);
}

} // namespace lightoff::instruments
