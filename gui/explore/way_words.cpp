// SPDX-License-Identifier: MIT
#include "gui/explore/way_words.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/explore/step_facts.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace lightoff::explore {
namespace {

enum class Tense { now, then };

std::string is(Tense tense) {
    return tense == Tense::now ? "is" : "was";
}

std::string spoken(std::string name) {
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& all, const std::string& last) {
    std::string words;
    for (std::size_t i = 0; i < all.size(); ++i)
        words += (i == 0 ? "" : i + 1 < all.size() ? ", " : " " + last + " ") + all[i];
    return words;
}

std::string quoted(const std::string& title) {
    return "“" + title + "”";
}

/// The gauge at the terminal that the board senses an input by.
std::optional<std::size_t> gauge_of_input(const furnace::Model& model, const bench::Gauges& gauges,
                                          std::size_t input) {
    const control::Board& board = model.board;
    const bool flame = input < board.input_is_flame.size() && board.input_is_flame[input] != 0;
    const std::string place =
        input < board.input_terminals.size() ? "from " + board.input_terminals[input] + " to " : "";
    for (std::size_t i = 0; i < gauges.list().size(); ++i) {
        const bench::Gauge& gauge = gauges.list()[i];
        if (flame ? gauge.name == "flame current" : !place.empty() && gauge.where == place + "board.C")
            return i;
    }
    return {};
}

std::string sensed_words(RunningFurnace& furnace, const bench::WayOn::Sensed& sensed, Tense tense) {
    const control::Board& board = furnace.model().board;
    if (sensed.input == board.self_check_input)
        return std::string("the board's own check ") + (sensed.wanted ? "pass" : "fail") +
               (tense == Tense::then ? "ed"
                : sensed.wanted      ? "es"
                                     : "s");
    std::string measured;
    if (const auto gauge = gauge_of_input(furnace.model(), furnace.gauges(), sensed.input))
        measured = (tense == Tense::now ? "now " : "") +
                   gauge_text(furnace.gauges().list()[*gauge], furnace.timed().readings()[*gauge]);
    const std::string no = sensed.wanted ? "" : "no ";
    if (board.input_is_flame[sensed.input] != 0)
        return (sensed.wanted ? "a " : "no ") + std::string("flame ") + is(tense) + " sensed" +
               (measured.empty() ? "" : " (" + measured + " from the rod)");
    return "there " + is(tense) + " " + no + "24 V at " + board.input_terminals[sensed.input] + " (" +
           spoken(board.input_names[sensed.input]) + (measured.empty() ? "" : ", " + measured) + ")";
}

std::string elsewhere_words(const bench::WayOn::Elsewhere& other, Tense tense) {
    std::vector<std::string> titles;
    std::transform(other.titles.begin(), other.titles.end(), std::back_inserter(titles), quoted);
    return "the " + spoken(other.machine) + " " + is(tense) + (other.in ? " at " : " not at ") +
           listed(titles, "or");
}

std::string counted_words(const bench::WayOn::Counted& counted, Tense tense) {
    return "its count of " + spoken(counted.counter) + " " + is(tense) + " " +
           std::to_string(counted.at_least) + " or more";
}

std::string lasted_words(double after_s, Tense tense) {
    return std::string("this step ") + (tense == Tense::now ? "has" : "had") + " lasted " +
           seconds_text(after_s);
}

std::string conditions_of(RunningFurnace& furnace, const bench::WayOn& way, Tense tense) {
    std::vector<std::string> all;
    for (const bench::WayOn::Sensed& sensed : way.sensed)
        all.push_back(sensed_words(furnace, sensed, tense));
    for (const bench::WayOn::Elsewhere& other : way.elsewhere)
        all.push_back(elsewhere_words(other, tense));
    for (const bench::WayOn::Counted& counted : way.counted)
        all.push_back(counted_words(counted, tense));
    if (way.after_s > 0)
        all.push_back(lasted_words(way.after_s, tense));
    return listed(all, "and");
}

std::string sentence(std::string words) {
    if (words.front() >= 'a' && words.front() <= 'z')
        words.front() = static_cast<char>(words.front() - 'a' + 'A');
    return words + ".";
}

} // namespace

std::string way_on_words(RunningFurnace& furnace, const bench::WayOn& way) {
    const std::string conditions = conditions_of(furnace, way, Tense::now);
    const bool timed_alone = conditions == lasted_words(way.after_s, Tense::now);
    const std::string when = conditions.empty() ? "at once"
                             : timed_alone      ? "when " + conditions + ","
                                                : "if " + conditions + ",";
    return sentence(when + " it goes on to " + quoted(way.leads_to));
}

std::string way_back_words(RunningFurnace& furnace, const bench::WayOn& way) {
    const std::string conditions = conditions_of(furnace, way, Tense::then);
    return sentence(conditions.empty() ? "nothing: it goes on at once" : conditions);
}

std::string seconds_text(double s) {
    constexpr double kLong = 600; // delays of the trade are given in seconds, a lockout is not
    if (s >= kLong)
        return canvas::figure(s / 60, 0) + " min";
    return canvas::figure(s, s < 10 && s != std::floor(s) ? 1 : 0) + " s";
}

} // namespace lightoff::explore
