// SPDX-License-Identifier: MIT
#include "instruments/manometer.hpp"

#include "instruments/timing.hpp"
#include "units/random.hpp"

namespace lightoff::instruments {
namespace {

constexpr std::uint64_t kDriftStream = 0x4D65746572FE0000ULL;

/// What the sensor makes of the pressures, before the zero button.
double sensed_pa(const Moment& now, const ManometerSetting& setting) {
    const double difference = gauge_pressure_pa(now, setting.plus) - gauge_pressure_pa(now, setting.minus);
    return with_error(Quantity::pressure, difference, calibration(now.seed, Quantity::pressure)) +
           zero_drift_pa(now.seed, now.tick);
}

} // namespace

double gauge_pressure_pa(const Moment& now, Spot spot) {
    const furnace::Signals& s = now.state.signals;
    switch (spot) {
    case Spot::inlet_tap:
        return s.gas.inlet_tap_pa;
    case Spot::manifold_tap:
        return s.gas.manifold_tap_pa;
    case Spot::hose_tee_inducer:
        return -s.draft.inducer_side_suction_pa;
    case Spot::hose_tee_switch:
        return -s.draft.switch_side_suction_pa;
    case Spot::vent_connector:
        return s.draft.vent_connector_pa;
    case Spot::return_static:
        return s.air.return_static_pa;
    case Spot::supply_static:
        return s.air.supply_static_pa;
    default:
        return 0.0;
    }
}

double zero_drift_pa(std::uint64_t seed, std::uint64_t tick) {
    constexpr auto period = static_cast<std::uint64_t>(kZeroDrift_s * units::ticks_per_second);
    const std::uint64_t leg = tick / period;
    const double from = units::random_signed(seed, kDriftStream, leg);
    const double to = units::random_signed(seed, kDriftStream, leg + 1);
    const double share = static_cast<double>(tick % period) / static_cast<double>(period);
    return kZeroDrift_pa * (from + (to - from) * share);
}

void step(Moment& now, Manometer& meter) {
    ManometerState& s = meter.state;
    if (meter.setting.on == 0 && s.seen.on == 0)
        return;
    age(meter.display);
    const bool zeroed = s.seen.zero_presses != meter.setting.zero_presses;
    if (has_changed(s.seen, meter.setting))
        meter.display.ticks_settled = 0;
    if (meter.setting.on == 0) {
        s.filtered_pa = 0.0;
        blank(meter.display);
        return;
    }
    if (zeroed)
        s.zero_pa = sensed_pa(now, meter.setting);
    if (!now.renews(kManometerTiming.update_ticks))
        return;
    s.filtered_pa += (sensed_pa(now, meter.setting) - s.filtered_pa) * kManometerTiming.share();
    show(meter.display, Quantity::pressure, s.filtered_pa - s.zero_pa);
}

} // namespace lightoff::instruments
