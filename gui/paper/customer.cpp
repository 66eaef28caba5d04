// SPDX-License-Identifier: MIT
#include "bench/action.hpp"
#include "gui/paper/evidence.hpp"
#include "gui/paper/rulings.hpp"
#include "gui/paper/still_open.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>

namespace lightoff::paper {
namespace {

using bench::Verb;
using sheet::Column;

/// In the order of bench::Topic.
constexpr std::array<const char*, 4> kTold{"It is not safe to run.", "It is repaired and runs as it should.",
                                           "What I advise you to have done.",
                                           "I found nothing wrong with it."};

std::string fault_title(const view::Known& known, const std::optional<int>& fault) {
    return fault ? known.site->catalogue.faults[static_cast<std::size_t>(*fault)].title : "–";
}

std::string parts_fitted(const view::Known& known) {
    std::string words;
    for (const visit::Visit::Done& done : known.done)
        if (done.action.verb == Verb::replace)
            words += (words.empty() ? "" : ", ") +
                     known.site->catalogue.parts[static_cast<std::size_t>(done.action.value)].title;
    return words.empty() ? "none" : words;
}

void found_and_done(Column& column, const view::Known& known) {
    column.gap(6);
    column.field("Called for", capitalised(visit::kind_text(known.scenario->kind)));
    if (known.scenario->kind == lesson::Kind::tune_up) {
        const auto& faults = known.site->catalogue.faults;
        for (const int fault : known.papers.found)
            column.field("Found", faults[static_cast<std::size_t>(fault)].title);
        if (known.papers.found.empty())
            column.field("Found", "–");
    } else {
        column.field("What was wrong", fault_title(known, known.papers.cause));
        if (known.papers.cause_behind)
            column.field("Brought about by", fault_title(known, known.papers.cause_behind));
    }
    column.field("Parts fitted", parts_fitted(known));
    column.field("Readings taken", std::to_string(known.readings.size()));
    if (known.percept.worked.tagged)
        column.field("Left", "shut off, with a tag on it");
}

/// Since arrival, of the last time that it was told.
std::string told_at(const view::Known& known, std::size_t topic) {
    std::string clock;
    for (const visit::Visit::Done& done : known.done)
        if (done.action.verb == Verb::tell && done.action.value == static_cast<std::int32_t>(topic))
            clock = visit::clock_text(done.tick - known.arrived_tick);
    return clock;
}

void tell(Column& column, const view::Known& known, view::Wanted& wanted) {
    column.heading("Tell the customer");
    column.note("Each takes a minute, and is written down.");
    for (std::size_t i = 0; i < kTold.size(); ++i) {
        const bool told = (known.percept.worked.told >> i & 1U) != 0;
        if (column.row(kTold[i], told ? "told at " + told_at(known, i) : "", told))
            wanted.lines.push_back(
                bench::format_action(*known.site, {Verb::tell, 0, static_cast<std::int32_t>(i)}));
    }
}

void sign(Column& column, const view::Known& known, CustomerView& view, view::Wanted& wanted) {
    column.heading("Signature");
    if (known.percept.worked.signed_off) {
        column.words("Signed.", canvas::Type::Heading);
        return;
    }
    if (!view.asked) {
        view.asked = column.button("Sign the work order");
        return;
    }
    const std::vector<std::string> open = still_open(known);
    column.words(open.empty() ? "Nothing is open as far as you can see. Once signed, the call is over."
                              : "Once signed, the call is over. Still open:");
    for (const std::string& words : open)
        column.words("– " + words);
    column.gap(6);
    const std::array<std::string, 2> buttons{"Not yet", "Sign it and leave"};
    const auto pressed = column.buttons(buttons);
    if (pressed)
        view.asked = false;
    if (pressed == std::size_t{1})
        wanted.lines.push_back(bench::format_action(*known.site, {Verb::sign_off, 0, 0}));
}

} // namespace

void draw_customer(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   CustomerView& view, view::Wanted& wanted) {
    Column column(canvas, area, "customer");
    column.note("Customer's copy");
    column.title(known.scenario->title);
    found_and_done(column, known);
    tell(column, known, wanted);
    sign(column, known, view, wanted);
}

} // namespace lightoff::paper
