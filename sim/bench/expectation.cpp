// SPDX-License-Identifier: MIT
#include "bench/expectation.hpp"

#include "bench/action.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::bench {
namespace {

using instruments::Unit;

constexpr double kAbout = 0.15;

/// In the unit itself.
double unquarrelled(Unit unit) {
    switch (unit) {
    case Unit::volt:
        return 1.0;
    case Unit::ampere:
        return 0.3;
    case Unit::microampere:
    case Unit::microfarad:
        return 0.5;
    case Unit::ohm:
        return 2.0;
    case Unit::watt:
        return 20.0;
    case Unit::rpm:
        return 50.0;
    case Unit::inwc:
        return 0.05;
    case Unit::fahrenheit:
    case Unit::fahrenheit_difference:
        return 5.0;
    case Unit::percent:
        return 1.0;
    case Unit::ppm:
        return 10.0;
    case Unit::second:
        return 3.0;
    default:
        return 0.0;
    }
}

} // namespace

bool shows_expected(const instruments::Display& display, std::int32_t expected) {
    const instruments::Value shown = instruments::value_of(display);
    if (!shown.known || expected == kExpectsOverload)
        return !shown.known && expected == kExpectsOverload && display.has(instruments::kOverload);
    const Unit plain = instruments::plain_unit(display.quantity);
    const instruments::UnitRow& unit = instruments::unit_row(plain);
    const double is = (shown.value - unit.offset) / unit.factor;
    const double was_expected = 0.001 * static_cast<double>(expected);
    return std::abs(is - was_expected) <=
           std::max(kAbout * std::abs(was_expected), unquarrelled(plain)) + shown.half_width / unit.factor;
}

std::vector<Expectation> expectations(std::span<const TimedAction> said, std::span<const Reading> readings) {
    std::vector<Expectation> all;
    for (const TimedAction& one : said) {
        if (one.action.verb != Verb::expect)
            continue;
        Expectation expectation{one.tick, one.action.target, one.action.value, 0, false};
        const auto answer = std::find_if(readings.begin(), readings.end(), [&](const Reading& reading) {
            return reading.window == expectation.window && reading.tick > expectation.tick;
        });
        if (answer != readings.end()) {
            expectation.reading = static_cast<int>(answer - readings.begin()) + 1;
            expectation.came_true = shows_expected(answer->display, expectation.value);
        }
        const auto same = std::find_if(all.begin(), all.end(), [&](const Expectation& before) {
            return before.window == expectation.window && before.reading == expectation.reading;
        });
        if (same != all.end())
            *same = expectation;
        else
            all.push_back(expectation);
    }
    return all;
}

} // namespace lightoff::bench
