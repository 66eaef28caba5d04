// SPDX-License-Identifier: MIT
#include "gui/sheet/figures.hpp"

#include "gui/canvas/lettering.hpp"
#include "units/convert.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::sheet {
namespace {

using instruments::Unit;

const instruments::Range& range_of(const instruments::Display& display) {
    return instruments::quantity_row(display.quantity).ranges[display.range];
}

std::string grouped(double value) {
    std::string digits = canvas::figure(value, 0);
    for (std::size_t at = digits.size(); at > 3 && at - 3 > 0;) {
        at -= 3;
        digits.insert(at, ",");
    }
    return digits;
}

/// What people who measure in SI read in another unit than the window has; none if it is the same.
std::optional<Point> in_si(const instruments::Range& range, double value_si) {
    switch (range.unit) {
    case Unit::inwc: // a hundredth of an inch is 2.5 Pa
        return Point{value_si, "Pa", range.exponent <= -3 ? 1 : 0};
    case Unit::fahrenheit:
        return Point{units::k_to_celsius(value_si), "°C", -range.exponent};
    case Unit::fahrenheit_difference:
        return Point{value_si, "K", -range.exponent};
    default:
        return std::nullopt;
    }
}

} // namespace

Figure figure_of(const instruments::Display& display) {
    if (!display.has(instruments::kOn)) {
        return {};
    }
    if (display.quantity == instruments::Quantity::glow) {
        return {display.mantissa != 0 ? "glows" : "dark", ""};
    }
    if (display.has(instruments::kOverload)) {
        return {"OL", ""};
    }
    const instruments::Range& range = range_of(display);
    const double value = static_cast<double>(display.mantissa) * instruments::power_of_ten(range.exponent);
    return {canvas::figure(value, std::max(0, -range.exponent)),
            std::string(instruments::unit_row(range.unit).written)};
}

Figure figure_in(const instruments::Display& display, view::Units units) {
    const instruments::Value value = instruments::value_of(display);
    if (units == view::Units::si && value.known)
        if (const auto point = in_si(range_of(display), value.value))
            return {canvas::figure(point->value, point->decimals), std::string(point->unit)};
    return figure_of(display);
}

std::optional<Point> point_of(const instruments::Display& display, view::Units units) {
    const instruments::Value value = instruments::value_of(display);
    if (!value.known || display.quantity == instruments::Quantity::glow)
        return std::nullopt;
    const instruments::Range& range = range_of(display);
    if (units == view::Units::si)
        if (const auto point = in_si(range, value.value))
            return point;
    const instruments::UnitRow& row = instruments::unit_row(instruments::plain_unit(display.quantity));
    const auto coarser =
        static_cast<int>(std::lround(std::log10(instruments::unit_row(range.unit).factor / row.factor)));
    return Point{(value.value - row.offset) / row.factor, row.written,
                 std::max(0, -range.exponent - coarser)};
}

std::string reading_value(const view::Known& known, const bench::Reading& reading) {
    return reading.window < 0 || reading.display.quantity == instruments::Quantity::glow
               ? visit::value_text(*known.site, reading)
               : figure_in(reading.display, known.units).text();
}

std::string temperature(double kelvin, view::Units units) {
    return units == view::Units::si ? canvas::figure(units::k_to_celsius(kelvin), 1) + " °C"
                                    : canvas::figure(units::k_to_fahrenheit(kelvin), 0) + " °F";
}

std::string temperature_rise(double low_k, double high_k, view::Units units) {
    const bool si = units == view::Units::si;
    const auto text = [&](double k) {
        return canvas::figure(si ? k : units::k_difference_to_fahrenheit(k), 0);
    };
    return text(low_k) + " to " + text(high_k) + (si ? " K" : " °F");
}

std::string pressure(double pascals, int decimals_inwc, view::Units units) {
    return units == view::Units::si ? canvas::figure(pascals, 0) + " Pa"
                                    : canvas::figure(units::pa_to_inwc(pascals), decimals_inwc) + " in. w.c.";
}

std::string heat_flow(double watts, view::Units units) {
    return units == view::Units::si ? canvas::figure(watts / 1000.0, 1) + " kW"
                                    : grouped(units::w_to_btuh(watts)) + " Btu/h";
}

} // namespace lightoff::sheet
