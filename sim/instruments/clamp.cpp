// SPDX-License-Identifier: MIT
#include "instruments/clamp.hpp"

#include "instruments/timing.hpp"

namespace lightoff::instruments {

void step(Moment& now, Clamp& clamp) {
    if (clamp.setting.on == 0 && clamp.state.seen.on == 0)
        return;
    age(clamp.display);
    if (has_changed(clamp.state.seen, clamp.setting))
        clamp.display.ticks_settled = 0;
    if (clamp.setting.on == 0) {
        clamp.state.filtered = 0.0;
        blank(clamp.display);
        return;
    }
    if (!now.renews(kClampTiming.update_ticks))
        return;
    const double amps = clamp.setting.element < 0 ? 0.0 : units::abs(now.element_a(clamp.setting.element));
    clamp.state.filtered += (amps - clamp.state.filtered) * kClampTiming.share();
    show(clamp.display, Quantity::clamp_amps,
         with_error(Quantity::clamp_amps, clamp.state.filtered, calibration(now.seed, Quantity::clamp_amps)));
}

} // namespace lightoff::instruments
