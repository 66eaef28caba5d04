// SPDX-License-Identifier: MIT
#include "instruments/bag.hpp"

namespace lightoff::instruments {

void connect(const Bag& bag, furnace::Inputs& inputs) {
    inputs.attachments[kMultimeterSlot] = attachment_of(bag.multimeter);
}

void step(const furnace::Model& model, const furnace::State& state, const furnace::Condition& condition,
          const furnace::Inputs& inputs, std::uint64_t seed, std::uint64_t tick,
          furnace::Workspace& workspace, Bag& bag) {
    Moment now(model, state, condition, inputs, seed, tick, workspace);
    step(now, bag.multimeter);
    step(now, bag.clamp);
    step(now, bag.wattmeter);
    step(now, bag.tachometer);
    step(now, bag.manometer);
    step(now, bag.thermometer);
    step(now, bag.analyser);
    step(now, bag.gas_detector);
    step(now, bag.leak_solution);
    step(now, bag.voltage_tester);
    step(now, bag.dial_watch);
    step(now, bag.co_alarm);
}

std::array<NamedDisplay, kWindows> displays(const Bag& bag) {
    return {{{"multimeter", &bag.multimeter.display, Instrument::multimeter},
             {"clamp ammeter", &bag.clamp.display, Instrument::clamp},
             {"wattmeter volts", &bag.wattmeter.volts, Instrument::wattmeter},
             {"wattmeter amps", &bag.wattmeter.amps, Instrument::wattmeter},
             {"wattmeter watts", &bag.wattmeter.watts, Instrument::wattmeter},
             {"wattmeter power factor", &bag.wattmeter.power_factor, Instrument::wattmeter},
             {"tachometer", &bag.tachometer.display, Instrument::tachometer},
             {"manometer", &bag.manometer.display, Instrument::manometer},
             {"thermometer T1", &bag.thermometer.t1, Instrument::thermometer},
             {"thermometer T2", &bag.thermometer.t2, Instrument::thermometer},
             {"thermometer T1 - T2", &bag.thermometer.difference, Instrument::thermometer},
             {"analyser oxygen", &bag.analyser.oxygen, Instrument::analyser},
             {"analyser carbon monoxide", &bag.analyser.carbon_monoxide, Instrument::analyser},
             {"analyser carbon dioxide", &bag.analyser.carbon_dioxide, Instrument::analyser},
             {"analyser CO air-free", &bag.analyser.co_air_free, Instrument::analyser},
             {"analyser stack", &bag.analyser.stack, Instrument::analyser},
             {"analyser inlet air", &bag.analyser.inlet_air, Instrument::analyser},
             {"analyser net", &bag.analyser.net, Instrument::analyser},
             {"analyser excess air", &bag.analyser.excess_air, Instrument::analyser},
             {"analyser efficiency", &bag.analyser.efficiency, Instrument::analyser},
             {"gas detector", &bag.gas_detector.explosive_limit, Instrument::gas_detector},
             {"gas detector ticks", &bag.gas_detector.ticking, Instrument::gas_detector},
             {"leak-detection solution", &bag.leak_solution.bubble, Instrument::leak_solution},
             {"voltage tester", &bag.voltage_tester.glow, Instrument::voltage_tester},
             {"gas meter dial", &bag.dial_watch.dial, Instrument::dial_watch},
             {"stopwatch", &bag.dial_watch.stopwatch, Instrument::dial_watch},
             {"CO alarm", &bag.co_alarm.display, Instrument::co_alarm}}};
}

} // namespace lightoff::instruments
