// SPDX-License-Identifier: MIT
#include "bench/offers.hpp"
#include "gui/paper/evidence.hpp"
#include "gui/paper/faults_list.hpp"
#include "gui/paper/rulings.hpp"
#include "gui/sheet/pick_list.hpp"

#include <algorithm>

namespace lightoff::paper {
namespace {

using bench::Verb;
using sheet::Column;
using Open = DiagnosisView::Open;

struct Form {
    Column& column;
    const view::Known& known;
    DiagnosisView& view;
    view::Wanted& wanted;

    void ask(const bench::Action& action) const {
        wanted.lines.push_back(bench::format_action(*known.site, action));
    }
    void toggle(Open what) const {
        view.open = view.open == what ? Open::none : what;
        view.search.clear();
    }
};

/// The fault written on a line, and the list to write another.
void fault_line(const Form& form, Verb verb, Open which, const std::optional<int>& written,
                const std::string& prompt) {
    const bool open = form.view.open == which;
    const std::vector<std::string> buttons{(open      ? "close the list"
                                            : written ? "write another"
                                                      : prompt) +
                                           "###" + std::string(bench::spec_of(verb).name)};
    if (draw_entry(form.column,
                   written ? form.known.site->catalogue.faults[static_cast<std::size_t>(*written)].title
                           : "Not named yet.",
                   canvas::Type::Body, false, buttons))
        form.toggle(which);
    if (!open)
        return;
    form.column.indent(14);
    const std::vector<sheet::Entry> entries = faults_list(form.known, written.value_or(-1));
    if (const auto picked =
            sheet::pick_list(form.column, bench::spec_of(verb).name, entries, form.view.search)) {
        form.ask({verb, 0, entries[*picked].value});
        form.view.open = Open::none;
    }
    form.column.indent(-14);
}

/// Parts from the van: fitted, or tagged already.
std::vector<int> parts_with_tags(const view::Known& known) {
    std::vector<int> parts;
    const auto add = [&](int part) {
        if (std::find(parts.begin(), parts.end(), part) == parts.end())
            parts.push_back(part);
    };
    for (const visit::Visit::Done& done : known.done)
        if (done.action.verb == Verb::replace)
            add(done.action.value);
    for (const auto& [part, reading] : known.papers.tags)
        add(part);
    return parts;
}

void tag(const Form& form, int part) {
    const auto written = form.known.papers.tags.find(part);
    const bool is_written = written != form.known.papers.tags.end();
    const int number = number_of(form.known, form.view.evidence);
    const std::string id = std::to_string(part);
    std::vector<std::string> buttons;
    if (number != 0)
        buttons.push_back("condemned by " + std::to_string(number) + "###condemn" + id);
    buttons.push_back("by no reading###none" + id);
    form.column.gap(6);
    const ImVec2 top{form.column.left(), form.column.y()};
    form.column.gap(8);
    form.column.indent(34);
    form.column.narrow(10);
    const auto pressed =
        draw_entry(form.column, form.known.site->catalogue.parts[static_cast<std::size_t>(part)].title,
                   canvas::Type::Body, false, buttons);
    form.column.note(!is_written ? "Which reading condemns the old one?"
                     : written->second == 0
                         ? "Condemned by no reading."
                         : "Condemned by " + reading_words(form.known, written->second) + ".");
    form.column.narrow(-10);
    form.column.indent(-34);
    form.column.gap(8);
    draw_tag(form.column.canvas(), {top, {form.column.right(), form.column.y()}});
    form.column.gap(4);
    if (pressed)
        form.ask({Verb::tag, static_cast<std::uint16_t>(part), *pressed + 1 == buttons.size() ? 0 : number});
}

void tags(const Form& form) {
    form.column.heading("Tags of parts from the van");
    draw_evidence(form.column, form.known, form.view.evidence);
    const std::vector<int> parts = parts_with_tags(form.known);
    if (parts.empty())
        form.column.note("No part has been taken from the van.");
    for (const int part : parts)
        tag(form, part);
    form.column.gap(6);
    const bool open = form.view.open == Open::tag;
    if (form.column.button(open ? "Close the list of parts###parts"
                                : "Tag a part before it is fitted###parts"))
        form.toggle(Open::tag);
    if (!open)
        return;
    std::vector<sheet::Entry> entries;
    for (const bench::Choice& choice : bench::offered(*form.known.site, Verb::replace, 0)) {
        const faults::Part& part = form.known.site->catalogue.parts[static_cast<std::size_t>(choice.value)];
        entries.push_back(
            {part.title, choice.name, {}, for_people(faults::name_of(part.group)), false, choice.value});
    }
    std::stable_sort(entries.begin(), entries.end(), [&](const sheet::Entry& a, const sheet::Entry& b) {
        const auto& all = form.known.site->catalogue.parts;
        return all[static_cast<std::size_t>(a.value)].group < all[static_cast<std::size_t>(b.value)].group;
    });
    if (const auto picked = sheet::pick_list(form.column, "parts", entries, form.view.search)) {
        form.ask({Verb::tag, static_cast<std::uint16_t>(entries[*picked].value),
                  number_of(form.known, form.view.evidence)});
        form.view.open = Open::none;
    }
}

} // namespace

void draw_diagnosis(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                    DiagnosisView& view, view::Wanted& wanted) {
    Column column(canvas, area, "diagnosis");
    const Form form{column, known, view, wanted};
    column.title("Diagnosis");
    column.heading("The cause");
    fault_line(form, Verb::cause, Open::cause, known.papers.cause, "name it");
    column.heading("What brought it about");
    column.note("Only where something did: a fuse melts for a reason.");
    fault_line(form, Verb::cause_behind, Open::cause_behind, known.papers.cause_behind, "name it");
    tags(form);
}

} // namespace lightoff::paper
