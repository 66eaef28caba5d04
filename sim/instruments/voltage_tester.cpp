// SPDX-License-Identifier: MIT
#include "instruments/voltage_tester.hpp"

#include "instruments/timing.hpp"

namespace lightoff::instruments {
namespace {

/// Volts against earth from which it glows (common practice, no source: testers for 120 V do from about 50
/// V).
constexpr double kGlowV = 50.0;

} // namespace

/// Its tip and the hand that holds it are a capacitor of about a picofarad to earth, which draws next to
/// nothing: a floating wire beside a live one makes it glow as well. Leaves out screening by metal between.
void step(Moment& now, VoltageTester& tester) {
    if (tester.setting.on == 0 && tester.seen.on == 0)
        return;
    age(tester.glow);
    if (has_changed(tester.seen, tester.setting))
        tester.glow.ticks_settled = 0;
    if (tester.setting.on == 0) {
        blank(tester.glow);
        return;
    }
    if (!now.renews(kVoltageTesterTiming.update_ticks))
        return;
    const bool glows = tester.setting.node > 0 && units::abs(now.node_v(tester.setting.node)) >= kGlowV;
    show(tester.glow, Quantity::glow, glows ? 1.0 : 0.0, glows ? kBeep : std::uint8_t{0});
}

} // namespace lightoff::instruments
