// SPDX-License-Identifier: MIT
#pragma once
#include "evidence/visit.hpp"
#include "units/random.hpp"

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

/// A random action out of those that measure, look, switch and wait.
inline bench::Action random_action(std::uint64_t seed, std::uint64_t n) {
    using bench::Verb;
    static const std::vector<Verb> kVerbs{
        Verb::wait,       Verb::leads, Verb::meter, Verb::look,          Verb::manometer_a, Verb::burner_door,
        Verb::disconnect, Verb::leads, Verb::clamp, Verb::blower_door,   Verb::gas_cock,    Verb::door_switch,
        Verb::wait,       Verb::lift,  Verb::seat,  Verb::thermostat_set};
    const auto pick = [&](std::uint64_t stream, std::size_t count) {
        return static_cast<std::size_t>(units::random_bits(seed, stream, n) % count);
    };
    bench::Action action;
    action.verb = kVerbs[pick(11, kVerbs.size())];
    const bench::VerbSpec& spec = bench::spec_of(action.verb);
    const auto word = [&](bench::Word kind, std::uint64_t stream) -> std::int32_t {
        if (kind == bench::Word::seconds)
            return static_cast<std::int32_t>(5 + pick(stream, 40));
        if (kind == bench::Word::temperature)
            return 287000 + static_cast<std::int32_t>(pick(stream, 12)) * 1000;
        const std::vector<bench::Choice> all = bench::choices(reference_site(), kind);
        return all[pick(stream, all.size())].value;
    };
    if (spec.word_count() == 2)
        action.target = static_cast<std::uint16_t>(word(spec.words[0], 12));
    if (spec.word_count() > 0)
        action.value = word(spec.words[spec.word_count() - 1], 13);
    return action;
}

} // namespace lightoff::test
