// SPDX-License-Identifier: MIT
#include "control/door_chart.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/paper/rulings.hpp"
#include "gui/paper/sheets.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::paper {
namespace {

std::string listed(const std::vector<std::string>& texts, const char* between) {
    std::string all;
    for (const std::string& text : texts)
        all += (all.empty() ? "" : between) + text;
    return all;
}

std::string spaced(std::string words) {
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

constexpr double kShown_s = 8.0;     // of a pattern, from the left
constexpr std::uint8_t kExample = 2; // steps passed, for a pattern that counts

/// What the lamp does in eight seconds, lit above the line: as the board itself steps it.
void draw_flashes(sheet::Column& column, const control::LampPattern& pattern, double tick_s) {
    const canvas::Canvas& canvas = column.canvas();
    column.gap(3);
    const canvas::Rect box = column.take(canvas.px(14));
    const auto ticks = static_cast<int>(kShown_s / tick_s + 0.5);
    control::LampState lamp;
    const float step = box.width() / static_cast<float>(ticks);
    for (int i = 0; i < ticks; ++i) {
        control::step_lamp(lamp, &pattern, 0, kExample, 0);
        if (lamp.on != 0)
            canvas::fill(canvas,
                         {{std::round(box.min.x + step * static_cast<float>(i)), box.min.y},
                          {std::round(box.min.x + step * static_cast<float>(i + 1)), box.max.y}},
                         canvas.theme->ink);
    }
    canvas::segment(canvas, {box.min.x, box.max.y}, box.max, canvas::Line::Rule, canvas.theme->ink);
    for (int second = 0; second <= static_cast<int>(kShown_s); ++second) {
        const float x = std::round(box.min.x + box.width() * static_cast<float>(second / kShown_s));
        canvas::segment(canvas, {x, box.max.y}, {x, box.max.y + canvas.px(4)}, canvas::Line::Rule,
                        canvas.theme->ink);
    }
    column.gap(7);
}

} // namespace

void draw_door_chart(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                     DoorChartView&, view::Wanted&) {
    sheet::Column column(canvas, area, "door chart");
    const control::DoorChart chart = control::door_chart(known.site->model.board);
    column.note("Chart inside the door");
    column.title(chart.board);
    column.heading("What the lamp shows");
    column.note("Lit above the line; a mark is a second. Where it counts, two steps are drawn.");
    column.gap(6);
    for (std::size_t i = 0; i < chart.signals.size(); ++i) {
        column.words(capitalised(chart.signals[i].signal) + ".");
        draw_flashes(column, known.site->model.board.patterns[i], known.site->model.board.tick_s);
        column.note(capitalised(chart.signals[i].meaning));
        column.gap(5);
        column.rule();
        column.gap(5);
    }
    if (chart.steps.empty())
        return;
    column.heading("What the count says");
    for (const control::StepRow& row : chart.steps) {
        column.gap(4);
        column.words(std::to_string(row.count) + "\u2007\u2007" + row.step, canvas::Type::Heading);
        column.note(row.known_by + (row.inputs.empty() ? "" : ": " + spaced(listed(row.inputs, ", "))));
        if (!row.measure.empty()) {
            column.gap(3);
            column.words("If the lamp stops here, measure:", canvas::Type::Secondary);
            for (const std::string& what : row.measure) {
                column.indent(14);
                column.words("– " + what);
                column.indent(-14);
            }
        }
        column.gap(6);
        column.rule();
    }
}

} // namespace lightoff::paper
