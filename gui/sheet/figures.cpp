// SPDX-License-Identifier: MIT
#include "gui/sheet/figures.hpp"

#include "gui/canvas/lettering.hpp"
#include "units/convert.hpp"
#include "visit/words.hpp"

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

} // namespace

std::string_view unit_text(Unit unit) {
    switch (unit) {
    case Unit::microampere:
        return "µA";
    case Unit::ohm:
        return "Ω";
    case Unit::kilohm:
        return "kΩ";
    case Unit::megohm:
        return "MΩ";
    case Unit::microfarad:
        return "µF";
    case Unit::fahrenheit:
    case Unit::fahrenheit_difference:
        return "°F";
    case Unit::hertz:
        return "a second";
    default:
        return instruments::unit_row(unit).text;
    }
}

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
    return {canvas::figure(value, std::max(0, -range.exponent)), std::string(unit_text(range.unit))};
}

Figure figure_in(const instruments::Display& display, view::Units units) {
    const instruments::Value value = instruments::value_of(display);
    if (units == view::Units::trade || !value.known) {
        return figure_of(display);
    }
    const instruments::Range& range = range_of(display);
    const double shown = static_cast<double>(display.mantissa) * instruments::power_of_ten(range.exponent);
    switch (range.unit) {
    case Unit::inwc: // a hundredth of an inch is 2.5 Pa
        return {canvas::figure(units::inwc_to_pa(shown), range.exponent <= -3 ? 1 : 0), "Pa"};
    case Unit::fahrenheit:
        return {canvas::figure(units::k_to_celsius(units::fahrenheit_to_k(shown)), -range.exponent), "°C"};
    case Unit::fahrenheit_difference:
        return {canvas::figure(units::fahrenheit_difference_to_k(shown), -range.exponent), "K"};
    default:
        return figure_of(display);
    }
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
