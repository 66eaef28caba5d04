// SPDX-License-Identifier: MIT
#include "bench/action.hpp"
#include "control/door_chart.hpp"
#include "gui/paper/evidence.hpp"
#include "gui/paper/rulings.hpp"

namespace lightoff::paper {
namespace {

using bench::Verb;
using sheet::Column;

constexpr const char* kReadFirst = "Nothing has been read yet: what is struck out needs a reading beside it.";

/// A sheet being drawn.
struct Form {
    Column& column;
    const view::Known& known;
    SuspectsView& view;
    view::Wanted& wanted;

    void ask(const bench::Action& action) const {
        wanted.lines.push_back(bench::format_action(*known.site, action));
    }
};

/// 0 to 5 steps passed, 6: it runs through. In the words of the chart inside the door.
std::vector<std::string> stops(const view::Known& known) {
    const control::DoorChart chart = control::door_chart(known.site->model.board);
    std::vector<std::string> words{"0\u2007\u2007Before the first: nothing is passed"};
    for (const control::StepRow& step : chart.steps)
        if (step.count <= 5)
            words.push_back(std::to_string(step.count) + "\u2007\u2007After: " + step.step);
    while (words.size() < 6) // a furnace without a counting board
        words.push_back(std::to_string(words.size()) + "\u2007\u2007After step " +
                        std::to_string(words.size()));
    words.emplace_back("6\u2007\u2007Nowhere: it runs through");
    return words;
}

void stopping_step(const Form& form) {
    form.column.heading("Where does the sequence stop?");
    form.column.note("The last step that it passes. State it before you change anything.");
    const std::vector<std::string> words = stops(form.known);
    const std::optional<int> stated = form.known.papers.stops_at;
    for (std::size_t i = 0; i < words.size(); ++i)
        if (form.column.row(words[i], {}, stated == static_cast<int>(i)))
            form.ask({Verb::stops_at, 0, static_cast<std::int32_t>(i)});
}

void strike_note(const Form& form, int reading) {
    form.column.indent(14);
    form.column.note("by " + reading_words(form.known, reading));
    form.column.indent(-14);
}

/// Asks for a strike by the reading that stands ready, or says why not.
void strike(const Form& form, Verb verb, std::size_t what, int mark) {
    const int number = number_of(form.known, form.view.evidence);
    form.view.refused = number == 0 ? mark : -1;
    if (number != 0)
        form.ask({verb, static_cast<std::uint16_t>(what), number});
}

std::string by(const Form& form) {
    const int number = number_of(form.known, form.view.evidence);
    return number == 0 ? "strike" : "strike by " + std::to_string(number);
}

void part_entry(const Form& form, std::size_t index) {
    const faults::Part& part = form.known.site->catalogue.parts[index];
    const auto struck = form.known.papers.struck_parts.find(static_cast<int>(index));
    const bool is_struck = struck != form.known.papers.struck_parts.end();
    const std::string id = "###part" + std::to_string(index);
    const std::vector<std::string> buttons{by(form) + id};
    const int mark = faults::kGroups + static_cast<int>(index);
    if (draw_entry(form.column, part.title, canvas::Type::Body, is_struck, buttons))
        strike(form, Verb::strike_part, index, mark);
    if (is_struck)
        strike_note(form, struck->second);
    if (form.view.refused == mark)
        form.column.note(kReadFirst);
}

void block(const Form& form, std::size_t group) {
    const auto number = static_cast<int>(group);
    const auto& struck = form.known.papers.struck[group];
    const std::string id = std::to_string(group);
    const bool open = form.view.open.count(number) != 0;
    std::vector<std::string> buttons{(open ? "fold parts###parts" : "parts###parts") + id};
    buttons.push_back((struck ? "take back" : by(form)) + "###strike" + id);
    form.column.gap(3);
    const std::string words = std::to_string(number + 1) + "\u2007\u2007" +
                              for_people(faults::name_of(static_cast<faults::Group>(group)));
    const auto pressed = draw_entry(form.column, words, canvas::Type::Heading, struck.has_value(), buttons);
    if (pressed == std::size_t{0}) {
        if (open)
            form.view.open.erase(number);
        else
            form.view.open.insert(number);
    } else if (pressed == std::size_t{1} && struck) {
        form.ask({Verb::unstrike, 0, number});
    } else if (pressed == std::size_t{1}) {
        strike(form, Verb::strike, group, number);
    }
    if (struck)
        strike_note(form, *struck);
    if (form.view.refused == number)
        form.column.note(kReadFirst);
    if (open) {
        form.column.indent(26);
        const auto& parts = form.known.site->catalogue.parts;
        for (std::size_t i = 0; i < parts.size(); ++i)
            if (parts[i].group == static_cast<faults::Group>(group))
                part_entry(form, i);
        form.column.indent(-26);
    }
    form.column.gap(3);
    form.column.rule();
}

/// What was said of readings before they were taken, and how often it came out so.
void expected(const Form& form) {
    int answered = 0;
    int came_true = 0;
    for (const bench::Expectation& one : form.known.expectations) {
        answered += one.reading > 0 ? 1 : 0;
        came_true += one.came_true ? 1 : 0;
    }
    form.column.note(answered == 0
                         ? "Say what a reading will be before it is taken: key E. It earns nothing and costs "
                           "nothing; whoever is wrong has found something out."
                         : "Of " + std::to_string(answered) + " readings that you said beforehand, " +
                               std::to_string(came_true) + " came out so.");
    form.column.gap(6);
}

} // namespace

void draw_suspects(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   SuspectsView& view, view::Wanted& wanted) {
    Column column(canvas, area, "suspects");
    const Form form{column, known, view, wanted};
    column.title("Suspects");
    stopping_step(form);
    form.column.gap(4);
    expected(form);
    column.heading("Strike out what a reading has cleared");
    draw_evidence(column, known, view.evidence);
    for (std::size_t group = 0; group < faults::kGroups; ++group)
        block(form, group);
}

} // namespace lightoff::paper
