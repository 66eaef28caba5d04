// SPDX-License-Identifier: MIT
#pragma once
#include "gui/view/known.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Values as they are printed for people.
namespace lightoff::sheet {

/// What stands in a window, number and unit apart: "24.31" and "V", "−0.991" and "in. w.c.", "OL" and "".
struct Figure {
    std::string number;
    std::string unit;
    [[nodiscard]] std::string text() const { return unit.empty() ? number : number + " " + unit; }
};
/// As the instrument shows it, in its own unit.
Figure figure_of(const instruments::Display& display);
/// In the units chosen: pressures in Pa, temperatures in °C where they are SI.
Figure figure_in(const instruments::Display& display, view::Units units);
/// The number of a window in a unit that stays the same over all ranges, for a curve: ohms, microfarads; in
/// the units chosen.
struct Point {
    double value;
    std::string_view unit;
    int decimals; ///< that the window has now
};
/// None while the window is dark, says OL or only glows.
std::optional<Point> point_of(const instruments::Display& display, view::Units units);

/// What a reading says, in the units chosen.
std::string reading_value(const view::Known& known, const bench::Reading& reading);

std::string temperature(double kelvin, view::Units units);                    ///< "66 °F"
std::string temperature_rise(double low_k, double high_k, view::Units units); ///< "40 to 70 °F"
std::string pressure(double pascals, int decimals_inwc, view::Units units);   ///< "3.5 in. w.c.", "872 Pa"
std::string heat_flow(double watts, view::Units units);                       ///< "80,000 Btu/h", "23.4 kW"

} // namespace lightoff::sheet
