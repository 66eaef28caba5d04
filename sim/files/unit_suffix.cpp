// SPDX-License-Identifier: MIT
#include "files/unit_suffix.hpp"
#include "units/constants.hpp"
#include "units/convert.hpp"
#include <algorithm>
#include <array>
#include <stdexcept>

namespace lightoff::files {
namespace {

using namespace units;

constexpr double square(double x) {
    return x * x;
}

constexpr Unit linear(std::string_view suffix, std::string_view quantity, std::string_view name,
                      double scale) {
    return {suffix, quantity, name, scale, 0.0};
}

constexpr std::array kUnits{
    linear("", "number", "pure number", 1.0),
    linear("fraction", "fraction", "part of one", 1.0),
    linear("pct", "fraction", "per cent", 1e-2),
    linear("ppm", "fraction", "parts per million", 1e-6),
    linear("ticks", "time", "tick of 50 ms", seconds_per_tick),
    linear("ms", "time", "millisecond", 1e-3),
    linear("s", "time", "second", 1.0),
    linear("min", "time", "minute", 60.0),
    linear("h", "time", "hour", 3600.0),
    linear("days", "time", "day", 86400.0),
    linear("Pa", "pressure", "pascal", 1.0),
    linear("kPa", "pressure", "kilopascal", 1e3),
    linear("inwc", "pressure", "inch of water column", pascals_per_inwc),
    linear("psi", "pressure", "pound per square inch", pascals_per_psi),
    linear("K", "temperature", "kelvin", 1.0),
    Unit{"C", "temperature", "degree Celsius", 1.0, kelvin_at_zero_celsius},
    Unit{"F", "temperature", "degree Fahrenheit", 1.0 / 1.8, kelvin_at_zero_celsius - 32.0 / 1.8},
    linear("K_difference", "temperature difference", "kelvin", 1.0),
    linear("C_difference", "temperature difference", "Celsius degree", 1.0),
    linear("F_difference", "temperature difference", "Fahrenheit degree", 1.0 / 1.8),
    linear("m", "length", "metre", 1.0),
    linear("mm", "length", "millimetre", 1e-3),
    linear("cm", "length", "centimetre", 1e-2),
    linear("in", "length", "inch", metres_per_inch),
    linear("ft", "length", "foot", metres_per_foot),
    linear("m2", "area", "square metre", 1.0),
    linear("cm2", "area", "square centimetre", 1e-4),
    linear("mm2", "area", "square millimetre", 1e-6),
    linear("in2", "area", "square inch", square(metres_per_inch)),
    linear("ft2", "area", "square foot", square(metres_per_foot)),
    linear("m3", "volume", "cubic metre", 1.0),
    linear("L", "volume", "litre", 1e-3),
    linear("mL", "volume", "millilitre", 1e-6),
    linear("ft3", "volume", "cubic foot", cubic_metres_per_cubic_foot),
    linear("m3_per_s", "volume flow", "cubic metre per second", 1.0),
    linear("cfm", "volume flow", "cubic foot per minute", cubic_metres_per_cubic_foot / 60.0),
    linear("cfh", "volume flow", "cubic foot per hour", cubic_metres_per_cubic_foot / 3600.0),
    linear("m_per_s", "velocity", "metre per second", 1.0),
    linear("fpm", "velocity", "foot per minute", metres_per_foot / 60.0),
    linear("kg", "mass", "kilogram", 1.0),
    linear("lb", "mass", "pound", kilograms_per_pound),
    linear("kg_per_s", "mass flow", "kilogram per second", 1.0),
    linear("kg_per_m3", "density", "kilogram per cubic metre", 1.0),
    linear("kg_per_mol", "molar mass", "kilogram per mole", 1.0),
    linear("g_per_mol", "molar mass", "gram per mole", 1e-3),
    linear("rad_per_s", "speed of rotation", "radian per second", 1.0),
    linear("rpm", "speed of rotation", "turn per minute", 2.0 * pi / 60.0),
    linear("Nm", "torque", "newton metre", 1.0),
    linear("kg_m2", "moment of inertia", "kilogram square metre", 1.0),
    linear("rad", "angle", "radian", 1.0),
    linear("deg", "angle", "degree", pi / 180.0),
    linear("Hz", "frequency", "hertz", 1.0),
    linear("V", "voltage", "volt", 1.0),
    linear("mV", "voltage", "millivolt", 1e-3),
    linear("A", "current", "ampere", 1.0),
    linear("mA", "current", "milliampere", 1e-3),
    linear("uA", "current", "microampere", 1e-6),
    linear("A2s", "melting integral", "ampere squared second", 1.0),
    linear("ohm", "resistance", "ohm", 1.0),
    linear("mohm", "resistance", "milliohm", 1e-3),
    linear("kohm", "resistance", "kilohm", 1e3),
    linear("Mohm", "resistance", "megohm", 1e6),
    linear("ohm_per_m", "resistance per length", "ohm per metre", 1.0),
    linear("mohm_per_m", "resistance per length", "milliohm per metre", 1e-3),
    linear("H", "inductance", "henry", 1.0),
    linear("mH", "inductance", "millihenry", 1e-3),
    linear("uH", "inductance", "microhenry", 1e-6),
    linear("uF", "capacitance", "microfarad", 1e-6),
    linear("nF", "capacitance", "nanofarad", 1e-9),
    linear("pF", "capacitance", "picofarad", 1e-12),
    linear("nF_per_m", "capacitance per length", "nanofarad per metre", 1e-9),
    linear("pF_per_m", "capacitance per length", "picofarad per metre", 1e-12),
    linear("W", "power", "watt", 1.0),
    linear("kW", "power", "kilowatt", 1e3),
    linear("Btuh", "power", "Btu per hour", watts_per_btu_per_hour),
    linear("hp", "power", "horsepower", watts_per_horsepower),
    linear("VA", "apparent power", "volt-ampere", 1.0),
    linear("J", "energy", "joule", 1.0),
    linear("kJ", "energy", "kilojoule", 1e3),
    linear("Btu", "energy", "Btu", joules_per_btu),
    linear("J_per_m3", "heating value", "joule per cubic metre", 1.0),
    linear("MJ_per_m3", "heating value", "megajoule per cubic metre", 1e6),
    linear("Btu_per_ft3", "heating value", "Btu per cubic foot",
           joules_per_btu / cubic_metres_per_cubic_foot),
    linear("J_per_K", "heat capacity", "joule per kelvin", 1.0),
    linear("kJ_per_K", "heat capacity", "kilojoule per kelvin", 1e3),
    linear("Btu_per_F", "heat capacity", "Btu per Fahrenheit degree", 1.8 * joules_per_btu),
    linear("W_per_K", "heat conductance", "watt per kelvin", 1.0),
    linear("Btuh_per_F", "heat conductance", "Btu per hour and Fahrenheit degree",
           1.8 * watts_per_btu_per_hour),
    linear("per_K", "temperature coefficient", "per kelvin", 1.0),
    linear("W_per_m2K", "heat transfer coefficient", "watt per square metre and kelvin", 1.0),
    linear("K_per_W", "thermal resistance", "kelvin per watt", 1.0),
    linear("Pa_s_per_m3", "linear flow resistance", "pascal per cubic metre a second", 1.0),
    linear("Pa_s2_per_m6", "square-law flow resistance", "pascal per cubic metre a second, squared", 1.0),
    linear("Nm_s_per_m3", "torque by flow", "newton metre per cubic metre a second", 1.0),
    linear("Nm_s2_per_m6", "torque by flow squared", "newton metre per cubic metre a second, squared", 1.0),
    linear("m3_per_Pa", "compliance", "cubic metre per pascal", 1.0),
    linear("kg_m", "unbalance", "kilogram metre", 1.0),
    linear("g_m", "unbalance", "gram metre", 1e-3),
    linear("kg_per_s_sqrtK", "free convection", "kilogram a second per square root of a kelvin", 1.0),
    linear("S", "conductance", "siemens", 1.0),
    linear("uS", "conductance", "microsiemens", 1e-6),
};

} // namespace

std::span<const Unit> units_table() {
    return kUnits;
}

const Unit& unit_of(std::string_view suffix) {
    const auto at =
        std::find_if(kUnits.begin(), kUnits.end(), [&](const Unit& u) { return u.suffix == suffix; });
    if (at == kUnits.end())
        throw std::invalid_argument("no unit has the suffix " + std::string(suffix));
    return *at;
}

std::vector<Unit> units_like(const Unit& unit) {
    std::vector<Unit> like;
    std::copy_if(kUnits.begin(), kUnits.end(), std::back_inserter(like),
                 [&](const Unit& u) { return u.quantity == unit.quantity; });
    return like;
}

std::string key_in(std::string_view name, const Unit& unit) {
    std::string key{name};
    if (!unit.suffix.empty())
        key += "_" + std::string(unit.suffix);
    return key;
}

} // namespace lightoff::files
