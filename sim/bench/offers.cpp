// SPDX-License-Identifier: MIT
#include "bench/offers.hpp"

#include "bench/wires_by_hand.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::bench {
namespace {

bool makes_sense(const Site& site, Verb verb, const Choice& part) {
    if (verb == Verb::discharge)
        return capacitor_of(site.model, part.name) >= 0;
    if (verb == Verb::test_old)
        return site.catalogue.parts[static_cast<std::size_t>(part.value)].bench_test.ticks > 0;
    const auto kind = service_of(verb);
    if (!kind)
        return true;
    const faults::Service* service = site.catalogue.find_service({part.value, *kind});
    const bool by_turns =
        *kind == faults::ServiceKind::adjust && service != nullptr && service->per_turn != 0.0;
    return service != nullptr && (verb != Verb::adjust || by_turns) && (verb != Verb::set_right || !by_turns);
}

} // namespace

std::vector<VerbGroup> verb_groups() {
    std::vector<VerbGroup> groups{
        {"Time and eyes", {Verb::wait, Verb::look}},
        {"Thermostat", {Verb::thermostat_set, Verb::thermostat_mode, Verb::thermostat_fan}},
        {"Doors, power, gas",
         {Verb::burner_door, Verb::blower_door, Verb::door_switch, Verb::tape, Verb::disconnect,
          Verb::breaker, Verb::gas_cock, Verb::appliances, Verb::filter}},
        {"Multimeter", {Verb::meter, Verb::leads, Verb::leads_off, Verb::meter_fuses}},
        {"Other instruments",
         {Verb::keep, Verb::manometer_a, Verb::manometer_b, Verb::zero, Verb::probe_1, Verb::probe_2,
          Verb::clamp, Verb::clamp_off, Verb::analyser, Verb::sniff, Verb::bubbles, Verb::tester,
          Verb::tachometer, Verb::wattmeter, Verb::stopwatch}},
        {"Wires",
         {Verb::lift, Verb::seat, Verb::land, Verb::unplug, Verb::plug_in, Verb::jumper, Verb::jumper_off,
          Verb::small_breaker, Verb::small_breaker_off, Verb::small_breaker_reset}},
        {"Parts",
         {Verb::take_off, Verb::put_back, Verb::clean, Verb::tighten, Verb::adjust, Verb::set_right,
          Verb::reset, Verb::replace, Verb::test_old, Verb::spin, Verb::discharge}},
        {"Suspects sheet",
         {Verb::stops_at, Verb::expect, Verb::strike, Verb::strike_part, Verb::unstrike, Verb::tag,
          Verb::cause, Verb::cause_behind}},
        {"Tune-up report", {Verb::as_found, Verb::as_left, Verb::found}},
        {"Customer and end", {Verb::tell, Verb::shut_off, Verb::sign_off}}};
    VerbGroup more{"More", {}};
    for (const VerbSpec& spec : verbs()) {
        const bool grouped = std::any_of(groups.begin(), groups.end(), [&](const VerbGroup& group) {
            return std::find(group.verbs.begin(), group.verbs.end(), spec.verb) != group.verbs.end();
        });
        if (!grouped)
            more.verbs.push_back(spec.verb);
    }
    if (!more.verbs.empty())
        groups.push_back(std::move(more));
    return groups;
}

std::vector<Choice> offered(const Site& site, Verb verb, std::size_t word) {
    const VerbSpec& spec = spec_of(verb);
    if (word >= spec.word_count())
        return {};
    std::vector<Choice> all = choices(site, spec.words[word]);
    if (spec.words[word] == Word::part)
        all.erase(std::remove_if(all.begin(), all.end(),
                                 [&](const Choice& part) { return !makes_sense(site, verb, part); }),
                  all.end());
    return all;
}

bool takes_its_own_time(Verb verb) {
    return verb == Verb::look || verb == Verb::test_old || service_of(verb).has_value();
}

std::string_view range_of(Word word) {
    switch (word) {
    case Word::seconds:
        return "1 s to 24 h, as 30s, 5min or 1h";
    case Word::temperature:
        return "40 F to 95 F, as 70F or 21C";
    case Word::turns:
        return "-5 to +5 turns in eighths, clockwise is +, as +0.25";
    case Word::reading:
        return "number of a reading, 0 for none";
    case Word::step:
        return "0 to 5 steps passed, 6 if it runs through";
    case Word::expected:
        return "a number as it would stand in the window, as 24 or -0.95, or OL; in V, A (uA on that "
               "function), ohm, uF, in. w.c., F";
    default:
        return {};
    }
}

std::string_view placeholder(Word word) {
    switch (word) {
    case Word::none:
        return {};
    case Word::seconds:
        return "TIME";
    case Word::temperature:
        return "TEMPERATURE";
    case Word::on_off:
        return "on|off";
    case Word::heat_off:
        return "heat|off";
    case Word::on_auto:
        return "on|auto";
    case Word::point:
        return "POINT";
    case Word::terminal:
        return "TERMINAL";
    case Word::plug:
        return "PLUG";
    case Word::wire:
        return "WIRE";
    case Word::part:
        return "PART";
    case Word::turns:
        return "TURNS";
    case Word::wheel:
        return "blower|inducer";
    case Word::function:
        return "FUNCTION";
    case Word::pressure_spot:
    case Word::temperature_spot:
    case Word::flue_spot:
    case Word::sniff_spot:
    case Word::solution_spot:
    case Word::tachometer_spot:
        return "PLACE";
    case Word::instrument:
        return "INSTRUMENT";
    case Word::reading:
        return "READING";
    case Word::step:
        return "STEPS";
    case Word::block:
        return "BLOCK";
    case Word::fault:
        return "CAUSE";
    case Word::line:
        return "LINE";
    case Word::topic:
        return "TOPIC";
    case Word::expected:
        return "NUMBER";
    }
    return {};
}

std::string pattern_of(const VerbSpec& spec) {
    std::string pattern(spec.name);
    for (std::size_t i = 0; i < spec.word_count(); ++i)
        pattern += " " + std::string(placeholder(spec.words[i]));
    return pattern;
}

} // namespace lightoff::bench
