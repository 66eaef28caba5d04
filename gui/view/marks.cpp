// SPDX-License-Identifier: MIT
#include "gui/view/marks.hpp"

#include "instruments/bag.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::view {
namespace {

constexpr std::uint64_t kFreshTicks = 5 * 60 * 20;
constexpr double kLive_v = 2.0;
constexpr double kLineVoltage_v = 40.0;

/// What was measured before may not be so any more: door, power, thermostat or gas are another.
bool makes_stale(bench::Verb verb) {
    return bench::works_a_switch(verb) || verb == bench::Verb::gas_cock || verb == bench::Verb::burner_door;
}

std::uint64_t last_change(const Known& known) {
    std::uint64_t tick = 0;
    for (const visit::Visit::Done& done : known.done)
        if (makes_stale(done.action.verb))
            tick = done.tick;
    return tick;
}

bool is_volts(const bench::Reading& reading) {
    return reading.window == 0 && reading.place_a != reading.place_b &&
           instruments::value_of(reading.display).unit == "V";
}

} // namespace

std::vector<Stamp> stamps_of(const Known& known) {
    std::vector<Stamp> stamps;
    const std::uint64_t changed = last_change(known);
    for (std::size_t i = 0; i < known.readings.size(); ++i) {
        const bench::Reading& reading = known.readings[i];
        if (!is_volts(reading))
            continue;
        const double volts = std::abs(instruments::value_of(reading.display).value);
        std::erase_if(stamps, [&](const Stamp& stamp) {
            return std::minmax(stamp.red, stamp.black) == std::minmax(reading.place_a, reading.place_b);
        });
        stamps.push_back({i + 1, reading.place_a, reading.place_b, visit::window_text(reading.display),
                          volts >= kLive_v, volts >= kLineVoltage_v,
                          reading.tick < changed || known.percept.tick - reading.tick > kFreshTicks});
    }
    return stamps;
}

} // namespace lightoff::view
