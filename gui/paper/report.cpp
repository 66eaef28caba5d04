// SPDX-License-Identifier: MIT
#include "bench/action.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/paper/evidence.hpp"
#include "gui/paper/faults_list.hpp"
#include "gui/paper/rulings.hpp"
#include "gui/sheet/figures.hpp"
#include "gui/sheet/pick_list.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::paper {
namespace {

using namespace canvas;
using bench::ReportLine;
using bench::Verb;
using sheet::Column;

struct Form {
    Column& column;
    const view::Known& known;
    ReportView& view;
    view::Wanted& wanted;

    void ask(const bench::Action& action) const {
        wanted.lines.push_back(bench::format_action(*known.site, action));
    }
};

/// What the rating plate says of a line; empty: nothing.
std::string plate_words(const view::Known& known, ReportLine line) {
    const furnace::RatingPlate& plate = known.site->model.rating;
    switch (line) {
    case ReportLine::manifold:
        return "plate: " + sheet::pressure(plate.manifold_pa, 1, known.units);
    case ReportLine::firing_rate:
        return "plate: " + sheet::heat_flow(plate.input_w, known.units);
    case ReportLine::rise:
        return "plate: " + sheet::temperature_rise(plate.rise_low_k, plate.rise_high_k, known.units);
    case ReportLine::external_static:
        return "plate: at most " + sheet::pressure(plate.external_static_pa, 2, known.units);
    case ReportLine::blower_current:
        return "plate: at most " + figure(plate.blower_full_load_a, 1) + " A";
    default:
        return {};
    }
}

/// One box of a line: what is written in it, and a place to press to write the reading that stands ready.
struct Cell {
    std::string head, value, note;
};
Cell cell_of(const Form& form, const std::map<bench::ReportLine, int>& written, ReportLine line,
             const char* head) {
    const auto found = written.find(line);
    if (found == written.end()) {
        const int number = number_of(form.known, form.view.evidence);
        return {head, "–", number == 0 ? "needs a reading" : "press to write " + std::to_string(number)};
    }
    if (found->second <= 0 || static_cast<std::size_t>(found->second) > form.known.readings.size())
        return {head, "–", "no reading"};
    const bench::Reading& reading = form.known.readings[static_cast<std::size_t>(found->second - 1)];
    return {head, sheet::reading_value(form.known, reading), "reading " + std::to_string(found->second)};
}

float cell_height(const Canvas& canvas, const Cell& cell, float wide) {
    const float inside = wide - canvas.px(16);
    return text_size(canvas, cell.head, Type::Minimum, inside).y +
           text_size(canvas, cell.value, Type::Body, inside).y +
           text_size(canvas, cell.note, Type::Minimum, inside).y + canvas.px(10);
}

bool draw_cell(const Canvas& canvas, Rect box, const Cell& cell, const std::string& id) {
    const Theme& theme = *canvas.theme;
    const sheet::Touch touch = sheet::touch(canvas, box, id, cell.head);
    if (touch.hovered)
        fill(canvas, box, theme.panel);
    outline(canvas, box, Line::Rule, touch.hovered ? theme.ink : theme.pencil);
    if (touch.keyboard)
        outline(canvas, box.shrunk(-canvas.px(2)), Line::Outline, theme.ink);
    const float inside = box.width() - canvas.px(16);
    ImVec2 at{box.min.x + canvas.px(8), box.min.y + canvas.px(5)};
    at.y = paragraph(canvas, at, inside, cell.head, Type::Minimum, theme.pencil).max.y;
    at.y = paragraph(canvas, at, inside, cell.value, Type::Body, theme.ink).max.y;
    paragraph(canvas, at, inside, cell.note, Type::Minimum, theme.pencil);
    return touch.pressed;
}

void write(const Form& form, Verb verb, ReportLine line) {
    const int number = number_of(form.known, form.view.evidence);
    form.view.refused = number == 0;
    if (number != 0)
        form.ask({verb, static_cast<std::uint16_t>(line), number});
}

void line_entry(const Form& form, const bench::Choice& choice) {
    Column& column = form.column;
    const Canvas& canvas = column.canvas();
    const auto line = static_cast<ReportLine>(choice.value);
    const Cell found = cell_of(form, form.known.papers.as_found, line, "as found");
    const Cell left = cell_of(form, form.known.papers.as_left, line, "as left");
    const std::string name = for_people(choice.name);
    const std::string plate = plate_words(form.known, line);
    const float gap = std::round(canvas.px(8));
    const bool wide = column.width() >= canvas.px(560);
    const float words_wide = wide ? std::floor(column.width() * 0.36F) : column.width();
    const float cell_wide = std::floor((column.width() - (wide ? words_wide + gap : 0) - gap) / 2);
    const float words_high = text_size(canvas, name, Type::Body, words_wide).y +
                             (plate.empty() ? 0 : text_size(canvas, plate, Type::Minimum, words_wide).y);
    const float cells_high =
        std::round(std::max(cell_height(canvas, found, cell_wide), cell_height(canvas, left, cell_wide)));
    const Rect box =
        column.take(wide ? std::max(words_high, cells_high) : words_high + cells_high + canvas.px(3));
    const Canvas here = column.canvas_for(box);
    ImVec2 at = box.min;
    at.y = paragraph(here, at, words_wide, name, Type::Body, canvas.theme->ink).max.y;
    if (!plate.empty())
        paragraph(here, at, words_wide, plate, Type::Minimum, canvas.theme->pencil);
    const float x = std::round(wide ? box.min.x + words_wide + gap : box.min.x);
    const float y = std::round(wide ? box.min.y : box.min.y + words_high + canvas.px(3));
    if (draw_cell(here, rect_at({x, y}, {cell_wide, cells_high}), found, "found " + choice.name))
        write(form, Verb::as_found, line);
    if (draw_cell(here, rect_at({x + cell_wide + gap, y}, {cell_wide, cells_high}), left,
                  "left " + choice.name))
        write(form, Verb::as_left, line);
    column.gap(10);
}

void conditions(const Form& form) {
    form.column.heading("Conditions found");
    const auto& faults = form.known.site->catalogue.faults;
    if (form.known.papers.found.empty())
        form.column.note("None reported.");
    for (const int fault : form.known.papers.found)
        form.column.words("– " + faults[static_cast<std::size_t>(fault)].title);
    form.column.gap(6);
    if (form.column.button(form.view.open ? "Close the list###conditions"
                                          : "Report a condition###conditions")) {
        form.view.open = !form.view.open;
        form.view.search.clear();
    }
    if (!form.view.open)
        return;
    const std::vector<sheet::Entry> entries = faults_list(form.known, -1);
    if (const auto picked = sheet::pick_list(form.column, "conditions", entries, form.view.search)) {
        form.ask({Verb::found, 0, entries[*picked].value});
        form.view.open = false;
    }
}

} // namespace

void draw_report(const Canvas& canvas, Rect area, const view::Known& known, ReportView& view,
                 view::Wanted& wanted) {
    Column column(canvas, area, "report");
    const Form form{column, known, view, wanted};
    column.title("Tune-up report");
    if (known.scenario->kind != lesson::Kind::tune_up) {
        column.gap(4);
        column.words("This call is no tune-up; no report belongs to it.");
        return;
    }
    column.note("Press a box to write the reading into it. Values as found come before anything is changed.");
    column.gap(4);
    draw_evidence(column, known, view.evidence);
    if (view.refused && known.readings.empty())
        column.words("A value needs a reading behind it; nothing has been read yet.");
    column.gap(4);
    for (const bench::Choice& choice : bench::choices(*known.site, bench::Word::line))
        line_entry(form, choice);
    conditions(form);
}

} // namespace lightoff::paper
