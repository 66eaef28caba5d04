// SPDX-License-Identifier: MIT
#include "bench/inverse.hpp"

namespace lightoff::bench {
namespace {

using instruments::Spot;

/// Where a hose, probe or tip was before: kNowhere if it hung in the room or was put away.
std::int32_t spot_before(Spot spot, bool on) {
    return on && spot != Spot::room ? static_cast<std::int32_t>(spot) : kNowhere;
}

} // namespace

std::optional<Action> inverse_of(const Action& done, const Percept& before) {
    const auto only = [](Verb verb) { return Action{verb, 0, 0}; };
    const auto same_thing = [&](Verb verb) { return Action{verb, done.target, done.value}; };
    const auto with = [&](std::int32_t value) { return Action{done.verb, done.target, value}; };
    const Instruments& tools = before.instruments;
    switch (done.verb) {
    case Verb::thermostat_set:
        return with(static_cast<std::int32_t>(before.left_as.set_point_k * 1000.0 + 0.5));
    case Verb::thermostat_mode:
        return with(before.left_as.thermostat_mode == control::ThermostatMode::heat ? 1 : 0);
    case Verb::thermostat_fan:
        return with(before.left_as.thermostat_fan == control::FanSwitch::on ? 1 : 0);
    case Verb::breaker:
    case Verb::disconnect:
    case Verb::gas_cock:
    case Verb::burner_door:
    case Verb::blower_door:
    case Verb::door_switch:
    case Verb::filter:
    case Verb::tape:
    case Verb::wattmeter:
    case Verb::stopwatch:
    case Verb::appliances:
        return with(done.value == 0 ? 1 : 0);
    case Verb::take_off:
        return same_thing(Verb::put_back);
    case Verb::put_back:
        return same_thing(Verb::take_off);
    case Verb::lift:
        return same_thing(Verb::seat);
    case Verb::seat:
        return same_thing(Verb::lift);
    case Verb::unplug:
        return same_thing(Verb::plug_in);
    case Verb::plug_in:
        return same_thing(Verb::unplug);
    case Verb::land:
        return Action{Verb::seat, 0, done.target};
    case Verb::adjust:
        return with(-done.value);
    case Verb::leads:
    case Verb::leads_off:
        if (tools.multimeter.red == tools.multimeter.black)
            return done.verb == Verb::leads ? std::optional(only(Verb::leads_off)) : std::nullopt;
        return Action{Verb::leads, static_cast<std::uint16_t>(tools.multimeter.red), tools.multimeter.black};
    case Verb::meter:
        return with(static_cast<std::int32_t>(tools.multimeter.function));
    case Verb::clamp:
        return only(Verb::clamp_off);
    case Verb::clamp_off:
        return Action{Verb::clamp, 0, tools.clamp.element};
    case Verb::jumper:
        return only(Verb::jumper_off);
    case Verb::small_breaker:
        return only(Verb::small_breaker_off);
    case Verb::manometer_a:
        return with(spot_before(tools.manometer.plus, tools.manometer.on != 0));
    case Verb::manometer_b:
        return with(spot_before(tools.manometer.minus, tools.manometer.on != 0));
    case Verb::probe_1:
        return with(spot_before(tools.thermometer.probe_1, tools.thermometer.on != 0));
    case Verb::probe_2:
        return with(spot_before(tools.thermometer.probe_2, tools.thermometer.on != 0));
    case Verb::analyser:
        return with(spot_before(tools.analyser.probe, tools.analyser.on != 0));
    case Verb::sniff:
        return with(spot_before(tools.gas_detector.tip, tools.gas_detector.on != 0));
    case Verb::bubbles:
        return with(spot_before(tools.leak_solution.joint, tools.leak_solution.on != 0));
    case Verb::tachometer:
        return with(spot_before(tools.tachometer.target, tools.tachometer.on != 0));
    case Verb::strike:
        return Action{Verb::unstrike, 0, done.target};
    default:
        return std::nullopt;
    }
}

} // namespace lightoff::bench
