// SPDX-License-Identifier: MIT
#include "instruments/multimeter.hpp"

#include "electrical/fuse.hpp"
#include "instruments/attachments.hpp"
#include "units/convert.hpp"
#include "units/random.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::instruments {
namespace {

using electrical::Attachment;
using electrical::FuseParams;

constexpr std::uint64_t kNoiseStream = 0x4D65746572FF0000ULL;

// Fast fuses of 0.44 and 11 A (common practice, no source): they melt at 1.25 times that.
constexpr FuseParams kMicroampFuse{0.55, 0.3};
constexpr FuseParams kAmpFuse{13.75, 1.0};
/// Two diodes in series each way across the shunt conduct above this (common practice, no source).
constexpr double kDiodesV = 2.0;
/// Fuse, leads and conducting diodes (teaching value).
constexpr double kProtectionOhm = 1.0;

/// Leads shorted together read this on ohms (common practice, no source: 0.1-0.3 ohm).
constexpr double kLeadsOhm = 0.2;
constexpr double kBeepBelowOhm = 30.0; // common practice, no source
/// Largest part of an AC voltage across the leads that gets into a measurement of ohms (teaching value).
constexpr double kNoiseShare = 0.05;
/// Full scale of a range of ohms drops this; the input holds no more than kMostV (common practice, no
/// source).
constexpr double kFullScaleV = 0.6;
constexpr double kMostV = 1.0;

constexpr double kCapacitorTestV = 1.0;
constexpr double kCapacitorTestOhm = 1e3;
constexpr double kLiveV = 1.0; ///< above it a measurement of capacitance is refused

bool leads_on(const Multimeter& meter) {
    return meter.setting.red != meter.setting.black;
}

double show_with_error(const Moment& now, Display& display, Quantity quantity, double value) {
    const double read = with_error(quantity, value, calibration(now.seed, quantity));
    show(display, quantity, read);
    return read;
}

void follow(MultimeterState& state, const FunctionRow& row, double value) {
    state.filtered +=
        (value - state.filtered) * lag_share(row.update_ticks * units::seconds_per_tick, row.lag_s);
}

// ---- Volts

void measure_ac_volts(Moment& now, Multimeter& meter, const FunctionRow& row) {
    follow(meter.state, row, leads_on(meter) ? units::abs(now.ac_v(kMultimeterSlot)) : 0.0);
    show_with_error(now, meter.display, row.quantity, meter.state.filtered);
}

void measure_dc_volts(Moment& now, Multimeter& meter, const FunctionRow& row) {
    const double held_v = static_cast<double>(meter.stored_v);
    follow(meter.state, row, leads_on(meter) ? now.dc_v(kMultimeterSlot) + held_v : 0.0);
    show_with_error(now, meter.display, row.quantity, meter.state.filtered);
}

// ---- Ohms

/// Current that a range of ohms drives: full scale drops kFullScaleV. `ohm` picks the range.
double test_current_a(Quantity quantity, double ohm) {
    const QuantityRow& row = quantity_row(quantity);
    double full_scale_ohm = 0.0;
    for (int i = 0; i < row.range_count; ++i) {
        const Range& range = row.ranges[static_cast<std::size_t>(i)];
        full_scale_ohm = range.counts * power_of_ten(range.exponent) * unit_row(range.unit).factor;
        if (ohm < full_scale_ohm)
            break;
    }
    return kFullScaleV / full_scale_ohm;
}

/// What the network, as it is loaded now, is between the leads at DC: the test source's volts over the
/// current that it drives. Other paths in parallel count as they do in life. A very large number if open.
double resistance_ohm(Moment& now) {
    constexpr double open_ohm = 1e12;
    const double amps = -now.dc_a(kMultimeterSlot);
    const double volts = now.dc_v(kMultimeterSlot);
    return amps > 1e-13 ? volts / amps + kLeadsOhm : open_ohm;
}

/// Ohms on a dead circuit are R. On a live one a part of the AC volts across the leads, another part in
/// every measurement, adds to the small voltage that the meter takes for R times its test current: the
/// number jumps, is negative, or leaves the range.
void measure_ohms(Moment& now, Multimeter& meter, const FunctionRow& row) {
    if (!leads_on(meter) || meter.stored_v != 0.0F) {
        show_overload(meter.display, row.quantity);
        return;
    }
    const double ohm = resistance_ohm(now);
    const double test_a = test_current_a(row.quantity, ohm);
    const double most_noise_v = kNoiseShare * units::abs(now.ac_v(kMultimeterSlot));
    const double noise_v = most_noise_v * units::random_signed(now.seed, kNoiseStream, now.tick);
    const double volts = std::min(kMostV, ohm * test_a) + noise_v;
    const double shown_ohm = with_error(row.quantity, volts / test_a, calibration(now.seed, row.quantity));
    std::uint8_t flags = 0;
    if (most_noise_v > kFullScaleV * 1e-3)
        flags |= kNoisy;
    if (volts >= kMostV || volts <= -kMostV) {
        show_overload(meter.display, row.quantity, flags);
        return;
    }
    if (row.function == Function::continuity && shown_ohm < kBeepBelowOhm)
        flags |= kBeep;
    show(meter.display, row.quantity, shown_ohm, flags);
}

// ---- Capacitance

/// A meter times the charging of what is between its leads. Here the same comes from an AC test at the
/// network's frequency with every other source off: the leads see an admittance Y, and C = Im Y / (2 pi f).
/// That is right for a capacitor alone and nonsense with a winding in parallel, as in life; where coils
/// outweigh it the meter finds no capacitor: OL. Leaves out that a timed measurement makes another nonsense
/// of a winding. A live circuit, or a charge that has been left in, is refused: OL.
void measure_capacitance(Moment& now, Multimeter& meter, const FunctionRow& row) {
    if (!leads_on(meter)) {
        show(meter.display, row.quantity, 0.0);
        return;
    }
    const bool live = units::abs(now.ac_v(kMultimeterSlot)) > kLiveV;
    if (live || meter.stored_v != 0.0F) {
        show_overload(meter.display, row.quantity, kNoisy);
        return;
    }
    furnace::Inputs quiet = now.inputs;
    quiet.line_voltage_v = 0.0;
    Attachment& leads = quiet.attachments[kMultimeterSlot];
    leads.ohm = kCapacitorTestOhm;
    leads.ac_v = kCapacitorTestV;
    const Moment::Trial trial = now.try_with(quiet, kMultimeterSlot);
    const units::Complex siemens = -trial.amps / trial.volts;
    const double farad = siemens.im / (2.0 * units::pi * units::line_frequency_hz);
    if (farad < 0.0)
        show_overload(meter.display, row.quantity);
    else
        show_with_error(now, meter.display, row.quantity, farad);
}

// ---- Amps

/// Heats a fuse for a tick; melted, it is open from the next tick on.
void heat_fuse(const FuseParams& params, double amps, double& heat, std::uint8_t& blown) {
    electrical::FuseState fuse{heat};
    if (electrical::step_fuse(params, fuse, amps, lag_share(units::seconds_per_tick, params.time_constant_s)))
        blown = 1;
    heat = fuse.heat;
}

/// Across a voltage the diodes over the shunt conduct, and the fuse takes what the source can give.
void guard_microamps(Moment& now, Multimeter& meter) {
    MultimeterState& s = meter.state;
    const double shunt_ohm = function_row(Function::dc_microamps).ohm;
    const double dc_a = now.dc_a(kMultimeterSlot);
    double amps = std::sqrt(units::norm(now.ac_a(kMultimeterSlot)) + dc_a * dc_a);
    const bool conducting = amps * shunt_ohm > kDiodesV;
    if (conducting && s.protecting == 0) { // within the tick: a fuse is far quicker
        furnace::Inputs protecting = now.inputs;
        protecting.attachments[kMultimeterSlot].ohm = kProtectionOhm;
        amps = units::abs(now.try_with(protecting, kMultimeterSlot).amps);
    }
    s.protecting = conducting ? 1 : 0;
    heat_fuse(kMicroampFuse, conducting ? amps : 0.0, s.microamp_fuse_heat, s.microamp_fuse_blown);
}

void measure_microamps(Moment& now, Multimeter& meter, const FunctionRow& row) {
    if (meter.state.protecting != 0 && meter.state.microamp_fuse_blown == 0) {
        show_overload(meter.display, row.quantity);
        return;
    }
    const bool carries = leads_on(meter) && meter.state.microamp_fuse_blown == 0;
    follow(meter.state, row, carries ? now.dc_a(kMultimeterSlot) : 0.0);
    show_with_error(now, meter.display, row.quantity, meter.state.filtered);
}

void guard_amps(Moment& now, Multimeter& meter) {
    heat_fuse(kAmpFuse, units::abs(now.ac_a(kMultimeterSlot)), meter.state.amp_fuse_heat,
              meter.state.amp_fuse_blown);
}

void measure_amps(Moment& now, Multimeter& meter, const FunctionRow& row) {
    const bool carries = leads_on(meter) && meter.state.amp_fuse_blown == 0;
    follow(meter.state, row, carries ? units::abs(now.ac_a(kMultimeterSlot)) : 0.0);
    show_with_error(now, meter.display, row.quantity, meter.state.filtered);
}

/// Fuses take what they get, whatever the window does.
void guard(Moment& now, Multimeter& meter) {
    if (!leads_on(meter))
        return;
    // The shunt alone lets so little through that a look at each new number is soon enough.
    if (meter.setting.function == Function::dc_microamps && meter.state.microamp_fuse_blown == 0 &&
        (meter.state.protecting != 0 || now.renews(function_row(Function::dc_microamps).update_ticks)))
        guard_microamps(now, meter);
    if (meter.setting.function == Function::ac_amps && meter.state.amp_fuse_blown == 0)
        guard_amps(now, meter);
}

void measure(Moment& now, Multimeter& meter, const FunctionRow& row) {
    switch (row.function) {
    case Function::ac_volts:
    case Function::low_z_volts:
        return measure_ac_volts(now, meter, row);
    case Function::dc_volts:
        return measure_dc_volts(now, meter, row);
    case Function::ohms:
    case Function::continuity:
        return measure_ohms(now, meter, row);
    case Function::capacitance:
        return measure_capacitance(now, meter, row);
    case Function::dc_microamps:
        return measure_microamps(now, meter, row);
    case Function::ac_amps:
        return measure_amps(now, meter, row);
    case Function::off:
    case Function::count:
        return;
    }
}

void take_setting(Multimeter& meter) {
    const Function before = meter.state.seen.function;
    if (!has_changed(meter.state.seen, meter.setting))
        return;
    meter.display.ticks_settled = 0;
    meter.state.protecting = 0;
    if (before == meter.setting.function)
        return;
    meter.state.filtered = 0.0;
    blank(meter.display);
}

} // namespace

Attachment attachment_of(const Multimeter& meter) {
    const MultimeterSetting& setting = meter.setting;
    if (setting.function == Function::off || !leads_on(meter))
        return {};
    const FunctionRow& row = function_row(setting.function);
    Attachment leads{setting.red, setting.black, row.ohm, 0.0, row.dc_v};
    const bool microamps = setting.function == Function::dc_microamps;
    if (microamps && meter.state.protecting != 0)
        leads.ohm = kProtectionOhm;
    if ((microamps && meter.state.microamp_fuse_blown != 0) ||
        (setting.function == Function::ac_amps && meter.state.amp_fuse_blown != 0))
        leads.ohm = static_cast<double>(electrical::kOpenOhm);
    return leads;
}

void fit_new_fuses(Multimeter& meter) {
    meter.state.microamp_fuse_heat = 0.0;
    meter.state.amp_fuse_heat = 0.0;
    meter.state.microamp_fuse_blown = 0;
    meter.state.amp_fuse_blown = 0;
}

void step(Moment& now, Multimeter& meter) {
    if (meter.setting.function == Function::off && meter.state.seen.function == Function::off)
        return;
    age(meter.display);
    take_setting(meter);
    guard(now, meter);
    const FunctionRow& row = function_row(meter.setting.function);
    if (now.renews(row.update_ticks))
        measure(now, meter, row);
}

} // namespace lightoff::instruments
