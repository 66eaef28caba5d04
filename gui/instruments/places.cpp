// SPDX-License-Identifier: MIT
#include "gui/instruments/places.hpp"

#include "bench/offers.hpp"
#include "instruments/spots.hpp"

#include <algorithm>

namespace lightoff::faces {
namespace {

using bench::Verb;
using bench::Word;

/// While hands are busy everything is refused for that: nothing to tell of a place.
std::string why_not(const view::Known& known, const bench::Action& action) {
    if (known.percept.hands.busy != 0)
        return {};
    return known.check(action).reason;
}

/// "board" of "board.R".
std::string part_of(const std::string& name) {
    std::string part = name.substr(0, name.find('.'));
    std::replace(part.begin(), part.end(), '_', ' ');
    return part;
}

bool is_spot(Word word) {
    return word >= Word::pressure_spot && word <= Word::tachometer_spot;
}

std::string words_for(Word word, const bench::Choice& choice) {
    if (!is_spot(word))
        return choice.name;
    return choice.value == bench::kNowhere
               ? "nowhere: take it off"
               : std::string(instruments::spot_row(static_cast<instruments::Spot>(choice.value)).title);
}

} // namespace

std::vector<sheet::Entry> places_of(const view::Known& known, Verb verb, int chosen) {
    const Word word = bench::spec_of(verb).words[0];
    std::vector<sheet::Entry> entries;
    for (const bench::Choice& choice : bench::offered(*known.site, verb, 0)) {
        sheet::Entry entry;
        entry.words = words_for(word, choice);
        entry.also = choice.name;
        entry.note = why_not(known, {verb, 0, choice.value});
        entry.chosen = choice.value == chosen;
        entry.value = choice.value;
        if (word == Word::point)
            entry.group = part_of(choice.name);
        entries.push_back(std::move(entry));
    }
    if (word == Word::point)
        std::stable_sort(entries.begin(), entries.end(),
                         [](const sheet::Entry& a, const sheet::Entry& b) { return a.group < b.group; });
    return entries;
}

std::vector<sheet::Entry> points_of(const view::Known& known, int chosen) {
    return places_of(known, Verb::tester, chosen);
}

std::string line_for(const view::Known& known, Verb verb, int value) {
    return bench::format_action(*known.site, {verb, 0, value});
}

} // namespace lightoff::faces
