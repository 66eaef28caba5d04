// SPDX-License-Identifier: MIT
#include "gui/trace/strip_chart.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/canvas/tab_order.hpp"
#include "gui/trace/flags.hpp"
#include "gui/trace/ticks.hpp"

#include <array>
#include <cmath>
#include <imgui_internal.h>
#include <limits>

namespace lightoff::trace {
namespace {

using namespace canvas;

constexpr double kLeastSpan_s = 5;
constexpr double kMostSpan_s = 7 * 86400.0;
constexpr float kMarkSpacing = 84;     // design pixels between time marks, about
constexpr float kMostForNames = 0.29F; // of the width; longer names take two lines
constexpr float kOnFill = 0.16F;       // opacity under a step-like line

std::string words_for(const Lane& lane, float value) {
    if (std::isnan(value)) {
        return "–";
    }
    if (!lane.words.empty()) {
        const auto index = static_cast<std::size_t>(std::max(0.0F, std::round(value)));
        return lane.words[std::min(index, lane.words.size() - 1)];
    }
    return figure(static_cast<double>(value), lane.decimals);
}

float widest_value(const Canvas& canvas, const Lane& lane) {
    float widest = 0;
    for (const std::string& word : lane.words) {
        widest = std::max(widest, text_size(canvas, word, Type::Body).x);
    }
    if (lane.words.empty()) {
        for (const float end : {lane.low, lane.high, -1.0F}) {
            widest = std::max(widest, text_size(canvas, words_for(lane, end), Type::Body).x);
        }
    }
    return widest;
}

float widest_limit(const Canvas& canvas, const Lane& lane) {
    if (!lane.words.empty()) {
        return 0;
    }
    return std::max(
        text_size(canvas, figure(static_cast<double>(lane.low), lane.decimals), Type::Minimum).x,
        text_size(canvas, figure(static_cast<double>(lane.high), lane.decimals), Type::Minimum).x);
}

Colour colour_of(const Canvas& canvas, const Lane& lane) {
    return lane.energy ? canvas.theme->of(*lane.energy) : canvas.theme->ink;
}

float x_at(Rect box, const ChartView& view, double t_s) {
    return box.min.x + static_cast<float>((t_s - view.from_s()) / view.span_s) * box.width();
}

double time_at(Rect box, const ChartView& view, float x) {
    return view.from_s() + static_cast<double>((x - box.min.x) / box.width()) * view.span_s;
}

/// Height of a value in a lane, kept inside it: a line that leaves its lane would run into its neighbour.
float y_at(Rect box, const Lane& lane, float value) {
    const float share = std::clamp((value - lane.low) / (lane.high - lane.low), 0.0F, 1.0F);
    return box.max.y - share * box.height();
}

void begin_layer(const char* name, Rect box) {
    ImGui::SetCursorScreenPos(box.min);
    ImGui::BeginChild(name, box.size(), false, kLayer);
}

} // namespace

struct StripChart::Layout {
    Rect area, flags, plot, stretches, axis, names, limits, values, units, others;
    float row = 0;                    // height of a lane
    std::size_t first = 0, count = 0; // lanes shown

    Rect lane(Rect column, std::size_t index) const {
        const float top = plot.min.y + row * static_cast<float>(index - first);
        return {{column.min.x, top}, {column.max.x, top + row}};
    }
};

void follow_newest(ChartView& view, double newest_s) {
    if (view.follow) {
        view.end_s = std::max(newest_s, view.span_s);
    }
}

void pan(ChartView& view, double by_s, double newest_s) {
    const double latest_s = std::max(newest_s, view.span_s);
    view.end_s = std::clamp(view.end_s + by_s, view.span_s, latest_s);
    view.follow = view.end_s >= latest_s;
}

void zoom(ChartView& view, double about_s, double factor) {
    const double span_s = std::clamp(view.span_s / factor, kLeastSpan_s, kMostSpan_s);
    if (!view.follow) {
        view.end_s = about_s + (view.end_s - about_s) * span_s / view.span_s;
    }
    view.span_s = span_s;
}

void StripChart::draw(const Canvas& canvas, Rect area, const Recording& recording,
                      const std::vector<Lane>& lanes, const std::vector<Event>& events, ChartView& view,
                      const Beside& beside) {
    ImGui::PushID(this);
    const Layout layout = lay_out(canvas, area, lanes, beside, view);
    plot_ = layout.plot;
    handle_input(layout, recording, view);
    if (has_keyboard()) {
        outline(canvas, layout.plot, Line::Outline, canvas.theme->ink);
    }
    std::optional<double> at_s = shown_s(view);
    if (at_s && (*at_s < view.from_s() || *at_s > view.end_s))
        at_s.reset();
    const Rect cursor = at_s ? cursor_tag(canvas, layout, view, *at_s) : Rect{};
    draw_times(canvas, layout, view, draw_lane_count(canvas, layout, lanes.size()), cursor);
    draw_events(canvas, layout, events, view);
    draw_stretches(canvas, layout, beside, view);
    if (beside.other != nullptr) {
        const float line = line_height(canvas, Type::Minimum);
        const float top = layout.flags.max.y - canvas.px(4) - line;
        text_in(canvas, {{layout.others.min.x, top}, {layout.others.max.x, top + line}}, beside.other_name,
                Type::Minimum, canvas.theme->pencil, Align::End);
    }
    for (std::size_t i = layout.first; i < layout.first + layout.count && i < lanes.size(); ++i) {
        draw_lane(canvas, layout, i, recording, lanes[i], beside, view);
    }
    if (at_s) {
        begin_layer("cursor", area);
        draw_cursor(canvas.here(), layout, view, *at_s, cursor);
        ImGui::EndChild();
    }
    ImGui::PopID();
}

StripChart::Layout StripChart::lay_out(const Canvas& canvas, Rect area, const std::vector<Lane>& lanes,
                                       const Beside& beside, ChartView& view) const {
    float name = 0;
    float limit = 0;
    float value = text_size(canvas, "0:00:00", Type::Secondary).x;
    float unit = 0;
    for (const Lane& lane : lanes) {
        name = std::max(name, text_size(canvas, lane.name, Type::Secondary).x);
        limit = std::max(limit, widest_limit(canvas, lane));
        value = std::max(value, widest_value(canvas, lane));
        unit = std::max(unit, text_size(canvas, lane.unit, Type::Minimum).x);
    }
    const float gap = canvas.px(10);
    const float flag_row = line_height(canvas, Type::Minimum);
    Layout layout;
    layout.area = area;
    Rect rest = area;
    layout.flags = rest.cut_top(flag_row * static_cast<float>(view.flag_rows) + canvas.px(4));
    layout.axis = rest.cut_bottom(line_height(canvas, Type::Minimum) + canvas.px(8));
    if (!beside.stretches.empty()) {
        layout.stretches = rest.cut_bottom(line_height(canvas, Type::Minimum) + canvas.px(6));
    }
    if (beside.other != nullptr) {
        layout.others = rest.cut_right(
            std::max(value, text_size(canvas, beside.other_name, Type::Minimum).x) + canvas.px(10));
        rest.cut_right(canvas.px(6));
    }
    layout.names = rest.cut_left(std::min(name, area.width() * kMostForNames));
    rest.cut_left(gap);
    layout.limits = rest.cut_left(limit);
    rest.cut_left(canvas.px(6));
    layout.units = rest.cut_right(unit);
    rest.cut_right(canvas.px(6));
    layout.values = rest.cut_right(value);
    rest.cut_right(gap);
    layout.flags.max.x = rest.max.x + gap; // names of events end where the values begin
    layout.plot = {{std::round(rest.min.x), std::round(rest.min.y)},
                   {std::round(rest.max.x), std::round(rest.max.y)}};
    float least_row = line_height(canvas, Type::Body);
    for (const Lane& lane : lanes) {
        least_row =
            std::max(least_row, text_size(canvas, lane.name, Type::Secondary, layout.names.width() + 1).y);
    }
    least_row += canvas.px(4);
    const auto fitting = static_cast<std::size_t>(std::max(1.0F, layout.plot.height() / least_row));
    layout.count = std::min(fitting, lanes.size());
    view.first_lane = std::min(view.first_lane, lanes.size() - layout.count);
    layout.first = view.first_lane;
    layout.row = layout.plot.height() / static_cast<float>(std::max<std::size_t>(1, layout.count));
    return layout;
}

void StripChart::handle_input(const Layout& layout, const Recording& recording, ChartView& view) {
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

void StripChart::take_keys(const Layout& layout, double newest_s, ChartView& view) const {
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

void StripChart::draw_times(const Canvas& canvas, const Layout& layout, const ChartView& view,
                            float free_from, Rect cursor) const {
    const Theme& theme = *canvas.theme;
    const int most = std::max(2, static_cast<int>(layout.plot.width() / canvas.px(kMarkSpacing)));
    const double step_s = time_step(view.span_s, most);
    const Colour faint = mix(theme.ground, theme.rule, 0.45F);
    for (const double t_s : marks(std::max(0.0, view.from_s()), view.end_s, step_s)) {
        const float x = x_at(layout.plot, view, t_s);
        segment(canvas, {x, layout.plot.min.y}, {x, layout.plot.max.y}, Line::Rule, faint);
        const std::string label = time_label(t_s, step_s);
        const float half = text_size(canvas, label, Type::Minimum).x / 2;
        const float apart = canvas.px(4);
        const bool under_cursor = x + half + apart > cursor.min.x && x - half - apart < cursor.max.x;
        if (x - half > free_from && x + half <= layout.area.max.x && !under_cursor) {
            text(canvas, {x, layout.axis.min.y + canvas.px(6)}, label, Type::Minimum, theme.pencil,
                 Align::Middle);
            free_from = x + half + canvas.px(8);
        }
    }
    const float bottom = layout.plot.max.y;
    segment(canvas, {layout.area.min.x, bottom}, {layout.area.max.x, bottom}, Line::Rule, theme.pencil);
}

void StripChart::draw_events(const Canvas& canvas, const Layout& layout, const std::vector<Event>& events,
                             const ChartView& view) const {
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
        place_flags(flags, layout.area.min.x, layout.flags.max.x, view.flag_rows);
    const float lowest = layout.flags.max.y - canvas.px(4) - row;
    for (std::size_t i = 0; i < flags.size(); ++i) {
        const float x = flags[i].x;
        const float top = lowest - row * static_cast<float>(places[i].row.value_or(0));
        // Dark above the paper, where it belongs to the name; fainter among the curves.
        segment(canvas, {x, places[i].row ? top + canvas.px(3) : layout.flags.max.y - canvas.px(4)},
                {x, layout.plot.min.y}, Line::Rule, theme.pencil);
        segment(canvas, {x, layout.plot.min.y}, {x, layout.plot.max.y}, Line::Rule,
                mix(theme.ground, theme.rule, 0.85F));
        if (places[i].row) {
            const bool left = places[i].leftwards;
            text(canvas, {left ? x - gap : x + gap, top}, shown[i]->name, Type::Minimum, theme.ink,
                 left ? Align::End : Align::Start);
        }
    }
    const std::optional<double> at_s = shown_s(view);
    const std::string when = at_s ? time_label(*at_s) : "now";
    const Rect cell{{layout.values.min.x, lowest}, {layout.values.max.x, lowest + row}};
    text_in(canvas, cell, when, Type::Minimum, theme.pencil, Align::End);
}

/// Names where their stretch has room for them, a line where it ends anyway.
void StripChart::draw_stretches(const Canvas& canvas, const Layout& layout, const Beside& beside,
                                const ChartView& view) {
    const Theme& theme = *canvas.theme;
    const Rect row{{layout.plot.min.x, layout.stretches.min.y}, {layout.plot.max.x, layout.stretches.max.y}};
    for (const Stretch& stretch : beside.stretches) {
        const float from = std::max(row.min.x, x_at(layout.plot, view, stretch.from_s));
        const float to = std::min(row.max.x, x_at(layout.plot, view, stretch.to_s));
        if (to <= row.min.x || from >= row.max.x || to <= from) {
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

float StripChart::draw_lane_count(const Canvas& canvas, const Layout& layout, std::size_t lanes) const {
    if (layout.count == lanes) {
        return layout.area.min.x;
    }
    const std::string words = "lanes " + std::to_string(layout.first + 1) + "–" +
                              std::to_string(layout.first + layout.count) + " of " + std::to_string(lanes);
    const Rect written = text(canvas, {layout.area.min.x, layout.axis.min.y + canvas.px(6)}, words,
                              Type::Minimum, canvas.theme->pencil);
    return written.max.x + canvas.px(12);
}

void StripChart::draw_lane(const Canvas& canvas, const Layout& layout, std::size_t index,
                           const Recording& recording, const Lane& lane, const Beside& beside,
                           const ChartView& view) {
    const Theme& theme = *canvas.theme;
    const float top = layout.lane(layout.plot, index).min.y;
    segment(canvas, {layout.area.min.x, top}, {layout.area.max.x, top}, Line::Rule, theme.rule);

    const Rect name = layout.lane(layout.names, index);
    const float tall = text_size(canvas, lane.name, Type::Secondary, name.width() + 1).y;
    paragraph(canvas, {name.min.x, std::round(name.centre().y - tall / 2)}, name.width() + 1, lane.name,
              Type::Secondary, theme.ink);
    const float line = line_height(canvas, Type::Minimum);
    const Rect limits = layout.lane(layout.limits, index);
    if (lane.words.empty() && layout.row >= 2 * line + canvas.px(6)) {
        const float right = limits.max.x;
        text(canvas, {right, limits.min.y + canvas.px(3)},
             figure(static_cast<double>(lane.high), lane.decimals), Type::Minimum, theme.pencil, Align::End);
        text(canvas, {right, limits.max.y - line - canvas.px(2)},
             figure(static_cast<double>(lane.low), lane.decimals), Type::Minimum, theme.pencil, Align::End);
    }

    const std::size_t column = lane.column.value_or(index);
    draw_values(canvas, layout, index, recording, lane, beside, view);
    const Rect whole = layout.lane(layout.plot, index);
    if (whole.width() < 1 || whole.height() < 4) {
        return;
    }
    ImGui::PushID(static_cast<int>(index));
    begin_layer("lane", whole);
    const float margin = std::min(canvas.px(5), whole.height() / 4);
    const Rect box{{whole.min.x, whole.min.y + margin}, {whole.max.x, whole.max.y - margin}};
    for (const float level : lane.levels) {
        const float y = std::round(y_at(box, lane, level)) + 0.5F;
        const std::array<ImVec2, 2> across{ImVec2{box.min.x, y}, ImVec2{box.max.x, y}};
        dashed(canvas.here(), across, std::max(1.0F, canvas.px(1)), theme.pencil, canvas.px(5), canvas.px(4));
    }
    if (beside.other != nullptr) {
        draw_other(canvas.here(), box, recording, *beside.other, column, lane, view);
    }
    const std::size_t visible = recording.cell_from(view.end_s) - recording.cell_from(view.from_s());
    if (visible < 2 * static_cast<std::size_t>(box.width())) {
        draw_samples(canvas.here(), box, recording, column, lane, view);
    } else {
        draw_columns(canvas.here(), box, recording, column, lane, view);
    }
    ImGui::EndChild();
    ImGui::PopID();
}

float StripChart::value_at(const Recording& recording, std::size_t column, const ChartView& view) const {
    const std::optional<double> at_s = shown_s(view);
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

void StripChart::draw_values(const Canvas& canvas, const Layout& layout, std::size_t index,
                             const Recording& recording, const Lane& lane, const Beside& beside,
                             const ChartView& view) const {
    const Theme& theme = *canvas.theme;
    const std::size_t column = lane.column.value_or(index);
    const float value = value_at(recording, column, view);
    text_in(canvas, layout.lane(layout.values, index), words_for(lane, value), Type::Body, theme.ink,
            Align::End);
    text_in(canvas, layout.lane(layout.units, index), lane.unit, Type::Minimum, theme.pencil);
    if (beside.other == nullptr) {
        return;
    }
    const float other = value_at(*beside.other, column, view);
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

/// The other run as a dashed line in ink, and the room between the two where they are apart.
void StripChart::draw_other(const Canvas& canvas, Rect box, const Recording& recording,
                            const Recording& other, std::size_t column, const Lane& lane,
                            const ChartView& view) {
    const double column_s = view.span_s / static_cast<double>(box.width());
    const double start_s = std::floor(view.from_s() / column_s) * column_s;
    const auto count = static_cast<std::size_t>(box.width()) + 1;
    const double end_s = start_s + static_cast<double>(count) * column_s;
    fill_columns(recording, column, start_s, end_s, count, columns_);
    fill_columns(other, column, start_s, end_s, count, other_columns_);
    std::vector<ImVec2> line;
    const auto middle = [](const Extremes& e) { return e.low + (e.high - e.low) / 2; };
    const auto flush = [&] {
        dashed(canvas, line, std::max(1.0F, canvas.px(1.6F)), canvas.theme->ink, canvas.px(6), canvas.px(4));
        line.clear();
    };
    const auto flush_apart = [&] {
        strip(canvas, upper_, lower_, faded(canvas.theme->ink, kOnFill), faded(canvas.theme->ink, kOnFill));
        upper_.clear();
        lower_.clear();
    };
    upper_.clear();
    lower_.clear();
    for (std::size_t i = 0; i < count; ++i) {
        const float x = x_at(box, view, start_s + (static_cast<double>(i) + 0.5) * column_s);
        if (other_columns_[i].empty()) {
            flush();
            flush_apart();
            continue;
        }
        const float there = middle(other_columns_[i]);
        line.push_back({x, y_at(box, lane, there)});
        if (columns_[i].empty() || std::abs(there - middle(columns_[i])) <= lane.tolerance) {
            flush_apart();
            continue;
        }
        upper_.push_back({x, y_at(box, lane, there)});
        lower_.push_back({x, y_at(box, lane, middle(columns_[i]))});
    }
    flush();
    flush_apart();
}

void StripChart::draw_samples(const Canvas& canvas, Rect box, const Recording& recording, std::size_t index,
                              const Lane& lane, const ChartView& view) {
    const Colour colour = colour_of(canvas, lane);
    upper_.clear();
    lower_.clear();
    const auto flush = [&] {
        if (lane.step_like) {
            strip(canvas, upper_, lower_, faded(colour, kOnFill), faded(colour, kOnFill));
        }
        stroke(canvas, upper_, Line::Detail, colour);
        upper_.clear();
        lower_.clear();
    };
    const auto put = [&](float x, float y) {
        upper_.push_back({x, y});
        lower_.push_back({x, box.max.y});
    };
    const std::size_t first = recording.cell_from(view.from_s());
    const std::size_t last = std::min(recording.cell_from(view.end_s) + 1, recording.size());
    for (std::size_t i = first > 0 ? first - 1 : 0; i < last; ++i) {
        const Extremes& cell = recording.cell(index, i);
        const float x = x_at(box, view, recording.start_s(i));
        if (cell.empty()) {
            flush();
            continue;
        }
        if (lane.step_like && !upper_.empty()) {
            put(x, upper_.back().y);
        }
        put(x, y_at(box, lane, cell.low));
        if (cell.high > cell.low) {
            put(x, y_at(box, lane, cell.high));
        }
    }
    if (lane.step_like && !upper_.empty()) {
        put(x_at(box, view, std::min(view.end_s, recording.newest_s())), upper_.back().y);
    }
    flush();
}

void StripChart::draw_columns(const Canvas& canvas, Rect box, const Recording& recording, std::size_t index,
                              const Lane& lane, const ChartView& view) {
    const Colour colour = colour_of(canvas, lane);
    // Columns lie on a grid fixed in time, or the curve would shimmer as it moves along.
    const double column_s = view.span_s / static_cast<double>(box.width());
    const double start_s = std::floor(view.from_s() / column_s) * column_s;
    const auto count = static_cast<std::size_t>(box.width()) + 1;
    fill_columns(recording, index, start_s, start_s + static_cast<double>(count) * column_s, count, columns_);

    upper_.clear();
    lower_.clear();
    const auto flush = [&] {
        if (lane.step_like) {
            std::vector<ImVec2>& base = lower_;
            for (ImVec2& point : base) {
                point.y = box.max.y;
            }
            strip(canvas, upper_, base, faded(colour, kOnFill), faded(colour, kOnFill));
            stroke(canvas, upper_, Line::Detail, colour);
        } else {
            strip(canvas, upper_, lower_, colour, colour);
            stroke(canvas, upper_, Line::Detail, colour);
            stroke(canvas, lower_, Line::Detail, colour);
        }
        upper_.clear();
        lower_.clear();
    };
    for (std::size_t i = 0; i < count; ++i) {
        if (columns_[i].empty()) {
            flush();
            continue;
        }
        Extremes joined = columns_[i];
        if (i > 0 && !columns_[i - 1].empty()) {
            // Reach to the neighbour, so that a jump between two columns shows as a line.
            joined.low = std::min(joined.low, columns_[i - 1].high);
            joined.high = std::max(joined.high, columns_[i - 1].low);
        }
        const float x = x_at(box, view, start_s + (static_cast<double>(i) + 0.5) * column_s);
        upper_.push_back({x, y_at(box, lane, joined.high)});
        lower_.push_back({x, y_at(box, lane, joined.low)});
    }
    flush();
}

/// Where the time of the cursor stands among the times of the axis.
Rect StripChart::cursor_tag(const Canvas& canvas, const Layout& layout, const ChartView& view, double at_s) {
    const float half = text_size(canvas, time_label(at_s), Type::Minimum).x / 2 + canvas.px(6);
    const float middle =
        std::clamp(x_at(layout.plot, view, at_s), layout.plot.min.x + half, layout.plot.max.x - half);
    return {{middle - half, layout.axis.min.y + canvas.px(2)}, {middle + half, layout.axis.max.y}};
}

void StripChart::draw_cursor(const Canvas& canvas, const Layout& layout, const ChartView& view, double at_s,
                             Rect tag) {
    const Theme& theme = *canvas.theme;
    const float x = x_at(layout.plot, view, at_s);
    segment(canvas, {x, layout.plot.min.y}, {x, layout.plot.max.y}, Line::Rule, theme.ink);
    fill(canvas, tag, theme.ink);
    text_in(canvas, tag, time_label(at_s), Type::Minimum, theme.ground, Align::Middle);
}

} // namespace lightoff::trace
