// SPDX-License-Identifier: MIT
#include "instruments/multimeter.hpp"

#include <cstddef>

namespace lightoff::instruments {
namespace {

// Between the leads: 10 Mohm on volts (general electronics texts; tests/reference). The rest is common
// practice for meters of the service trade, no source: 3 kohm at low impedance, 2 kohm in series with a
// flame, 0.03 ohm on amps with leads and fuse, a test source of 1 V that a protected input stands behind.
constexpr double kVoltsOhm = 10e6;
constexpr double kLowZOhm = 3e3;
constexpr double kTestV = 1.0;
constexpr double kProtectedOhm = 1e6;
constexpr double kMicroampShuntOhm = 2e3;
constexpr double kAmpShuntOhm = 0.03;

constexpr bool kInSeries = true;

// Between the leads, test source, lag, ticks between two numbers.
constexpr std::array<FunctionRow, static_cast<std::size_t>(Function::count)> kFunctions{{
    {Function::off, "off", "off", Quantity::none, 0.0, 0.0, 0.0, 5},
    {Function::ac_volts, "ac-volts", "AC volts", Quantity::ac_volts, kVoltsOhm, 0.0, 0.25, 5},
    {Function::low_z_volts, "low-z-volts", "AC volts, low impedance", Quantity::low_z_volts, kLowZOhm, 0.0,
     0.25, 5},
    {Function::dc_volts, "dc-volts", "DC volts", Quantity::dc_volts, kVoltsOhm, 0.0, 0.25, 5},
    {Function::ohms, "ohms", "ohms", Quantity::ohms, kProtectedOhm, kTestV, 0.0, 5},
    {Function::continuity, "continuity", "continuity, beeps", Quantity::continuity, kProtectedOhm, kTestV,
     0.0, 5},
    {Function::capacitance, "capacitance", "capacitance", Quantity::capacitance, kProtectedOhm, 0.0, 0.0, 20},
    {Function::dc_microamps, "dc-microamps", "DC microamps, in series", Quantity::dc_microamps,
     kMicroampShuntOhm, 0.0, 0.5, 5, kInSeries},
    {Function::ac_amps, "ac-amps", "AC amps, in series", Quantity::ac_amps, kAmpShuntOhm, 0.0, 0.25, 5,
     kInSeries},
}};

constexpr bool rows_stand_in_order() {
    for (std::size_t i = 0; i < kFunctions.size(); ++i)
        if (kFunctions[i].function != static_cast<Function>(i))
            return false;
    return true;
}
static_assert(rows_stand_in_order());

} // namespace

const FunctionRow& function_row(Function function) {
    return kFunctions[static_cast<std::size_t>(function)];
}

std::vector<FunctionRow> functions() {
    return {kFunctions.begin(), kFunctions.end()};
}

Function find_function(std::string_view id) {
    for (const FunctionRow& row : kFunctions)
        if (row.id == id)
            return row.function;
    return Function::count;
}

} // namespace lightoff::instruments
