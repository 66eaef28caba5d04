// SPDX-License-Identifier: MIT
#include "instruments/quantity.hpp"

#include "units/convert.hpp"

namespace lightoff::instruments {
namespace {

constexpr std::array<UnitRow, 20> kUnits{{
    {"", "", "1"},
    {"V", "V", "V"},
    {"A", "A", "A"},
    {"uA", "µA", "A", 1e-6},
    {"ohm", "Ω", "ohm"},
    {"kohm", "kΩ", "ohm", 1e3},
    {"Mohm", "MΩ", "ohm", 1e6},
    {"nF", "nF", "F", 1e-9},
    {"uF", "µF", "F", 1e-6},
    {"W", "W", "W"},
    {"rpm", "rpm", "rad/s", units::rpm_to_rad_s(1.0)},
    {"in. w.c.", "in. w.c.", "Pa", units::pascals_per_inwc},
    {"F", "°F", "K", 1.0 / 1.8, units::fahrenheit_to_k(0.0)},
    {"F", "°F", "K", 1.0 / 1.8},
    {"%", "%", "1", 1e-2},
    {"ppm", "ppm", "1", 1e-6},
    {"/s", "a second", "1/s"},
    {"mm", "mm", "m", 1e-3},
    {"turns", "turns", "1"},
    {"s", "s", "s"},
}};

constexpr bool kSigned = true;
constexpr bool kUnsigned = false;

// Of each range: unit, last digit, counts, accuracy as part of the reading and in digits.
constexpr std::array<QuantityRow, static_cast<std::size_t>(Quantity::count)> kQuantities{{
    {Quantity::none, "none", "nothing", kUnsigned, 1, {{{Unit::none, 0, 0, 0.0, 0.0}}}},
    {Quantity::ac_volts,
     "ac-volts",
     "AC volts",
     kUnsigned,
     3,
     {{{Unit::volt, -3, 6000, 0.01, 3.0},
       {Unit::volt, -2, 6000, 0.01, 3.0},
       {Unit::volt, -1, 6000, 0.01, 3.0}}}},
    {Quantity::low_z_volts,
     "low-z-volts",
     "AC volts, low impedance",
     kUnsigned,
     3,
     {{{Unit::volt, -3, 6000, 0.02, 3.0},
       {Unit::volt, -2, 6000, 0.02, 3.0},
       {Unit::volt, -1, 6000, 0.02, 3.0}}}},
    {Quantity::dc_volts,
     "dc-volts",
     "DC volts",
     kSigned,
     3,
     {{{Unit::volt, -3, 6000, 0.005, 2.0},
       {Unit::volt, -2, 6000, 0.005, 2.0},
       {Unit::volt, -1, 6000, 0.005, 2.0}}}},
    {Quantity::ohms,
     "ohms",
     "resistance",
     kSigned,
     6,
     {{{Unit::ohm, -1, 6000, 0.009, 2.0},
       {Unit::kilohm, -3, 6000, 0.009, 2.0},
       {Unit::kilohm, -2, 6000, 0.009, 2.0},
       {Unit::kilohm, -1, 6000, 0.009, 2.0},
       {Unit::megohm, -3, 6000, 0.009, 2.0},
       {Unit::megohm, -2, 4000, 0.03, 5.0}}}},
    {Quantity::continuity, "continuity", "continuity", kSigned, 1, {{{Unit::ohm, -1, 6000, 0.009, 3.0}}}},
    {Quantity::capacitance,
     "capacitance",
     "capacitance",
     kUnsigned,
     5,
     {{{Unit::nanofarad, -2, 6000, 0.019, 10.0},
       {Unit::nanofarad, -1, 6000, 0.019, 2.0},
       {Unit::microfarad, -3, 6000, 0.019, 2.0},
       {Unit::microfarad, -2, 6000, 0.019, 2.0},
       {Unit::microfarad, -1, 6000, 0.019, 2.0}}}},
    {Quantity::dc_microamps,
     "dc-microamps",
     "DC microamps",
     kSigned,
     2,
     {{{Unit::microampere, -2, 6000, 0.01, 2.0}, {Unit::microampere, -1, 6000, 0.01, 2.0}}}},
    {Quantity::ac_amps,
     "ac-amps",
     "AC amps",
     kUnsigned,
     2,
     {{{Unit::ampere, -3, 6000, 0.015, 3.0}, {Unit::ampere, -2, 1000, 0.015, 3.0}}}},
    {Quantity::clamp_amps,
     "clamp-amps",
     "AC amps by clamp",
     kUnsigned,
     2,
     {{{Unit::ampere, -2, 6000, 0.02, 5.0}, {Unit::ampere, -1, 6000, 0.02, 5.0}}}},
    {Quantity::supply_volts,
     "supply-volts",
     "volts at the supply",
     kUnsigned,
     1,
     {{{Unit::volt, -1, 6000, 0.01, 3.0}}}},
    {Quantity::supply_amps,
     "supply-amps",
     "amps at the supply",
     kUnsigned,
     2,
     {{{Unit::ampere, -2, 6000, 0.02, 5.0}, {Unit::ampere, -1, 6000, 0.02, 5.0}}}},
    {Quantity::supply_watts,
     "supply-watts",
     "watts at the supply",
     kSigned,
     2,
     {{{Unit::watt, -1, 6000, 0.025, 10.0}, {Unit::watt, 0, 6000, 0.025, 5.0}}}},
    {Quantity::power_factor, "power-factor", "power factor", kSigned, 1, {{{Unit::none, -2, 100, 0.0, 3.0}}}},
    {Quantity::speed,
     "speed",
     "speed",
     kUnsigned,
     2,
     {{{Unit::rpm, -1, 9999, 0.0005, 1.0}, {Unit::rpm, 0, 99999, 0.0005, 1.0}}}},
    {Quantity::pressure,
     "pressure",
     "pressure difference",
     kSigned,
     2,
     {{{Unit::inwc, -3, 9999, 0.01, 3.0}, {Unit::inwc, -2, 6000, 0.01, 3.0}}}},
    {Quantity::temperature,
     "temperature",
     "temperature",
     kSigned,
     2,
     {{{Unit::fahrenheit, -1, 9999, 0.001, 10.0}, {Unit::fahrenheit, 0, 2000, 0.001, 2.0}}}},
    {Quantity::temperature_difference,
     "temperature-difference",
     "T1 - T2",
     kSigned,
     2,
     {{{Unit::fahrenheit_difference, -1, 9999, 0.001, 20.0},
       {Unit::fahrenheit_difference, 0, 2000, 0.001, 4.0}}}},
    {Quantity::oxygen, "oxygen", "oxygen", kUnsigned, 1, {{{Unit::percent, -1, 250, 0.0, 3.0}}}},
    {Quantity::carbon_monoxide,
     "carbon-monoxide",
     "carbon monoxide",
     kUnsigned,
     1,
     {{{Unit::ppm, 0, 4000, 0.05, 5.0}}}},
    {Quantity::carbon_dioxide,
     "carbon-dioxide",
     "carbon dioxide",
     kUnsigned,
     1,
     {{{Unit::percent, -1, 250, 0.0, 3.0}}}},
    {Quantity::co_air_free,
     "co-air-free",
     "carbon monoxide, air-free",
     kUnsigned,
     1,
     {{{Unit::ppm, 0, 9999, 0.10, 15.0}}}},
    {Quantity::stack_temperature,
     "stack-temperature",
     "stack temperature",
     kSigned,
     1,
     {{{Unit::fahrenheit, 0, 1999, 0.005, 2.0}}}},
    {Quantity::inlet_air_temperature,
     "inlet-air-temperature",
     "inlet air temperature",
     kSigned,
     1,
     {{{Unit::fahrenheit, 0, 250, 0.0, 2.0}}}},
    {Quantity::net_temperature,
     "net-temperature",
     "net stack temperature",
     kSigned,
     1,
     {{{Unit::fahrenheit_difference, 0, 1999, 0.005, 4.0}}}},
    {Quantity::excess_air, "excess-air", "excess air", kUnsigned, 1, {{{Unit::percent, 0, 999, 0.10, 2.0}}}},
    {Quantity::efficiency,
     "efficiency",
     "steady efficiency",
     kUnsigned,
     1,
     {{{Unit::percent, -1, 1000, 0.0, 10.0}}}},
    {Quantity::explosive_limit,
     "explosive-limit",
     "of the lower flammable limit",
     kUnsigned,
     1,
     {{{Unit::percent, 0, 100, 0.10, 2.0}}}},
    {Quantity::ticking, "ticking", "ticks", kUnsigned, 1, {{{Unit::hertz, 0, 50, 0.10, 1.0}}}},
    {Quantity::bubble, "bubble", "bubble", kUnsigned, 1, {{{Unit::millimetre, 0, 25, 0.20, 1.0}}}},
    {Quantity::glow, "glow", "glow", kUnsigned, 1, {{{Unit::none, 0, 1, 0.0, 0.0}}}},
    {Quantity::dial, "dial", "test dial", kUnsigned, 1, {{{Unit::turn, -2, 100, 0.0, 1.0}}}},
    {Quantity::stopwatch, "stopwatch", "stopwatch", kUnsigned, 1, {{{Unit::second, -1, 99999, 0.0, 3.0}}}},
    {Quantity::ambient_co, "ambient-co", "CO in the room", kUnsigned, 1, {{{Unit::ppm, 0, 999, 0.10, 3.0}}}},
}};

constexpr bool rows_stand_in_order() {
    for (std::size_t i = 0; i < kQuantities.size(); ++i)
        if (kQuantities[i].quantity != static_cast<Quantity>(i))
            return false;
    return true;
}
static_assert(rows_stand_in_order());

constexpr std::array<double, 13> kPowers{1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 1e-1, 1e0,
                                         1e1,  1e2,  1e3,  1e4,  1e5,  1e6};

} // namespace

const UnitRow& unit_row(Unit unit) {
    return kUnits[static_cast<std::size_t>(unit)];
}

const QuantityRow& quantity_row(Quantity quantity) {
    return kQuantities[static_cast<std::size_t>(quantity)];
}

Unit plain_unit(Quantity quantity) {
    const Unit unit = quantity_row(quantity).ranges[0].unit;
    switch (unit) {
    case Unit::kilohm:
    case Unit::megohm:
        return Unit::ohm;
    case Unit::nanofarad:
        return Unit::microfarad;
    default:
        return unit;
    }
}

double power_of_ten(int exponent) {
    return kPowers[static_cast<std::size_t>(exponent + 6)];
}

} // namespace lightoff::instruments
