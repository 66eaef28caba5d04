// SPDX-License-Identifier: MIT
#include "gui/instruments/bag_seen.hpp"

#include <algorithm>

namespace lightoff::faces {

using instruments::Instrument;

instruments::Bag bag_seen(const bench::Percept& percept) {
    const bench::Instruments& seen = percept.instruments;
    instruments::Bag bag;
    bag.multimeter.setting = seen.multimeter;
    bag.clamp.setting = seen.clamp;
    bag.wattmeter.setting = seen.wattmeter;
    bag.tachometer.setting = seen.tachometer;
    bag.manometer.setting = seen.manometer;
    bag.thermometer.setting = seen.thermometer;
    bag.analyser.setting = seen.analyser;
    bag.gas_detector.setting = seen.gas_detector;
    bag.leak_solution.setting = seen.leak_solution;
    bag.voltage_tester.setting = seen.voltage_tester;
    bag.dial_watch.setting = seen.dial_watch;
    return bag;
}

bool is_in_use(const bench::Percept& percept, Instrument instrument) {
    const bench::Instruments& seen = percept.instruments;
    if (instrument == Instrument::multimeter)
        return seen.multimeter.function != instruments::Function::off;
    if (instrument == Instrument::dial_watch)
        return seen.dial_watch.looking != 0;
    const auto windows = instruments::displays(instruments::Bag{});
    for (std::size_t i = 0; i < windows.size(); ++i)
        if (windows[i].instrument == instrument && seen.window[i].has(instruments::kOn))
            return true;
    switch (instrument) { // set, but its window has not woken yet
    case Instrument::clamp:
        return seen.clamp.on != 0;
    case Instrument::wattmeter:
        return seen.wattmeter.on != 0;
    case Instrument::tachometer:
        return seen.tachometer.on != 0;
    case Instrument::manometer:
        return seen.manometer.on != 0;
    case Instrument::thermometer:
        return seen.thermometer.on != 0;
    case Instrument::analyser:
        return seen.analyser.on != 0;
    case Instrument::gas_detector:
        return seen.gas_detector.on != 0;
    case Instrument::leak_solution:
        return seen.leak_solution.on != 0;
    case Instrument::voltage_tester:
        return seen.voltage_tester.on != 0;
    default:
        return false;
    }
}

} // namespace lightoff::faces
