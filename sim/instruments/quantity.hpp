// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

/// What the windows of the instruments can show: units, ranges, resolution, accuracy. Data, in one place.
namespace lightoff::instruments {

/// As printed in a window.
enum class Unit : std::uint8_t {
    none,
    volt,
    ampere,
    microampere,
    ohm,
    kilohm,
    megohm,
    nanofarad,
    microfarad,
    watt,
    rpm,
    inwc,
    fahrenheit,
    fahrenheit_difference,
    percent,
    ppm,
    hertz,
    millimetre,
    turn,
    second
};

/// SI value = offset + factor * (value in the unit).
struct UnitRow {
    std::string_view text;    ///< as it is typed: "kohm", "in. w.c.", "F"
    std::string_view written; ///< for people: "kΩ", "in. w.c.", "°F"
    std::string_view si;      ///< "ohm", "Pa", "K"
    double factor = 1.0;
    double offset = 0.0;
};
const UnitRow& unit_row(Unit unit);

enum class Quantity : std::uint8_t {
    none,
    ac_volts,
    low_z_volts,
    dc_volts,
    ohms,
    continuity,
    capacitance,
    dc_microamps,
    ac_amps,
    clamp_amps,
    supply_volts, ///< the wattmeter's
    supply_amps,
    supply_watts,
    power_factor,
    speed,
    pressure,
    temperature,
    temperature_difference,
    oxygen, ///< the analyser's, dry
    carbon_monoxide,
    carbon_dioxide,
    co_air_free,
    stack_temperature,
    inlet_air_temperature,
    net_temperature,
    excess_air,
    efficiency,
    explosive_limit, ///< gas in air, of the lower flammable limit
    ticking,
    bubble, ///< diameter, at a joint with leak-detection solution
    glow,   ///< of the non-contact voltage tester: 1 or 0
    dial,   ///< place of the gas meter's hand on its test dial
    stopwatch,
    ambient_co,
    count
};

/// One range of a window. The actual error of an attempt's instrument lies within a third of its accuracy.
struct Range {
    Unit unit = Unit::none;
    int exponent = 0;      ///< the last digit counts 10^exponent units
    int counts = 0;        ///< highest number that can stand in the window, without its point
    double fraction = 0.0; ///< accuracy: this part of the reading ...
    double digits = 0.0;   ///< ... and so many of the last digit
};

/// All that a window can show of one quantity; ranges from fine to coarse.
struct QuantityRow {
    Quantity quantity = Quantity::none;
    std::string_view id;    ///< "ac-volts"
    std::string_view title; ///< for people
    bool has_sign = false;  ///< below 0 is shown; else 0
    int range_count = 1;
    std::array<Range, 6> ranges{};
};

/// By the enumeration. Values are common practice for meters of the service trade, no source.
const QuantityRow& quantity_row(Quantity quantity);

/// The unit in which people speak of it, whatever range shows it: ohm, uF, otherwise that of its windows.
Unit plain_unit(Quantity quantity);

/// 10^exponent, -6 <= exponent <= 6.
double power_of_ten(int exponent);

} // namespace lightoff::instruments
