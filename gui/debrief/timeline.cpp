// SPDX-License-Identifier: MIT
#include "gui/debrief/timeline.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/debrief/keys.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::debrief {
namespace {

using namespace canvas;
using platform::Key;

constexpr std::array<const char*, 4> kRowNames{"did", "read", "noticed", "hazards"};
constexpr double kSecond = 1.0;
constexpr float kPickerShare = 0.26F, kLeastPicker = 240; ///< of the width; design pixels

float row_height(const Canvas& canvas) {
    return line_height(canvas, Type::Minimum) + canvas.px(5);
}

/// From seconds to the chart's own x, so that rows and curves stand one above the other.
struct TimeScale {
    Rect plot;
    const trace::ChartView& view;
    [[nodiscard]] float x(double s) const {
        return plot.min.x + static_cast<float>((s - view.from_s()) / view.span_s) * plot.width();
    }
    [[nodiscard]] bool shows(float at) const { return at >= plot.min.x - 1 && at <= plot.max.x + 1; }
    [[nodiscard]] double seconds(float at) const {
        return view.from_s() + static_cast<double>((at - plot.min.x) / plot.width()) * view.span_s;
    }
};

void tick_mark(const Canvas& canvas, float x, Rect row, Colour colour) {
    segment(canvas, {x, row.min.y + canvas.px(4)}, {x, row.max.y - canvas.px(3)}, Line::Detail, colour);
}

void draw_done(const Canvas& canvas, Rect row, const Model& model, const TimeScale& scale) {
    for (const lesson::Log::Entry& entry : model.story().film.entries()) {
        const float x = scale.x(model.seconds(entry.tick));
        if (entry.action.verb != bench::Verb::wait && scale.shows(x))
            tick_mark(canvas, x, row, canvas.theme->ink);
    }
}

/// Their numbers, as long as each has room, on the ground even where the line of the moment looked at runs.
void draw_read(const Canvas& canvas, Rect row, const Model& model, const TimeScale& scale) {
    float free_from = row.min.x - canvas.px(8); // the first may stand over the left edge
    const auto& readings = model.story().readings;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const float x = scale.x(model.seconds(readings[i].tick));
        if (!scale.shows(x))
            continue;
        const std::string number = std::to_string(i + 1);
        const float half = text_size(canvas, number, Type::Minimum).x / 2;
        const bool fits = x - half >= free_from && x + half <= row.max.x;
        if (fits) {
            const Rect box{{x - half - 1, row.min.y}, {x + half + 1, row.max.y}};
            fill(canvas, {box.min - ImVec2{canvas.px(2), -1}, box.max + ImVec2{canvas.px(2), -1}},
                 canvas.theme->ground);
            text_in(canvas, box, number, Type::Minimum, canvas.theme->ink, Align::Middle);
            free_from = x + half + canvas.px(4);
        } else if (x > free_from) {
            segment(canvas, {x, row.max.y - canvas.px(6)}, {x, row.max.y - canvas.px(2)}, Line::Detail,
                    canvas.theme->ink);
        }
    }
}

void draw_noticed(const Canvas& canvas, Rect row, const Model& model, const TimeScale& scale) {
    for (const bench::Caption& caption : model.story().captions) {
        const float x = scale.x(model.seconds(caption.tick));
        if (caption.about != bench::About::hands && caption.about != bench::About::window && scale.shows(x))
            tick_mark(canvas, x, row, canvas.theme->pencil);
    }
}

/// Wedges: their shape tells them from marks without colour.
void draw_hazards(const Canvas& canvas, Rect row, const Model& model, const TimeScale& scale) {
    for (const bench::HazardEvent& event : model.story().hazards) {
        const float x = scale.x(model.seconds(event.tick));
        if (!scale.shows(x))
            continue;
        const float half = canvas.px(6);
        canvas.list->AddTriangleFilled({x, row.min.y + canvas.px(3)}, {x + half, row.max.y - canvas.px(3)},
                                       {x - half, row.max.y - canvas.px(3)}, packed(canvas.theme->alarm));
    }
}

void draw_rows(const Canvas& canvas, Rect rows, const Model& model, DebriefView& view,
               const TimeScale& scale) {
    const Theme& theme = *canvas.theme;
    using Draw = void (*)(const Canvas&, Rect, const Model&, const TimeScale&);
    constexpr std::array<Draw, 4> kDraw{draw_done, draw_read, draw_noticed, draw_hazards};
    const float now = scale.x(model.seconds(view.tick));
    if (scale.shows(now)) // below all marks and numbers
        segment(canvas, {now, rows.min.y}, {now, rows.max.y}, Line::Rule, theme.ink);
    Rect rest = rows;
    for (std::size_t i = 0; i < kDraw.size(); ++i) {
        const Rect row = rest.cut_top(row_height(canvas));
        segment(canvas, {rows.min.x, row.max.y}, {rows.max.x, row.max.y}, Line::Rule,
                mix(theme.ground, theme.rule, 0.6F));
        text_in(canvas, {row.min, {scale.plot.min.x, row.max.y}}, kRowNames[i], Type::Secondary, theme.ink);
        kDraw[i](canvas, {{scale.plot.min.x, row.min.y}, {scale.plot.max.x, row.max.y}}, model, scale);
    }
    if (view.knew_tick) { // their own mark: a stem with a flag, in ink
        const float x = scale.x(model.seconds(*view.knew_tick));
        const float flag = canvas.px(9);
        if (scale.shows(x)) {
            segment(canvas, {x, rows.min.y}, {x, rows.max.y}, Line::Outline, theme.ink);
            canvas.list->AddTriangleFilled({x, rows.min.y}, {x + flag, rows.min.y + flag / 2},
                                           {x, rows.min.y + flag}, packed(theme.ink));
        }
    }
}

void press_rows(Rect rows, const Model& model, DebriefView& view, const TimeScale& scale) {
    const Rect paper{{scale.plot.min.x, rows.min.y}, {scale.plot.max.x, rows.max.y}};
    ImGui::SetCursorScreenPos(paper.min);
    press_area("what happened", paper);
    if (ImGui::IsItemActive())
        view.tick = model.tick_at(scale.seconds(ImGui::GetIO().MousePos.x));
}

/// Ticks of everything that stands in a row, in order.
std::vector<std::uint64_t> things_of(const Model& model) {
    std::vector<std::uint64_t> ticks;
    for (const lesson::Log::Entry& entry : model.story().film.entries())
        ticks.push_back(entry.tick);
    for (const bench::Reading& reading : model.story().readings)
        ticks.push_back(reading.tick);
    for (const bench::HazardEvent& event : model.story().hazards)
        ticks.push_back(event.tick);
    std::sort(ticks.begin(), ticks.end());
    return ticks;
}

void step(const Model& model, DebriefView& view, bool forward) {
    if (!ImGui::GetIO().KeyShift) {
        const double s = model.seconds(view.tick) + (forward ? kSecond : -kSecond);
        view.tick = model.tick_at(std::max(0.0, s));
        return;
    }
    const std::vector<std::uint64_t> things = things_of(model);
    if (forward) {
        const auto next = std::upper_bound(things.begin(), things.end(), view.tick);
        view.tick = next == things.end() ? model.story().last_tick : *next;
    } else {
        const auto here = std::lower_bound(things.begin(), things.end(), view.tick);
        view.tick = here == things.begin() ? model.story().arrived_tick : *(here - 1);
    }
}

} // namespace

float rows_height(const Canvas& canvas) {
    return static_cast<float>(kRowNames.size()) * row_height(canvas);
}

void scrub_by_keys(const Model& model, DebriefView& view) {
    if (page_key(Key::Left))
        step(model, view, false);
    if (page_key(Key::Right))
        step(model, view, true);
    if (page_key(Key::Home))
        view.tick = model.story().arrived_tick;
    if (page_key(Key::End))
        view.tick = model.story().last_tick;
}

void draw_timeline(const Canvas& canvas, Rect area, const Model& model, DebriefView& view) {
    if (view.picker.open) {
        const float wide = std::max(canvas.px(kLeastPicker), std::round(area.width() * kPickerShare));
        explore::draw_lane_picker(canvas, area.cut_right(wide), model.lanes, model.lane_groups, view.picker);
        area.cut_right(canvas.px(14));
    }
    const Rect rows = area.cut_top(rows_height(canvas));
    trace::ChartView& paper = view.chart_view;
    // The paper never shows more than there is.
    paper.span_s = std::min(paper.span_s, model.length_s());
    paper.end_s = std::clamp(paper.end_s, paper.span_s, model.length_s());
    paper.follow = false;
    paper.marker_s = model.seconds(view.tick);
    const std::vector<trace::Lane> lanes =
        explore::chosen_lanes(model.lanes, view.picker, model.recording, nullptr);
    view.chart.draw(canvas, area, model.recording, lanes, model.flags, paper);
    view.tick = model.tick_at(paper.marker_s.value_or(0.0));
    const TimeScale scale{view.chart.plot(), paper};
    draw_rows(canvas, rows, model, view, scale);
    press_rows(rows, model, view, scale);
}

} // namespace lightoff::debrief
