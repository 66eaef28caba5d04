// SPDX-License-Identifier: MIT
#pragma once
#include "evidence/visit.hpp"
#include "support/random_life.hpp"

/// What people do at a furnace.
namespace lightoff::test {

/// A bit of everything: a thorough round that any of the calls allows. What is refused is passed over.
inline std::vector<std::string> thorough_round() {
    return {"wait 10s",
            "look thermostat",
            "look filter",
            "blower-door off",
            "burner-door off",
            "door-switch on",
            "meter ac-volts",
            "leads board.R board.C",
            "wait 4s",
            "leads board.W board.C",
            "wait 4s",
            "leads board.line board.neutral",
            "wait 4s",
            "manometer-a hose-tee-inducer",
            "disconnect off",
            "disconnect on",
            "door-switch on",
            "leads pressure_switch.out board.C",
            "wait 20s",
            "leads igniter_plug.line igniter_plug.neutral",
            "wait 20s",
            "leads valve.hot valve.common",
            "wait 20s",
            "manometer-a manifold-tap",
            "wait 30s",
            "clamp blower.lead_common",
            "wait 60s",
            "probe-1 supply-duct",
            "probe-2 return-duct",
            "wait 60s",
            "analyser vent-connector",
            "wait 90s"};
}

/// Passes over what is refused.
inline void do_what_is_possible(Visit& visit, const std::vector<std::string>& script) {
    for (const std::string& line : script)
        visit.try_act(bench::parse_action(reference_site(), line));
}

/// Somebody who measures, looks, switches and waits at random.
inline RandomHands measuring_hands(std::uint64_t seed) {
    using bench::Verb;
    return RandomHands(seed, {.longest_wait_s = 45,
                              .verbs = {Verb::wait, Verb::leads, Verb::meter, Verb::look, Verb::manometer_a,
                                        Verb::burner_door, Verb::disconnect, Verb::leads, Verb::clamp,
                                        Verb::blower_door, Verb::gas_cock, Verb::door_switch, Verb::wait,
                                        Verb::lift, Verb::seat, Verb::thermostat_set}});
}

} // namespace lightoff::test
