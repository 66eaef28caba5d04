// SPDX-License-Identifier: MIT
#include "gui/explore/gauge_table.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/explore/readings.hpp"
#include "report/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::explore {
namespace {

using namespace canvas;
using sheet::Column;

/// Widths of a row's pieces, the same in all rows.
struct Widths {
    float words = 0, value = 0, unit = 0, other = 0;
};

Widths widths_of(const Column& column, const bench::Gauges& gauges, std::span<const GaugeRow> rows,
                 bool has_other) {
    const Canvas& canvas = column.canvas();
    Widths widths;
    widths.value = text_size(canvas, "−99,999", Type::Body).x;
    for (const GaugeRow& row : rows) {
        const bench::Gauge& gauge = gauges.list()[row.gauge];
        if (gauge.words.empty()) {
            widths.unit =
                std::max(widths.unit, text_size(canvas, report::unit_text(gauge.unit), Type::Minimum).x);
        }
    }
    widths.other = has_other ? widths.value + canvas.px(12) : 0;
    widths.words = column.width() - widths.value - widths.unit - widths.other - canvas.px(26);
    return widths;
}

std::string below_words(const bench::Gauge& gauge, const GaugeRow& row) {
    return row.changed ? "was " + gauge_figure(gauge, row.before) : std::string();
}

/// A thing that stands this way or that way: its word takes the room of value, unit and the rest.
void draw_state(Column& column, const bench::Gauge& gauge, const GaugeRow& row, const double* other) {
    const Canvas& outer = column.canvas();
    const bool differs = other != nullptr && bench::differ(gauge, row.now, *other);
    std::string words = gauge_figure(gauge, row.now);
    if (row.changed) {
        words += ", was " + gauge_figure(gauge, row.before);
    }
    const std::string what_if = differs ? "what if: " + gauge_figure(gauge, *other) : "";
    const float indent = outer.px(8);
    const float half = std::floor((column.width() - indent) / 2);
    const float wide = half - outer.px(8);
    const float left = text_size(outer, gauge.name, Type::Secondary, wide).y;
    const float right = text_size(outer, words, Type::Secondary, half).y;
    const float under = differs ? line_height(outer, Type::Secondary) + outer.px(4) : 0;
    const Rect box = column.take(std::max(left, right + under) + outer.px(7));
    const Canvas canvas = column.canvas_for(box);
    const Theme& theme = *canvas.theme;
    const float top = box.min.y + canvas.px(3);
    if (row.changed) {
        fill(canvas, {box.min, {box.min.x + canvas.px(3), box.max.y - canvas.px(1)}}, theme.ink);
    }
    paragraph(canvas, {box.min.x + indent, top}, wide, gauge.name, Type::Secondary,
              row.changed ? theme.ink : theme.pencil);
    paragraph(canvas, {box.max.x - half, top}, half, words, Type::Secondary, theme.ink);
    if (differs) {
        const Rect mark = rect_at({box.max.x - half, top + right},
                                  {text_size(canvas, what_if, Type::Secondary).x + canvas.px(8), under});
        fill(canvas, mark, theme.ink);
        text_in(canvas, mark, what_if, Type::Secondary, theme.ground, Align::Middle);
    }
    segment(column.canvas(), {box.min.x, box.max.y}, {box.max.x, box.max.y}, Line::Rule,
            mix(theme.ground, theme.rule, 0.5F));
}

void draw_number(Column& column, const Widths& widths, const bench::Gauge& gauge, const GaugeRow& row,
                 const double* other) {
    const Canvas& outer = column.canvas();
    const bool differs = other != nullptr && bench::differ(gauge, row.now, *other);
    const float indent = outer.px(8);
    const float wide = widths.words - indent;
    const float first =
        std::max(text_size(outer, gauge.name, Type::Secondary, wide).y, line_height(outer, Type::Body));
    const std::string where = gauge.where.empty() ? "worked out" : gauge.where;
    const float second = text_size(outer, where, Type::Minimum, wide).y;
    const Rect box = column.take(first + second + outer.px(7));
    const Canvas canvas = column.canvas_for(box);
    const Theme& theme = *canvas.theme;
    if (row.changed) {
        fill(canvas, {box.min, {box.min.x + canvas.px(3), box.max.y - canvas.px(1)}}, theme.ink);
    }
    Rect upper = {{box.min.x, box.min.y + canvas.px(2)}, {box.max.x, box.min.y + canvas.px(2) + first}};
    Rect lower = {{box.min.x, upper.max.y}, {box.max.x, upper.max.y + second}};
    paragraph(canvas, {upper.min.x + indent, upper.min.y + canvas.px(1)}, wide, gauge.name, Type::Secondary,
              theme.ink);
    paragraph(canvas, {lower.min.x + indent, lower.min.y}, wide, where, Type::Minimum, theme.pencil);
    const float line = line_height(canvas, Type::Body);
    upper.max.y = upper.min.y + line;
    lower = {{lower.min.x, upper.max.y}, {lower.max.x, upper.max.y + line_height(canvas, Type::Minimum)}};
    if (widths.other > 0) {
        const Rect mark = upper.cut_right(widths.other);
        const Rect under = lower.cut_right(widths.other);
        if (differs) {
            fill(canvas, mark, theme.ink);
            Rect inner = mark;
            inner.cut_right(canvas.px(5));
            text_in(canvas, inner, gauge_figure(gauge, *other), Type::Body, theme.ground, Align::End);
            Rect inner_below = under;
            inner_below.cut_right(canvas.px(5));
            text_in(canvas, inner_below, difference_text(gauge, row.now, *other), Type::Minimum, theme.ink,
                    Align::End);
        }
        upper.cut_right(canvas.px(6));
        lower.cut_right(canvas.px(6));
    }
    text_in(canvas, upper.cut_right(widths.unit), report::unit_text(gauge.unit), Type::Minimum, theme.pencil);
    upper.cut_right(canvas.px(5));
    lower.cut_right(widths.unit + canvas.px(5));
    text_in(canvas, upper.cut_right(widths.value), gauge_figure(gauge, row.now), Type::Body, theme.ink,
            Align::End);
    const std::string below = below_words(gauge, row);
    const float below_wide = text_size(canvas, below, Type::Minimum).x + 1;
    text_in(canvas, lower.cut_right(below_wide), below, Type::Minimum, theme.pencil, Align::End);
    segment(column.canvas(), {box.min.x, box.max.y}, {box.max.x, box.max.y}, Line::Rule,
            mix(theme.ground, theme.rule, 0.5F));
}

} // namespace

std::string difference_text(const bench::Gauge& gauge, double from, double to) {
    return (to > from ? "+" : "") + gauge_figure(gauge, to - from);
}

void draw_gauges(Column& column, const bench::Gauges& gauges, std::span<const GaugeRow> rows,
                 const std::vector<double>& what_if) {
    const Widths widths = widths_of(column, gauges, rows, !what_if.empty());
    for (const GaugeRow& row : rows) {
        const bench::Gauge& gauge = gauges.list()[row.gauge];
        const double* other = what_if.empty() ? nullptr : &what_if[row.gauge];
        if (gauge.words.empty()) {
            draw_number(column, widths, gauge, row, other);
        } else {
            draw_state(column, gauge, row, other);
        }
    }
}

} // namespace lightoff::explore
