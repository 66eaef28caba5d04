// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "units/constants.hpp"

#include <array>
#include <string_view>

/// How quickly the instruments beside the multimeter follow. Common practice, no source, unless said.
namespace lightoff::instruments {

struct Timing {
    std::string_view what;
    int update_ticks = 10; ///< between two numbers
    double lag_s = 0.0;    ///< first-order

    /// Part of the way to a new value that one update covers.
    [[nodiscard]] double share() const { return lag_share(update_ticks * units::seconds_per_tick, lag_s); }
};

inline constexpr Timing kClampTiming{"clamp ammeter", 10, 0.4};
inline constexpr Timing kWattmeterTiming{"wattmeter", 10, 0.5};
inline constexpr Timing kTachometerTiming{"tachometer", 10, 0.5};
inline constexpr Timing kManometerTiming{"manometer", 5, 0.4};
inline constexpr Timing kProbeInAirTiming{"thermometer, probe in air", 10, 4.0};
inline constexpr Timing kProbeOnMetalTiming{"thermometer, probe on metal", 10, 8.0}; // teaching value
/// The hose is kHoseCells stirred cells in a row, each with this lag: some 5-6 s on the way.
inline constexpr Timing kHoseCellTiming{"analyser, each of four cells of its hose", 10, 1.4};
inline constexpr Timing kOxygenTiming{"analyser, oxygen", 10, 5.0};
inline constexpr Timing kCoTiming{"analyser, carbon monoxide", 10, 8.0};
inline constexpr Timing kStackTiming{"analyser, temperatures", 10, 4.0};
inline constexpr Timing kGasDetectorTiming{"gas detector", 5, 1.5};
inline constexpr Timing kLeakSolutionTiming{"leak-detection solution", 5, 0.0};
inline constexpr Timing kVoltageTesterTiming{"voltage tester", 5, 0.0};
inline constexpr Timing kDialWatchTiming{"dial and stopwatch", 5, 0.0};
inline constexpr Timing kCoAlarmTiming{"CO alarm", 20, 15.0};

/// All of them, for the manual.
inline constexpr std::array kTimings{
    kClampTiming,        kWattmeterTiming,    kTachometerTiming,    kManometerTiming, kProbeInAirTiming,
    kProbeOnMetalTiming, kHoseCellTiming,     kOxygenTiming,        kCoTiming,        kStackTiming,
    kGasDetectorTiming,  kLeakSolutionTiming, kVoltageTesterTiming, kDialWatchTiming, kCoAlarmTiming};

} // namespace lightoff::instruments
