// SPDX-License-Identifier: MIT
#include "bench/action.hpp"

#include "bench/access.hpp"
#include "instruments/bag.hpp"
#include "units/convert.hpp"

#include <array>
#include <charconv>
#include <stdexcept>

namespace lightoff::bench {
namespace {

constexpr std::int32_t kMostReading = 999;
constexpr std::int32_t kMostEighths = 40;
constexpr double kMostExpected = 2e6;
constexpr std::string_view kOverloadWord = "OL";

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
    const std::string_view digits = word.substr(word.substr(0, 1) == "+" ? 1 : 0);
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), quantity.number);
    if (error != std::errc{})
        fail(text, "found \"" + std::string(word) + "\" where a number belongs");
    quantity.unit = digits.substr(static_cast<std::size_t>(end - digits.data()));
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
    // A house thermostat's range, 40 to 95 F; its ends too must come back from their text in thousandths.
    if (!(kelvin >= units::fahrenheit_to_k(40.0) - 1e-3 && kelvin <= units::fahrenheit_to_k(95.0) + 1e-3))
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

std::int32_t eighths_of(std::string_view text, std::string_view word) {
    const Quantity q = quantity_of(text, word);
    const double eighths = q.number * 8.0;
    if (!q.unit.empty() || !(eighths >= -kMostEighths && eighths <= kMostEighths) ||
        eighths != static_cast<double>(rounded(eighths)) || eighths == 0.0)
        fail(text, "turns are -5 to 5 in eighths, clockwise is +, as in +0.25; found \"" + std::string(word) +
                       "\"");
    return rounded(eighths);
}

std::int32_t whole_number_of(std::string_view text, std::string_view word, std::int32_t most) {
    const Quantity q = quantity_of(text, word);
    if (!q.unit.empty() || !(q.number >= 0.0 && q.number <= most) ||
        q.number != static_cast<double>(rounded(q.number)))
        fail(text,
             "found \"" + std::string(word) + "\"; allowed: a whole number 0 to " + std::to_string(most));
    return rounded(q.number);
}

std::int32_t thousandths_of(std::string_view text, std::string_view word) {
    if (word == kOverloadWord)
        return kExpectsOverload;
    const Quantity q = quantity_of(text, word);
    if (!q.unit.empty() || !(q.number >= -kMostExpected && q.number <= kMostExpected))
        fail(text, "found \"" + std::string(word) +
                       "\"; allowed: a number without a unit, as it would stand in the window, or OL");
    const double thousandths = q.number * 1000.0;
    return static_cast<std::int32_t>(thousandths < 0.0 ? thousandths - 0.5 : thousandths + 0.5);
}

/// Celsius with three decimals: exact for a whole number of millikelvin.
std::string celsius_text(std::int32_t millikelvin) {
    const std::int32_t mc = millikelvin - 273150;
    const std::int32_t size = mc < 0 ? -mc : mc;
    std::string digits = std::to_string(size % 1000);
    return std::string(mc < 0 ? "-" : "") + std::to_string(size / 1000) + "." +
           std::string(3 - digits.size(), '0') + digits + "C";
}

std::string turns_text(std::int32_t eighths) {
    const std::int32_t size = eighths < 0 ? -eighths : eighths;
    constexpr std::array<std::string_view, 8> kEighths{"",   ".125", ".25", ".375",
                                                       ".5", ".625", ".75", ".875"};
    return std::string(eighths < 0 ? "-" : "+") + std::to_string(size / 8) +
           std::string(kEighths[static_cast<std::size_t>(size % 8)]);
}

std::int32_t place_in(std::size_t index) {
    return static_cast<std::int32_t>(index);
}

std::vector<Choice> named(std::initializer_list<std::string_view> names) {
    std::vector<Choice> all;
    for (const std::string_view name : names)
        all.push_back({std::string(name), place_in(all.size())});
    return all;
}

template <class List, class Name>
std::vector<Choice> listed(const List& list, Name name) {
    std::vector<Choice> all;
    for (std::size_t i = 0; i < list.size(); ++i)
        all.push_back({std::string(name(list[i])), place_in(i)});
    return all;
}

bool has_inducer(const furnace::Model& model) {
    return model.wiring.inducer_motor >= 0;
}

std::vector<Choice> wheels(const furnace::Model& model) {
    std::vector<Choice> all{{"blower", static_cast<std::int32_t>(Wheel::blower)}};
    if (has_inducer(model))
        all.push_back({"inducer", static_cast<std::int32_t>(Wheel::inducer)});
    return all;
}

/// Without an inducer there is no hose that its suction goes through.
bool has_spot(const furnace::Model& model, instruments::Spot spot) {
    using instruments::Spot;
    const bool of_inducer = spot == Spot::hose_tee_inducer || spot == Spot::hose_tee_switch ||
                            spot == Spot::inducer_motor_shell || spot == Spot::inducer_shaft;
    return !of_inducer || has_inducer(model);
}

std::vector<Choice> spots_that_take(const furnace::Model& model, std::uint8_t what) {
    std::vector<Choice> all;
    for (const instruments::SpotRow& row : instruments::spots())
        if ((row.takes & what) != 0 && has_spot(model, row.spot))
            all.push_back({std::string(row.id), static_cast<std::int32_t>(row.spot)});
    all.push_back({"off", kNowhere});
    return all;
}

std::vector<Choice> test_points(const furnace::Model& model) {
    std::vector<Choice> all;
    for (int node = 0; node < model.wiring.netlist.node_count(); ++node)
        if (is_test_point(model, node))
            all.push_back({point_name(model, node), node});
    return all;
}

std::vector<Choice> plugs(const furnace::Model& model) {
    std::vector<Choice> all;
    for (std::size_t i = 0; i < model.places.size(); ++i)
        if (model.places[i].plug)
            all.push_back({model.places[i].part, place_in(i)});
    return all;
}

std::vector<Choice> wires(const furnace::Model& model) {
    std::vector<Choice> all;
    for (const int element : model.wiring.wires)
        all.push_back({model.wiring.netlist.element_names[static_cast<std::size_t>(element)], element});
    return all;
}

std::vector<Choice> blocks() {
    std::vector<Choice> all;
    for (std::int32_t i = 0; i < faults::kGroups; ++i)
        all.push_back({std::string(faults::name_of(static_cast<faults::Group>(i))), i});
    return all;
}

/// "thermometer T1 - T2" as one word: "thermometer-t1-t2".
std::string as_word(const std::string& name) {
    std::string word;
    for (const char c : name) {
        const bool joins = c == ' ' || c == '-';
        if (!joins)
            word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        else if (word.empty() || word.back() != '-')
            word += '-';
    }
    return word;
}

constexpr std::string_view thing(Word word) {
    switch (word) {
    case Word::point:
        return "test point";
    case Word::terminal:
        return "terminal";
    case Word::plug:
        return "plug";
    case Word::wire:
        return "wire";
    case Word::part:
        return "part";
    case Word::fault:
        return "cause";
    case Word::line:
        return "line of the report";
    case Word::block:
        return "block";
    case Word::instrument:
        return "instrument";
    case Word::function:
        return "function of the multimeter";
    default:
        return "place for it";
    }
}

constexpr std::size_t kShortList = 40; ///< a longer one is not read out in an error

std::int32_t choice_of(const Site& site, std::string_view text, Word word, std::string_view found) {
    if (word == Word::point) { // terminals may go by a short name
        const int node = site.model.find_test_point(found);
        if (node >= 0)
            return node;
    }
    const std::vector<Choice> all = choices(site, word);
    std::string allowed;
    for (const Choice& choice : all) {
        if (choice.name == found)
            return choice.value;
        allowed += (allowed.empty() ? "" : ", ") + choice.name;
    }
    if (word == Word::on_off || word == Word::heat_off || word == Word::on_auto)
        fail(text, "found \"" + std::string(found) + "\"; allowed: " + allowed);
    std::string why = "there is no " + std::string(thing(word)) + " \"" + std::string(found) + "\"";
    if (word == Word::point || word == Word::terminal)
        why += "; they are named like board.R, limit.in.lug";
    else if (all.size() <= kShortList)
        why += "; allowed: " + allowed;
    else
        why += "; `lightoff-cli actions` lists them";
    fail(text, why);
}

std::int32_t value_of(const Site& site, std::string_view text, Word word, std::string_view found) {
    switch (word) {
    case Word::seconds:
        return whole_seconds_of(text, found);
    case Word::temperature:
        return millikelvin_of(text, found);
    case Word::turns:
        return eighths_of(text, found);
    case Word::reading:
        return whole_number_of(text, found, kMostReading);
    case Word::step:
        return whole_number_of(text, found, 6);
    case Word::expected:
        return thousandths_of(text, found);
    default:
        return choice_of(site, text, word, found);
    }
}

bool is_in(std::int32_t value, std::size_t count) {
    return value >= 0 && static_cast<std::size_t>(value) < count;
}

bool is_known(const Site& site, Word word, std::int32_t value) {
    const furnace::Model& model = site.model;
    switch (word) {
    case Word::none:
        return true;
    case Word::seconds:
        return value >= 1 && value <= 86400;
    case Word::temperature:
        return value >= 277000 && value <= 309000;
    case Word::turns:
        return value != 0 && value >= -kMostEighths && value <= kMostEighths;
    case Word::reading:
        return value >= 0 && value <= kMostReading;
    case Word::step:
        return value >= 0 && value <= 6;
    case Word::expected:
        return value == kExpectsOverload || (value >= -2000000000 && value <= 2000000000);
    case Word::point:
        return is_in(value, model.wiring.netlist.node_names.size());
    case Word::terminal:
        return is_in(value, model.wiring.terminals.size());
    case Word::part:
        return is_in(value, site.catalogue.parts.size());
    case Word::fault:
        return is_in(value, site.catalogue.faults.size());
    default:
        break;
    }
    for (const Choice& choice : choices(site, word))
        if (choice.value == value)
            return true;
    return false;
}

std::string text_of(const Site& site, Word word, std::int32_t value) {
    switch (word) {
    case Word::none:
        return {};
    case Word::seconds:
        return std::to_string(value) + "s";
    case Word::temperature:
        return celsius_text(value);
    case Word::turns:
        return turns_text(value);
    case Word::reading:
    case Word::step:
        return std::to_string(value);
    case Word::expected:
        return expected_text(value);
    case Word::point:
        return point_name(site.model, value);
    default:
        break;
    }
    for (const Choice& choice : choices(site, word))
        if (choice.value == value)
            return choice.name;
    return "?";
}

} // namespace

std::vector<Choice> choices(const Site& site, Word word) {
    const furnace::Model& model = site.model;
    switch (word) {
    case Word::on_off:
        return {{"on", 1}, {"off", 0}};
    case Word::heat_off:
        return {{"heat", 1}, {"off", 0}};
    case Word::on_auto:
        return {{"on", 1}, {"auto", 0}};
    case Word::point:
        return test_points(model);
    case Word::terminal:
        return listed(model.wiring.terminals, [](const furnace::Terminal& t) { return t.name; });
    case Word::plug:
        return plugs(model);
    case Word::wire:
        return wires(model);
    case Word::part:
        return listed(site.catalogue.parts, [](const faults::Part& p) { return p.id; });
    case Word::fault:
        return listed(site.catalogue.faults, [](const faults::Fault& f) { return f.id; });
    case Word::wheel:
        return wheels(model);
    case Word::function:
        return listed(instruments::functions(), [](const instruments::FunctionRow& row) { return row.id; });
    case Word::pressure_spot:
        return spots_that_take(model, instruments::kTakesPressure);
    case Word::temperature_spot:
        return spots_that_take(model, instruments::kTakesTemperature);
    case Word::flue_spot:
        return spots_that_take(model, instruments::kTakesFlueGas);
    case Word::sniff_spot:
        return spots_that_take(model, instruments::kTakesSniffing);
    case Word::solution_spot:
        return spots_that_take(model, instruments::kTakesSolution);
    case Word::tachometer_spot:
        return spots_that_take(model, instruments::kTakesTachometer);
    case Word::instrument: {
        const instruments::Bag bag;
        std::vector<Choice> all = listed(instruments::displays(bag), [](const auto& d) { return d.name; });
        for (Choice& choice : all)
            choice.name = as_word(choice.name);
        return all;
    }
    case Word::block:
        return blocks();
    case Word::line:
        return named({"line-voltage", "control-voltage", "inlet-static", "inlet-flowing", "manifold",
                      "firing-rate", "rise", "external-static", "draft", "flame-current",
                      "igniter-resistance", "blower-current", "blower-capacitor", "inducer-current", "oxygen",
                      "carbon-monoxide", "ambient-carbon-monoxide"});
    case Word::topic:
        return named({"unsafe", "repaired", "advice", "nothing-wrong"});
    case Word::none:
    case Word::seconds:
    case Word::temperature:
    case Word::turns:
    case Word::reading:
    case Word::step:
    case Word::expected:
        break;
    }
    return {};
}

std::string expected_text(std::int32_t thousandths) {
    if (thousandths == kExpectsOverload)
        return std::string(kOverloadWord);
    const std::int32_t size = thousandths < 0 ? -thousandths : thousandths;
    std::string decimals = std::to_string(size % 1000);
    decimals.insert(0, 3 - decimals.size(), '0');
    decimals.erase(decimals.find_last_not_of('0') + 1);
    return std::string(thousandths < 0 ? "-" : "") + std::to_string(size / 1000) +
           (decimals.empty() ? "" : "." + decimals);
}

bool is_known(const Site& site, const Action& action) {
    const VerbSpec& spec = spec_of(action.verb);
    const std::size_t count = spec.word_count();
    for (std::size_t i = 0; i < count; ++i) {
        const std::int32_t value = i + 1 == count ? action.value : static_cast<std::int32_t>(action.target);
        if (!is_known(site, spec.words[i], value))
            return false;
    }
    return true;
}

std::string format_action(const Site& site, const Action& action) {
    const VerbSpec& spec = spec_of(action.verb);
    std::string text(spec.name);
    const std::size_t count = spec.word_count();
    for (std::size_t i = 0; i < count; ++i) {
        const std::int32_t value = i + 1 == count ? action.value : static_cast<std::int32_t>(action.target);
        text += " " + text_of(site, spec.words[i], value);
    }
    return text;
}

Action parse_action(const Site& site, std::string_view text) {
    const std::vector<std::string_view> words = words_of(text);
    if (words.empty())
        fail(text, "is empty; it must begin with a verb such as thermostat-set");
    const VerbSpec* spec = nullptr;
    std::string known;
    for (const VerbSpec& row : verbs()) {
        known += (known.empty() ? "" : ", ") + std::string(row.name);
        if (row.name == words[0])
            spec = &row;
    }
    if (spec == nullptr)
        fail(text, "there is no verb \"" + std::string(words[0]) + "\"; allowed: " + known);
    const std::size_t count = spec->word_count();
    if (words.size() != count + 1)
        fail(text, "takes " + std::to_string(count) + " argument(s), found " +
                       std::to_string(words.size() - 1) + "; " + std::string(spec->help));
    Action action;
    action.verb = spec->verb;
    for (std::size_t i = 0; i < count; ++i) {
        const std::int32_t value = value_of(site, text, spec->words[i], words[i + 1]);
        if (i + 1 == count)
            action.value = value;
        else
            action.target = static_cast<std::uint16_t>(value);
    }
    if (spec->words[1] == Word::point && action.target == action.value)
        fail(text, "both leads are on the same test point");
    if (spec->words[1] == Word::terminal && action.target == action.value)
        fail(text, "a wire goes back on its own terminal with `seat`");
    return action;
}

} // namespace lightoff::bench
