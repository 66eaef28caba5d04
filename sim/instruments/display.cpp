// SPDX-License-Identifier: MIT
#include "instruments/display.hpp"

#include "units/pinned_math.hpp"
#include "units/random.hpp"

namespace lightoff::instruments {
namespace {

/// Random streams of the instruments' errors start here.
constexpr std::uint64_t kErrorStream = 0x4D65746572730000ULL;

double magnitude(double x) {
    return x < 0.0 ? -x : x;
}

const Range& range_at(Quantity quantity, std::uint8_t range) {
    return quantity_row(quantity).ranges[range];
}

/// A number of a window in the unit of its range.
double in_unit(const Range& range, std::int32_t mantissa) {
    return mantissa * power_of_ten(range.exponent);
}

double to_unit(const Range& range, double value_si) {
    const UnitRow& unit = unit_row(range.unit);
    return (value_si - unit.offset) / unit.factor;
}

double to_si(const Range& range, double value) {
    const UnitRow& unit = unit_row(range.unit);
    return unit.offset + unit.factor * value;
}

/// Accuracy in the unit of the range.
double accuracy(const Range& range, double value) {
    return range.fraction * magnitude(value) + range.digits * power_of_ten(range.exponent);
}

std::int32_t rounded(double x) {
    return static_cast<std::int32_t>(x < 0.0 ? x - 0.5 : x + 0.5);
}

/// The finest range that holds a value; the row's range_count if none does.
std::uint8_t range_for(const QuantityRow& row, double value_si) {
    for (int i = 0; i < row.range_count; ++i) {
        const Range& range = row.ranges[static_cast<std::size_t>(i)];
        const double steps = magnitude(to_unit(range, value_si)) / power_of_ten(range.exponent);
        if (steps < range.counts + 0.5)
            return static_cast<std::uint8_t>(i);
    }
    return static_cast<std::uint8_t>(row.range_count);
}

/// Whether the number has left the neighbourhood of its anchor.
bool has_moved(const Display& d) {
    const Range& now = range_at(d.quantity, d.range);
    const Range& then = range_at(d.quantity, d.anchor_range);
    const double anchor_si = to_si(then, in_unit(then, d.anchor));
    const double anchor = to_unit(now, anchor_si);
    return magnitude(in_unit(now, d.mantissa) - anchor) > accuracy(now, anchor);
}

/// Puts a new content into the window and starts to count again if it is another one.
void put(Display& d, Display next) {
    const bool same_kind =
        d.quantity == next.quantity && ((d.flags ^ next.flags) & (kOn | kOverload)) == 0; // on, and OL or not
    next.anchor = d.anchor;
    next.anchor_range = d.anchor_range;
    next.ticks_settled = d.ticks_settled;
    if (!same_kind || (!next.has(kOverload) && has_moved(next))) {
        next.anchor = next.mantissa;
        next.anchor_range = next.range;
        next.ticks_settled = 0;
    }
    d = next;
}

} // namespace

bool is_settled(const Display& display) {
    return display.has(kOn) && !display.has(kOverload) && display.ticks_settled >= kSettledTicks;
}

std::string text(const Display& display) {
    if (!display.has(kOn))
        return {};
    if (display.has(kOverload))
        return "OL";
    const Range& range = range_at(display.quantity, display.range);
    const std::int64_t mantissa = display.mantissa;
    std::string digits = std::to_string(mantissa < 0 ? -mantissa : mantissa);
    const auto decimals = static_cast<std::size_t>(range.exponent < 0 ? -range.exponent : 0);
    if (digits.size() <= decimals)
        digits.insert(0, decimals + 1 - digits.size(), '0');
    if (decimals > 0)
        digits.insert(digits.size() - decimals, ".");
    const std::string_view unit = unit_row(range.unit).written;
    return (mantissa < 0 ? "-" : "") + digits + (unit.empty() ? "" : " ") + std::string(unit);
}

Value value_of(const Display& display) {
    if (!display.has(kOn) || display.has(kOverload))
        return {};
    const Range& range = range_at(display.quantity, display.range);
    const double value = in_unit(range, display.mantissa);
    const UnitRow& unit = unit_row(range.unit);
    const double half_step = 0.5 * power_of_ten(range.exponent);
    return {to_si(range, value), unit.factor * (accuracy(range, value) + half_step), unit.si, true};
}

void blank(Display& display) {
    display = {};
}

void age(Display& display) {
    if (display.has(kOn))
        ++display.ticks_settled;
}

void show(Display& display, Quantity quantity, double value_si, std::uint8_t more_flags) {
    const QuantityRow& row = quantity_row(quantity);
    const std::uint8_t place = range_for(row, value_si);
    if (place >= row.range_count) {
        show_overload(display, quantity, more_flags);
        return;
    }
    const Range& range = row.ranges[place];
    Display next;
    next.quantity = quantity;
    next.range = place;
    next.flags = static_cast<std::uint8_t>(kOn | more_flags);
    next.mantissa = rounded(to_unit(range, value_si) / power_of_ten(range.exponent));
    if (!row.has_sign && next.mantissa < 0)
        next.mantissa = 0;
    put(display, next);
}

void show_overload(Display& display, Quantity quantity, std::uint8_t more_flags) {
    Display next;
    next.quantity = quantity;
    next.range = static_cast<std::uint8_t>(quantity_row(quantity).range_count - 1);
    next.flags = static_cast<std::uint8_t>(kOn | kOverload | more_flags);
    put(display, next);
}

Calibration calibration(std::uint64_t seed, Quantity quantity, unsigned channel) {
    const std::uint64_t stream = kErrorStream + static_cast<std::uint64_t>(quantity);
    return {units::random_signed(seed, stream, 2U * channel),
            units::random_signed(seed, stream, 2U * channel + 1U)};
}

double with_error(Quantity quantity, double value_si, const Calibration& calibration) {
    const QuantityRow& row = quantity_row(quantity);
    const std::uint8_t place = range_for(row, value_si);
    if (place >= row.range_count)
        return value_si;
    const Range& range = row.ranges[place];
    const double value = to_unit(range, value_si);
    const double off = calibration.gain * range.fraction * value +
                       calibration.offset * range.digits * power_of_ten(range.exponent);
    return to_si(range, value + off / 3.0);
}

double lag_share(double dt_s, double lag_s) {
    return lag_s <= 0.0 ? 1.0 : 1.0 - units::exp(-dt_s / lag_s);
}

} // namespace lightoff::instruments
