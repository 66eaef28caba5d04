// SPDX-License-Identifier: MIT
#include "gui/paper/evidence.hpp"

#include "gui/sheet/figures.hpp"
#include "gui/sheet/pick_list.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>

namespace lightoff::paper {
namespace {

/// What it was taken with and where.
std::string origin_of(const view::Known& known, const bench::Reading& reading) {
    const std::string source = visit::source_text(*known.site, reading);
    if (reading.window < 0)
        return source + ", looked at";
    return source + ", " + visit::place_text(reading) + (reading.taken == bench::Taken::kept ? ", kept" : "");
}

/// ", expected 24: it came out so"; empty if nothing was said beforehand.
std::string expected_words(const view::Known& known, int number) {
    for (const bench::Expectation& one : known.expectations)
        if (one.reading == number)
            return ", expected " + bench::expected_text(one.value) +
                   (one.came_true ? ": it came out so" : ": it did not");
    return {};
}

bool came_by_itself(const bench::Reading& reading) {
    return reading.taken == bench::Taken::settled;
}

/// A probe that is left in fills the list by itself: all readings, or without those.
void choose_which(sheet::Column& column, const view::Known& known, ReadingList& list) {
    const auto all = known.readings.size();
    const auto by_itself =
        static_cast<std::size_t>(std::count_if(known.readings.begin(), known.readings.end(), came_by_itself));
    if (all <= sheet::kSeenAtAGlance || by_itself == 0 || by_itself == all) {
        list.kept_only = false;
        return;
    }
    column.gap(6);
    const std::array<std::string, 2> words{"All " + std::to_string(all) + "###all",
                                           "Kept or looked at " + std::to_string(all - by_itself) +
                                               "###kept"};
    if (const auto pressed = column.buttons(words, list.kept_only ? 1 : 0))
        list.kept_only = *pressed == 1;
}

} // namespace

int number_of(const view::Known& known, const Evidence& evidence) {
    const auto last = static_cast<int>(known.readings.size());
    return evidence.picked > 0 && evidence.picked <= last ? evidence.picked : last;
}

std::string reading_words(const view::Known& known, int number) {
    if (number <= 0 || static_cast<std::size_t>(number) > known.readings.size())
        return "no reading";
    const bench::Reading& reading = known.readings[static_cast<std::size_t>(number - 1)];
    const std::string value = sheet::reading_value(known, reading);
    const std::string what = "reading " + std::to_string(number) + ": ";
    return reading.window < 0 ? what + visit::source_text(*known.site, reading) + " – " + value
                              : what + value + " – " + origin_of(known, reading);
}

int pick_reading(sheet::Column& column, const view::Known& known, int chosen, ReadingList& list) {
    choose_which(column, known, list);
    std::vector<sheet::Entry> entries;
    for (std::size_t i = known.readings.size(); i-- > 0;) {
        const bench::Reading& reading = known.readings[i];
        if (list.kept_only && came_by_itself(reading))
            continue;
        sheet::Entry entry;
        entry.value = static_cast<int>(i) + 1;
        entry.words = std::to_string(entry.value) + "\u2007\u2007" + sheet::reading_value(known, reading);
        entry.note = visit::clock_text(reading.tick - known.arrived_tick) + ", " + origin_of(known, reading) +
                     expected_words(known, entry.value);
        entry.also = entry.note;
        entry.chosen = entry.value == chosen;
        entries.push_back(std::move(entry));
    }
    const auto picked = sheet::pick_list(column, "readings", entries, list.search);
    return picked ? entries[*picked].value : 0;
}

void draw_evidence(sheet::Column& column, const view::Known& known, Evidence& evidence) {
    const int number = number_of(known, evidence);
    if (number == 0) {
        column.words("Nothing has been read yet.");
        column.note(
            "Readings come from the instruments, by themselves once a number stands, and from close looks.");
        column.gap(6);
        return;
    }
    const bool last = static_cast<std::size_t>(number) == known.readings.size();
    const std::string words = "By " + reading_words(known, number) + "###evidence";
    if (column.row(words, evidence.open ? "press to close the list"
                          : last        ? "the last one; press for another"
                                        : "press for another"))
        evidence.open = !evidence.open;
    if (evidence.open) {
        column.indent(16);
        if (const int picked = pick_reading(column, known, number, evidence.list); picked != 0) {
            evidence.picked = picked;
            evidence.open = false;
        }
        column.indent(-16);
    }
    column.gap(6);
}

} // namespace lightoff::paper
