// SPDX-License-Identifier: MIT
#include "gui/trace/strip_chart.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/canvas/tab_order.hpp"
#include "gui/trace/chart_layout.hpp"
#include "gui/trace/flags.hpp"
#include "gui/trace/ticks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <imgui_internal.h>
#include <limits>

namespace lightoff::trace {
namespace {

using namespace canvas;

constexpr float kMarkSpacing = 84; // design pixels between time marks, about
constexpr float kLeastTarget = 24; // pixels on the screen, WCAG 2.2 target size (minimum), level AA

/// What every part of the paper is drawn by.
struct Paper {
    const Canvas& canvas;
    const ChartLayout& layout;
    const ChartView& view;
    std::optional<double> shown_s;   ///< what the values belong to: the pointer's moment, else the marked one
    std::optional<Rect> cursor = {}; ///< where the time of that moment stands on the axis, if it is in view
};

void begin_layer(const char* name, Rect box) {
    ImGui::SetCursorScreenPos(box.min);
    ImGui::BeginChild(name, box.size(), false, kLayer);
}

// ---- times ----

/// Where the time of the cursor stands among the times of the axis.
Rect cursor_tag(const Canvas& canvas, const ChartLayout& layout, const ChartView& view, double at_s) {
    const float half = text_size(canvas, time_label(at_s), Type::Minimum).x / 2 + canvas.px(6);
    const float middle =
        std::clamp(x_at(layout.plot, view, at_s), layout.plot.min.x + half, layout.plot.max.x - half);
    return {{middle - half, layout.axis.min.y + canvas.px(2)}, {middle + half, layout.axis.max.y}};
}

void draw_cursor(const Canvas& canvas, const ChartLayout& layout, const ChartView& view, double at_s,
                 Rect tag) {
    const Theme& theme = *canvas.theme;
    const float x = x_at(layout.plot, view, at_s);
    segment(canvas, {x, layout.plot.min.y}, {x, layout.plot.max.y}, Line::Rule, theme.ink);
    fill(canvas, tag, theme.ink);
    text_in(canvas, tag, time_label(at_s), Type::Minimum, theme.ground, Align::Middle);
}

/// Marks of time; their labels from `free_from` on, where there is room for them.
void draw_times(const Paper& paper, float free_from) {
    const Canvas& canvas = paper.canvas;
    const ChartLayout& layout = paper.layout;
    const ChartView& view = paper.view;
    const std::optional<Rect>& cursor = paper.cursor;
    const Theme& theme = *canvas.theme;
    const int most = std::max(2, static_cast<int>(layout.plot.width() / canvas.px(kMarkSpacing)));
    const double step_s = time_step(view.span_s, most);
    const Colour faint = mix(theme.ground, theme.rule, 0.45F);
    const float free_to = layout.headings_below() ? layout.plot.max.x : layout.area.max.x;
    for (const double t_s : marks(std::max(0.0, view.from_s()), view.end_s, step_s)) {
        const float x = x_at(layout.plot, view, t_s);
        segment(canvas, {x, layout.plot.min.y}, {x, layout.plot.max.y}, Line::Rule, faint);
        const std::string label = time_label(t_s, step_s);
        const float half = text_size(canvas, label, Type::Minimum).x / 2;
        const float apart = canvas.px(4);
        const bool under_cursor =
            cursor && x + half + apart > cursor->min.x && x - half - apart < cursor->max.x;
        if (x - half > free_from && x + half <= free_to && !under_cursor) {
            text(canvas, {x, layout.axis.min.y + canvas.px(6)}, label, Type::Minimum, theme.pencil,
                 Align::Middle);
            free_from = x + half + canvas.px(8);
        }
    }
    const float bottom = layout.plot.max.y;
    segment(canvas, {layout.area.min.x, bottom}, {layout.area.max.x, bottom}, Line::Rule, theme.pencil);
}

// ---- events and stretches ----

void draw_events(const Paper& paper, const std::vector<Event>& events) {
    const Canvas& canvas = paper.canvas;
    const ChartLayout& layout = paper.layout;
    const ChartView& view = paper.view;
    const Theme& theme = *canvas.theme;
    const float row = line_height(canvas, Type::Minimum);
    const float gap = canvas.px(5);
    std::vector<const Event*> shown;
    std::vector<Flag> flags;
    for (const Event& event : events) {
        const float x = x_at(layout.plot, view, event.t_s);
        if (x >= layout.plot.min.x && x <= layout.plot.max.x) {
            shown.push_back(&event);
            flags.push_back({x, text_size(canvas, event.name, Type::Minimum).x + 2 * gap});
        }
    }
    const std::vector<FlagPlace> places =
        place_flags(flags, layout.area.min.x, layout.flags.max.x, layout.flag_rows);
    const float foot = std::max(layout.flags.min.y, layout.flags.max.y - canvas.px(4));
    for (std::size_t i = 0; i < flags.size(); ++i) {
        const float x = flags[i].x;
        const float top = foot - row * static_cast<float>(places[i].row.value_or(0) + 1);
        // Dark above the paper, where it belongs to the name; fainter among the curves.
        segment(canvas, {x, places[i].row ? top + canvas.px(3) : foot}, {x, layout.plot.min.y}, Line::Rule,
                theme.pencil);
        segment(canvas, {x, layout.plot.min.y}, {x, layout.plot.max.y}, Line::Rule,
                mix(theme.ground, theme.rule, 0.85F));
        if (places[i].row) {
            const bool left = places[i].leftwards;
            text(canvas, {left ? x - gap : x + gap, top}, shown[i]->name, Type::Minimum, theme.ink,
                 left ? Align::End : Align::Start);
        }
    }
}

/// Names where their stretch has room for them, a line where it ends anyway.
void draw_stretches(const Paper& paper, const std::vector<Stretch>& stretches) {
    const Canvas& canvas = paper.canvas;
    const ChartLayout& layout = paper.layout;
    const ChartView& view = paper.view;
    const Theme& theme = *canvas.theme;
    const Rect row = layout.stretches;
    if (row.height() <= 0) {
        return;
    }
    for (const Stretch& stretch : stretches) {
        const float from = std::max(layout.plot.min.x, x_at(layout.plot, view, stretch.from_s));
        const float to = std::min(layout.plot.max.x, x_at(layout.plot, view, stretch.to_s));
        if (to <= layout.plot.min.x || from >= layout.plot.max.x || to <= from) {
            continue;
        }
        segment(canvas, {from, row.min.y}, {from, row.max.y}, Line::Rule, theme.pencil);
        const bool marked =
            view.marker_s && *view.marker_s >= stretch.from_s && *view.marker_s < stretch.to_s;
        if (marked) {
            fill(canvas, {{from, row.min.y}, {to, row.max.y}}, theme.ink);
        }
        const float gap = canvas.px(5);
        if (text_size(canvas, stretch.name, Type::Minimum).x + 2 * gap <= to - from) {
            text_in(canvas, {{from + gap, row.min.y}, {to - 1, row.max.y}}, stretch.name, Type::Minimum,
                    marked ? theme.ground : theme.ink);
        }
    }
}

// ---- lanes ----

/// Which lanes are shown, where that is not all of them; pressing it goes on to the next ones. Returns the
/// right end of what it wrote.
float draw_lane_count(const Canvas& canvas, const ChartLayout& layout, std::size_t lanes, ChartView& view) {
    if (layout.count == lanes) {
        return layout.area.min.x;
    }
    const std::size_t end = layout.first + layout.count;
    const std::string words =
        (layout.count == 1 ? "lane " + std::to_string(end)
                           : "lanes " + std::to_string(layout.first + 1) + "–" + std::to_string(end)) +
        " of " + std::to_string(lanes);
    const float beside = canvas.px(6);
    const float wide = text_size(canvas, words, Type::Minimum).x + 2 * beside;
    Rect box = layout.axis;
    box.max.x = box.min.x + std::ceil(wide);
    box.min.y = std::min(box.min.y + canvas.px(2), box.max.y - kLeastTarget);
    const bool pressed = press_area("lanes", box);
    tab_stop();
    if (pressed || enter_pressed()) {
        view.first_lane = end < lanes ? end : 0; // limited when next laid out
    }
    const Theme& theme = *canvas.theme;
    const bool hovered = ImGui::IsItemHovered();
    if (hovered) {
        fill(canvas, box, theme.panel);
    }
    outline(canvas, box, has_keyboard() ? Line::Outline : Line::Rule, hovered ? theme.ink : theme.pencil);
    text_in(canvas, box, words, Type::Minimum, theme.ink, Align::Middle);
    if (canvas.probe != nullptr) {
        canvas.probe->add_target(box, words);
    }
    return box.max.x + canvas.px(8);
}

/// What the columns of values are of.
void draw_headings(const Paper& paper, const Beside& beside) {
    const Canvas& canvas = paper.canvas;
    const ChartLayout& layout = paper.layout;
    const std::optional<double> shown_s = paper.shown_s;
    const auto write = [&](Rect column, const std::string& words) {
        const Rect cell{{column.min.x, layout.headings.min.y}, {column.max.x, layout.headings.max.y}};
        text_in(canvas, cell, words, Type::Minimum, canvas.theme->pencil, Align::End);
    };
    write(layout.values, shown_s ? time_label(*shown_s) : "now");
    if (beside.other != nullptr) {
        write(layout.others, beside.other_name);
    }
}

/// Its name, and the limits of its scale where there is room for both.
void draw_lane_name(const Canvas& canvas, const ChartLayout& layout, std::size_t index, const Lane& lane) {
    const Theme& theme = *canvas.theme;
    const Rect name = layout.lane(layout.names, index);
    const float tall = text_size(canvas, lane.name, Type::Secondary, name.width() + 1).y;
    paragraph(canvas, {name.min.x, std::round(name.centre().y - tall / 2)}, name.width() + 1, lane.name,
              Type::Secondary, theme.ink);
    const float line = line_height(canvas, Type::Minimum);
    if (!lane.words.empty() || layout.row < 2 * line + canvas.px(6)) {
        return;
    }
    const Rect limits = layout.lane(layout.limits, index);
    const auto write = [&](float top, float value) {
        text(canvas, {limits.max.x, top}, limit_words(lane, value), Type::Minimum, theme.pencil, Align::End);
    };
    write(limits.min.y + canvas.px(3), lane.high);
    write(limits.max.y - line - canvas.px(2), lane.low);
}

/// A lane's value at the moment shown; not-a-number if there is none.
float value_at(const Recording& recording, std::size_t column, std::optional<double> at_s) {
    if (!at_s) {
        return recording.newest(column);
    }
    const std::size_t after = recording.cell_from(*at_s + 1e-9);
    if (after == 0 || *at_s > recording.newest_s() + 1e-9 || recording.cell(column, after - 1).empty()) {
        return std::numeric_limits<float>::quiet_NaN();
    }
    const Extremes cell = recording.cell(column, after - 1);
    return cell.low + (cell.high - cell.low) / 2;
}

void draw_values(const Paper& paper, std::size_t index, const Recording& recording, const Lane& lane,
                 const Beside& beside) {
    const Canvas& canvas = paper.canvas;
    const ChartLayout& layout = paper.layout;
    const std::optional<double> shown_s = paper.shown_s;
    const Theme& theme = *canvas.theme;
    const std::size_t column = lane.column.value_or(index);
    const float value = value_at(recording, column, shown_s);
    text_in(canvas, layout.lane(layout.values, index), words_for(lane, value), Type::Body, theme.ink,
            Align::End);
    text_in(canvas, layout.lane(layout.units, index), lane.unit, Type::Minimum, theme.pencil);
    if (beside.other == nullptr) {
        return;
    }
    const float other = value_at(*beside.other, column, shown_s);
    const bool differs = std::abs(other - value) > lane.tolerance;
    Rect cell = layout.lane(layout.others, index);
    const float half = std::min(cell.height(), line_height(canvas, Type::Body) + canvas.px(4)) / 2;
    cell = {{cell.min.x, cell.centre().y - half}, {cell.max.x, cell.centre().y + half}};
    if (differs) {
        fill(canvas, cell, theme.ink);
    }
    cell.cut_right(canvas.px(5));
    text_in(canvas, cell, words_for(lane, other), Type::Body, differs ? theme.ground : theme.pencil,
            Align::End);
}

} // namespace

void StripChart::draw(const Canvas& canvas, Rect area, const Recording& recording,
                      const std::vector<Lane>& lanes, const std::vector<Event>& events, ChartView& view,
                      const Beside& beside) {
    ImGui::PushID(this);
    const ChartLayout layout = lay_out_chart(canvas, area, lanes, beside, view);
    view.first_lane = layout.first;
    plot_ = layout.plot;
    handle_input(layout, recording, view);
    if (has_keyboard()) {
        outline(canvas, layout.plot, Line::Outline, canvas.theme->ink);
    }
    Paper paper{canvas, layout, view, cursor_s_ ? cursor_s_ : view.marker_s};
    if (paper.shown_s && *paper.shown_s >= view.from_s() && *paper.shown_s <= view.end_s) {
        paper.cursor = cursor_tag(canvas, layout, view, *paper.shown_s);
    }
    draw_times(paper, draw_lane_count(canvas, layout, lanes.size(), view));
    draw_events(paper, events);
    draw_headings(paper, beside);
    draw_stretches(paper, beside.stretches);
    for (std::size_t i = layout.first; i < layout.first + layout.count; ++i) {
        const float top = layout.lane(layout.plot, i).min.y;
        segment(canvas, {area.min.x, top}, {area.max.x, top}, Line::Rule, canvas.theme->rule);
        draw_lane_name(canvas, layout, i, lanes[i]);
        draw_values(paper, i, recording, lanes[i], beside);
        draw_curves(canvas, layout.lane(layout.plot, i), i, recording, lanes[i], beside, view);
    }
    if (paper.cursor) {
        begin_layer("cursor", area);
        draw_cursor(canvas.here(), layout, view, *paper.shown_s, *paper.cursor);
        ImGui::EndChild();
    }
    ImGui::PopID();
}

/// In a draw list of its own: one holds at most 65,535 vertices.
void StripChart::draw_curves(const Canvas& canvas, Rect row, std::size_t index, const Recording& recording,
                             const Lane& lane, const Beside& beside, const ChartView& view) {
    if (row.width() < 1 || row.height() < 4) {
        return;
    }
    ImGui::PushID(static_cast<int>(index));
    begin_layer("lane", row);
    const Canvas here = canvas.here();
    const float margin = std::min(canvas.px(5), row.height() / 4);
    const Rect box{{row.min.x, row.min.y + margin}, {row.max.x, row.max.y - margin}};
    for (const float level : lane.levels) {
        const float y = std::round(y_at(box, lane, level)) + 0.5F;
        const std::array<ImVec2, 2> across{ImVec2{box.min.x, y}, ImVec2{box.max.x, y}};
        dashed(here, across, std::max(1.0F, canvas.px(1)), canvas.theme->pencil, canvas.px(5), canvas.px(4));
    }
    const std::size_t column = lane.column.value_or(index);
    if (beside.other != nullptr) {
        curves_.draw_other(here, box, recording, *beside.other, column, lane, view);
    }
    curves_.draw(here, box, recording, column, lane, view);
    ImGui::EndChild();
    ImGui::PopID();
}

void StripChart::handle_input(const ChartLayout& layout, const Recording& recording, ChartView& view) {
    cursor_s_.reset();
    if (layout.plot.width() < 1 || layout.plot.height() < 1) {
        return;
    }
    const ImGuiIO& io = ImGui::GetIO();
    const double newest_s = recording.newest_s();
    ImGui::SetCursorScreenPos(layout.plot.min);
    press_area("paper", layout.plot);
    tab_stop();
    if (ImGui::IsItemActive() && view.marker_s) {
        view.marker_s = std::clamp(time_at(layout.plot, view, io.MousePos.x), 0.0, newest_s);
    } else if (ImGui::IsItemActive() && io.MouseDelta.x != 0) {
        pan(view, -static_cast<double>(io.MouseDelta.x / layout.plot.width()) * view.span_s, newest_s);
    }
    // An item that the keyboard is on counts as hovered, too, wherever the pointer is.
    const bool under_pointer = ImGui::IsItemHovered() && layout.plot.holds(io.MousePos);
    if (under_pointer) {
        const double under_s = time_at(layout.plot, view, io.MousePos.x);
        if (io.MouseWheel != 0 && io.KeyShift) {
            pan(view, -static_cast<double>(io.MouseWheel) * view.span_s / 10, newest_s);
        } else if (io.MouseWheel != 0) {
            zoom(view, under_s, std::pow(1.25, static_cast<double>(io.MouseWheel)));
        }
    }
    takes_keys_ = ImGui::IsItemFocused();
    if (takes_keys_) {
        take_keys(layout, newest_s, view);
    }
    follow_newest(view, newest_s);
    if (under_pointer) {
        cursor_s_ = time_at(layout.plot, view, io.MousePos.x);
    }
}

void StripChart::take_keys(const ChartLayout& layout, double newest_s, ChartView& view) {
    const auto pressed = [](ImGuiKey key) { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key)); };
    const double middle_s = view.marker_s.value_or(view.end_s - view.span_s / 2);
    for (const ImWchar c : ImGui::GetIO().InputQueueCharacters) {
        switch (c) {
        case '+':
            zoom(view, middle_s, 1.25);
            break;
        case '-':
            zoom(view, middle_s, 0.8);
            break;
        case '[':
            pan(view, -view.span_s / 4, newest_s);
            break;
        case ']':
            pan(view, view.span_s / 4, newest_s);
            break;
        default:
            break;
        }
    }
    if (view.marker_s && has_keyboard() && (pressed(ImGuiKey_LeftArrow) || pressed(ImGuiKey_RightArrow))) {
        ImGui::NavMoveRequestCancel(); // the arrows are the marker's while it has the keyboard
        const double by_s = view.span_s / 100 * (pressed(ImGuiKey_LeftArrow) ? -1 : 1);
        view.marker_s = std::clamp(*view.marker_s + by_s, 0.0, newest_s);
    }
    if (pressed(ImGuiKey_End)) {
        view.follow = true;
    }
    const std::size_t page = std::max<std::size_t>(1, layout.count - 1);
    if (pressed(ImGuiKey_PageDown)) {
        view.first_lane += page; // limited when next laid out
    }
    if (pressed(ImGuiKey_PageUp)) {
        view.first_lane -= std::min(view.first_lane, page);
    }
}

} // namespace lightoff::trace
