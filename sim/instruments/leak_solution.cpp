// SPDX-License-Identifier: MIT
#include "instruments/leak_solution.hpp"

#include "instruments/gas_detector.hpp"
#include "instruments/timing.hpp"
#include "units/convert.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::instruments {
namespace {

constexpr std::uint32_t kDryAfterTicks = 20U * 180U; // teaching value: three minutes
constexpr double kBursts_m = 0.020;                  // teaching value

double diameter_m(double bubble_m3) {
    return units::cbrt(6.0 / units::pi * bubble_m3);
}

} // namespace

/// Leaves out that a strong leak blows the film away (its bubbles burst several times a second), and foam.
void step(Moment& now, LeakSolution& solution) {
    LeakSolutionState& s = solution.state;
    if (solution.setting.on == 0 && s.seen.on == 0)
        return;
    age(solution.bubble);
    if (has_changed(s.seen, solution.setting)) {
        s.bubble_m3 = 0.0;
        s.ticks_wet = 0;
        blank(solution.bubble);
    }
    if (solution.setting.on == 0 || s.ticks_wet >= kDryAfterTicks) {
        blank(solution.bubble);
        return;
    }
    ++s.ticks_wet;
    s.bubble_m3 += escaping_gas_m3_s(now, solution.setting.joint) * units::seconds_per_tick;
    if (diameter_m(s.bubble_m3) > kBursts_m)
        s.bubble_m3 = 0.0;
    if (now.renews(kLeakSolutionTiming.update_ticks))
        show(solution.bubble, Quantity::bubble, diameter_m(s.bubble_m3));
}

} // namespace lightoff::instruments
