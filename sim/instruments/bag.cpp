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

std::vector<NamedDisplay> displays(const Bag& bag) {
    return {{"multimeter", &bag.multimeter.display},
            {"clamp ammeter", &bag.clamp.display},
            {"wattmeter volts", &bag.wattmeter.volts},
            {"wattmeter amps", &bag.wattmeter.amps},
            {"wattmeter watts", &bag.wattmeter.watts},
            {"wattmeter power factor", &bag.wattmeter.power_factor},
            {"tachometer", &bag.tachometer.display},
            {"manometer", &bag.manometer.display},
            {"thermometer T1", &bag.thermometer.t1},
            {"thermometer T2", &bag.thermometer.t2},
            {"thermometer T1 - T2", &bag.thermometer.difference},
            {"analyser oxygen", &bag.analyser.oxygen},
            {"analyser carbon monoxide", &bag.analyser.carbon_monoxide},
            {"analyser carbon dioxide", &bag.analyser.carbon_dioxide},
            {"analyser CO air-free", &bag.analyser.co_air_free},
            {"analyser stack", &bag.analyser.stack},
            {"analyser inlet air", &bag.analyser.inlet_air},
            {"analyser net", &bag.analyser.net},
            {"analyser excess air", &bag.analyser.excess_air},
            {"analyser efficiency", &bag.analyser.efficiency},
            {"gas detector", &bag.gas_detector.explosive_limit},
            {"gas detector ticks", &bag.gas_detector.ticking},
            {"leak-detection solution", &bag.leak_solution.bubble},
            {"voltage tester", &bag.voltage_tester.glow},
            {"gas meter dial", &bag.dial_watch.dial},
            {"stopwatch", &bag.dial_watch.stopwatch},
            {"CO alarm", &bag.co_alarm.display}};
}

} // namespace lightoff::instruments
