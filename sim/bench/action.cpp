// SPDX-License-Identifier: MIT
#include "bench/action.hpp"

#include "units/convert.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace lightoff::bench {
namespace {

constexpr std::int32_t seconds(int s) {
    return s * 20;
}

constexpr std::array kVerbs{
    VerbSpec{Verb::wait, "wait", Argument::seconds, 0, "let time pass: wait 30s"},
    VerbSpec{Verb::thermostat_set, "thermostat-set", Argument::temperature, seconds(2),
             "turn the set point: thermostat-set 72F"},
    VerbSpec{Verb::thermostat_mode, "thermostat-mode", Argument::heat_off, seconds(2),
             "thermostat-mode heat, thermostat-mode off"},
    VerbSpec{Verb::thermostat_fan, "thermostat-fan", Argument::on_auto, seconds(2),
             "thermostat-fan on, thermostat-fan auto"},
    VerbSpec{Verb::breaker, "breaker", Argument::on_off, seconds(5), "breaker on, breaker off"},
    VerbSpec{Verb::disconnect, "disconnect", Argument::on_off, seconds(1), "disconnect on, disconnect off"},
    VerbSpec{Verb::gas_cock, "gas-cock", Argument::on_off, seconds(2), "gas-cock on, gas-cock off"},
    VerbSpec{Verb::burner_door, "burner-door", Argument::on_off, seconds(5),
             "burner-door on, burner-door off"},
    VerbSpec{Verb::blower_door, "blower-door", Argument::on_off, seconds(5),
             "blower-door on, blower-door off"},
    VerbSpec{Verb::door_switch, "door-switch", Argument::on_off, seconds(1),
             "hold the door switch in: door-switch on; let go: door-switch off"},
    VerbSpec{Verb::filter, "filter", Argument::on_off, seconds(10),
             "filter on (in its rack), filter off (out)"},
    VerbSpec{Verb::leads, "leads", Argument::two_points, seconds(4),
             "voltmeter: red lead, then black: leads board.R board.C"},
    VerbSpec{Verb::leads_off, "leads-off", Argument::none, seconds(2), "take the voltmeter's leads off"},
};

[[noreturn]] void fail(std::string_view text, const std::string& why) {
    throw std::invalid_argument("action \"" + std::string(text) + "\": " + why);
}

std::vector<std::string_view> words_of(std::string_view text) {
    std::vector<std::string_view> words;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t start = text.find_first_not_of(" \t", i);
        if (start == std::string_view::npos)
            break;
        const std::size_t end = std::min(text.find_first_of(" \t", start), text.size());
        words.push_back(text.substr(start, end - start));
        i = end;
    }
    return words;
}

struct Quantity {
    double number = 0.0;
    std::string_view unit;
};

Quantity quantity_of(std::string_view text, std::string_view word) {
    Quantity quantity;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), quantity.number);
    if (error != std::errc{})
        fail(text, "found \"" + std::string(word) + "\" where a number with its unit belongs");
    quantity.unit = word.substr(static_cast<std::size_t>(end - word.data()));
    return quantity;
}

std::int32_t rounded(double x) {
    return static_cast<std::int32_t>(x < 0.0 ? x - 0.5 : x + 0.5);
}

std::int32_t millikelvin_of(std::string_view text, std::string_view word) {
    const Quantity q = quantity_of(text, word);
    double kelvin = 0.0;
    if (q.unit == "F")
        kelvin = units::fahrenheit_to_k(q.number);
    else if (q.unit == "C")
        kelvin = units::celsius_to_k(q.number);
    else
        fail(text, "the temperature needs its unit, F or C, as in 70F");
    // A house thermostat's range, 40 to 95 F.
    if (!(kelvin >= units::fahrenheit_to_k(40.0) - 1e-9 && kelvin <= units::fahrenheit_to_k(95.0) + 1e-9))
        fail(text, "the set point must be 40F to 95F (4.4C to 35C)");
    return rounded(kelvin * 1000.0);
}

std::int32_t whole_seconds_of(std::string_view text, std::string_view word) {
    const Quantity q = quantity_of(text, word);
    double factor = 0.0;
    if (q.unit == "s")
        factor = 1.0;
    else if (q.unit == "min")
        factor = 60.0;
    else if (q.unit == "h")
        factor = 3600.0;
    else
        fail(text, "the time needs its unit: s, min or h, as in 30s");
    const double s = q.number * factor;
    if (!(s >= 1.0 && s <= 86400.0))
        fail(text, "the time must be 1 s to 24 h");
    return rounded(s);
}

std::int32_t choice_of(std::string_view text, std::string_view word, std::string_view off,
                       std::string_view on) {
    if (word == on)
        return 1;
    if (word == off)
        return 0;
    fail(text, "found \"" + std::string(word) + "\"; allowed: " + std::string(on) + ", " + std::string(off));
}

std::uint16_t point_of(const furnace::Model& model, std::string_view text, std::string_view word) {
    const int node = model.find_test_point(word);
    if (node < 0)
        fail(text, "there is no test point \"" + std::string(word) +
                       "\"; they are named like board.R, limit.in.lug");
    return static_cast<std::uint16_t>(node);
}

/// Celsius with three decimals: exact for a whole number of millikelvin.
std::string celsius_text(std::int32_t millikelvin) {
    const std::int32_t mc = millikelvin - 273150;
    const std::int32_t size = mc < 0 ? -mc : mc;
    std::string digits = std::to_string(size % 1000);
    return std::string(mc < 0 ? "-" : "") + std::to_string(size / 1000) + "." +
           std::string(3 - digits.size(), '0') + digits + "C";
}

} // namespace

std::span<const VerbSpec> verbs() {
    return kVerbs;
}

const VerbSpec& spec_of(Verb verb) {
    for (const VerbSpec& spec : kVerbs)
        if (spec.verb == verb)
            return spec;
    throw std::invalid_argument("no verb has the number " + std::to_string(static_cast<int>(verb)));
}

std::string format_action(const Site& site, const Action& action) {
    const furnace::Model& model = site.model;
    const VerbSpec& spec = spec_of(action.verb);
    std::string name(spec.name);
    switch (spec.argument) {
    case Argument::none:
        return name;
    case Argument::seconds:
        return name + " " + std::to_string(action.value) + "s";
    case Argument::temperature:
        return name + " " + celsius_text(action.value);
    case Argument::on_off:
        return name + (action.value != 0 ? " on" : " off");
    case Argument::heat_off:
        return name + (action.value != 0 ? " heat" : " off");
    case Argument::on_auto:
        return name + (action.value != 0 ? " on" : " auto");
    case Argument::two_points:
        return name + " " + model.test_point_name(action.target) + " " + model.test_point_name(action.value);
    }
    return name;
}

Action parse_action(const Site& site, std::string_view text) {
    const furnace::Model& model = site.model;
    const std::vector<std::string_view> words = words_of(text);
    if (words.empty())
        fail(text, "is empty; it must begin with a verb such as thermostat-set");
    const VerbSpec* spec = nullptr;
    for (const VerbSpec& row : kVerbs)
        if (row.name == words[0])
            spec = &row;
    if (spec == nullptr) {
        std::string known;
        for (const VerbSpec& row : kVerbs)
            known += (known.empty() ? "" : ", ") + std::string(row.name);
        fail(text, "there is no verb \"" + std::string(words[0]) + "\"; allowed: " + known);
    }
    const std::size_t wanted = spec->argument == Argument::none         ? 0
                               : spec->argument == Argument::two_points ? 2
                                                                        : 1;
    if (words.size() != wanted + 1)
        fail(text, "takes " + std::to_string(wanted) + " argument(s), found " +
                       std::to_string(words.size() - 1) + "; " + std::string(spec->help));
    Action action;
    action.verb = spec->verb;
    switch (spec->argument) {
    case Argument::none:
        break;
    case Argument::seconds:
        action.value = whole_seconds_of(text, words[1]);
        break;
    case Argument::temperature:
        action.value = millikelvin_of(text, words[1]);
        break;
    case Argument::on_off:
        action.value = choice_of(text, words[1], "off", "on");
        break;
    case Argument::heat_off:
        action.value = choice_of(text, words[1], "off", "heat");
        break;
    case Argument::on_auto:
        action.value = choice_of(text, words[1], "auto", "on");
        break;
    case Argument::two_points:
        action.target = point_of(model, text, words[1]);
        action.value = point_of(model, text, words[2]);
        if (action.value == action.target)
            fail(text, "both leads are on the same test point");
        break;
    }
    return action;
}

} // namespace lightoff::bench
