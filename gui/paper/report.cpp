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

/// One box of a line: what is written in it, or what pressing it writes.
struct Cell {
    std::string words;
    bool written = false;
};
Cell cell_of(const Form& form, const std::map<bench::ReportLine, int>& all, ReportLine line,
             const std::string& before) {
    const auto entry = all.find(line);
    if (entry == all.end()) {
        const int number = number_of(form.known, form.view.evidence);
        return {before + (number == 0 ? "needs a reading" : "write " + std::to_string(number)), false};
    }
    if (entry->second <= 0 || static_cast<std::size_t>(entry->second) > form.known.readings.size())
        return {before + "no reading", true};
    const bench::Reading& reading = form.known.readings[static_cast<std::size_t>(entry->second - 1)];
    return {before + sheet::reading_value(form.known, reading) + " (" + std::to_string(entry->second) + ")",
            true};
}

Type type_of(const Cell& cell) {
    return cell.written ? Type::Body : Type::Secondary;
}

float cell_height(const Canvas& canvas, const Cell& cell, float wide) {
    const float words = text_size(canvas, cell.words, type_of(cell), wide - canvas.px(16)).y;
    return std::max(24.0F, std::max(words, line_height(canvas, Type::Body)) + canvas.px(10));
}

bool draw_cell(const Canvas& canvas, Rect box, const Cell& cell, const std::string& id) {
    const Theme& theme = *canvas.theme;
    const sheet::Touch touch = sheet::touch(canvas, box, id, cell.words);
    if (touch.hovered)
        fill(canvas, box, theme.panel);
    outline(canvas, box, Line::Rule, touch.hovered ? theme.ink : theme.pencil);
    if (touch.keyboard)
        outline(canvas, box.shrunk(-canvas.px(2)), Line::Outline, theme.ink);
    const float inside = box.width() - canvas.px(16);
    const float high = text_size(canvas, cell.words, type_of(cell), inside).y;
    paragraph(canvas, {box.min.x + canvas.px(8), box.centre().y - high / 2}, inside, cell.words,
              type_of(cell), cell.written ? theme.ink : theme.pencil);
    return touch.pressed;
}

void write(const Form& form, Verb verb, ReportLine line) {
    const int number = number_of(form.known, form.view.evidence);
    form.view.refused = number == 0;
    if (number != 0)
        form.ask({verb, static_cast<std::uint16_t>(line), number});
}

/// Where the boxes of a line stand: beside its name where there is room, else below it.
struct Columns {
    bool beside = false;
    float gap = 0, name = 0, cell = 0, first = 0, second = 0;
};
Columns columns_of(const Column& column) {
    Columns at;
    at.beside = column.width() >= column.px(480);
    at.gap = std::round(column.px(8));
    at.name = at.beside ? std::floor(column.width() * 0.36F) : column.width();
    at.cell = std::floor((column.width() - (at.beside ? at.name + at.gap : 0) - at.gap) / 2);
    at.first = std::round(at.beside ? column.left() + at.name + at.gap : column.left());
    at.second = at.first + at.cell + at.gap;
    return at;
}

void heads(Column& column) {
    const Columns at = columns_of(column);
    if (!at.beside)
        return;
    const Rect row = column.take(line_height(column.canvas(), Type::Secondary) + column.px(4));
    const Canvas here = column.canvas_for(row);
    text(here, {at.first, row.min.y}, "as found", Type::Secondary, here.theme->pencil);
    text(here, {at.second, row.min.y}, "as left", Type::Secondary, here.theme->pencil);
}

void line_entry(const Form& form, const bench::Choice& choice) {
    Column& column = form.column;
    const Canvas& canvas = column.canvas();
    const Columns at = columns_of(column);
    const auto line = static_cast<ReportLine>(choice.value);
    const Cell found = cell_of(form, form.known.papers.as_found, line, at.beside ? "" : "found: ");
    const Cell left = cell_of(form, form.known.papers.as_left, line, at.beside ? "" : "left: ");
    const std::string name = for_people(choice.name);
    const std::string plate = plate_words(form.known, line);
    const float words_high = text_size(canvas, name, Type::Body, at.name).y +
                             (plate.empty() ? 0 : text_size(canvas, plate, Type::Minimum, at.name).y);
    const float cells_high =
        std::round(std::max(cell_height(canvas, found, at.cell), cell_height(canvas, left, at.cell)));
    const Rect box =
        column.take(at.beside ? std::max(words_high, cells_high) : words_high + cells_high + canvas.px(3));
    const Canvas here = column.canvas_for(box);
    ImVec2 words = box.min;
    if (at.beside)
        words.y = std::round(box.centre().y - words_high / 2);
    words.y = paragraph(here, words, at.name, name, Type::Body, canvas.theme->ink).max.y;
    if (!plate.empty())
        paragraph(here, words, at.name, plate, Type::Minimum, canvas.theme->pencil);
    const float y =
        std::round(at.beside ? box.centre().y - cells_high / 2 : box.min.y + words_high + canvas.px(3));
    if (draw_cell(here, rect_at({at.first, y}, {at.cell, cells_high}), found, "found " + choice.name))
        write(form, Verb::as_found, line);
    if (draw_cell(here, rect_at({at.second, y}, {at.cell, cells_high}), left, "left " + choice.name))
        write(form, Verb::as_left, line);
    column.gap(at.beside ? 5 : 10);
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
    heads(column);
    for (const bench::Choice& choice : bench::choices(*known.site, bench::Word::line))
        line_entry(form, choice);
    conditions(form);
}

} // namespace lightoff::paper
