// SPDX-License-Identifier: MIT
#include "gui/debrief/stairs.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/trace/ticks.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::debrief {
namespace {

using namespace canvas;

constexpr const char* kHeightName = "causes still fitting";
constexpr float kLeastNamed = 110; ///< design pixels of height that leave room for the name of the axis

/// Until everything that decides has happened; the long tail of a run as left shows nothing.
double decided_s(const Model& model, const DebriefView& view) {
    const lesson::Debrief& debrief = model.debrief;
    double s = debrief.knew ? model.seconds(debrief.knew->tick) : model.length_s();
    if (!debrief.story.changes.empty())
        s = std::max(s, model.seconds(debrief.story.changes.front().tick));
    if (!debrief.coach.empty())
        s = std::max(s, 60.0 * debrief.coach.back().minutes);
    if (view.knew_tick)
        s = std::max(s, model.seconds(*view.knew_tick));
    return std::clamp(1.15 * s, 60.0, std::max(60.0, model.length_s()));
}

struct Axes {
    Rect plot;
    double length_s = 60;
    std::size_t most = 2;

    [[nodiscard]] float x(double s) const {
        return plot.min.x + plot.width() * static_cast<float>(std::clamp(s / length_s, 0.0, 1.0));
    }
    /// Halvings look alike, wherever they come.
    [[nodiscard]] float y(std::size_t causes) const {
        const float all = std::log2(static_cast<float>(std::max<std::size_t>(2, most)));
        return plot.max.y -
               plot.height() * std::log2(static_cast<float>(std::max<std::size_t>(1, causes))) / all;
    }
};

void draw_axes(const Canvas& canvas, const Axes& axes) {
    const Theme& theme = *canvas.theme;
    const Colour faint = mix(theme.ground, theme.rule, 0.5F);
    const float line = line_height(canvas, Type::Minimum);
    float free_above = axes.plot.max.y + line;
    for (const std::size_t n : {1U, 2U, 5U, 10U, 20U, 50U, 100U, 200U}) {
        if (n > axes.most)
            break;
        const float y = axes.y(n);
        segment(canvas, {axes.plot.min.x, y}, {axes.plot.max.x, y}, Line::Rule, faint);
        if (free_above - y < line)
            continue;
        text(canvas, {axes.plot.min.x - canvas.px(8), y - line / 2}, std::to_string(n), Type::Minimum,
             theme.pencil, Align::End);
        free_above = y;
    }
    const int most = std::max(2, static_cast<int>(axes.plot.width() / canvas.px(84)));
    const double step_s = trace::time_step(axes.length_s, most);
    for (const double s : trace::marks(0, axes.length_s, step_s)) {
        const float x = axes.x(s);
        segment(canvas, {x, axes.plot.min.y}, {x, axes.plot.max.y}, Line::Rule, faint);
        text(canvas, {x, axes.plot.max.y + canvas.px(5)}, trace::time_label(s, step_s), Type::Minimum,
             theme.pencil, Align::Middle);
    }
    segment(canvas, {axes.plot.min.x, axes.plot.max.y}, axes.plot.max, Line::Rule, theme.pencil);
}

class Stairs {
public:
    explicit Stairs(ImVec2 from) : points_{from} {}
    void step(float x, float y) {
        // No point twice: a stroke has no direction there.
        for (const ImVec2 next : {ImVec2{x, points_.back().y}, ImVec2{x, y}})
            if (next.x != points_.back().x || next.y != points_.back().y)
                points_.push_back(next);
    }
    [[nodiscard]] const std::vector<ImVec2>& points() const { return points_; }

private:
    std::vector<ImVec2> points_;
};

std::size_t left_at(const lesson::Debrief& debrief, std::uint64_t tick) {
    std::size_t left = debrief.fitting_on_arrival;
    for (const evidence::Step& step : debrief.grade.staircase)
        if (step.tick <= tick)
            left = step.still_fitting;
    return left;
}

void draw_lines(const Canvas& canvas, const Axes& axes, const Model& model) {
    const lesson::Debrief& debrief = model.debrief;
    const ImVec2 start{axes.plot.min.x, axes.y(debrief.fitting_on_arrival)};
    if (!debrief.coach.empty()) {
        Stairs coach(start);
        for (const lesson::CoachStep& step : debrief.coach)
            coach.step(axes.x(60 * step.minutes), axes.y(step.still_fitting));
        dashed(canvas, coach.points(), line_width(canvas, Line::Outline), canvas.theme->pencil, canvas.px(7),
               canvas.px(5));
    }
    Stairs theirs(start);
    for (const evidence::Step& step : debrief.grade.staircase)
        if (model.seconds(step.tick) <= axes.length_s)
            theirs.step(axes.x(model.seconds(step.tick)), axes.y(step.still_fitting));
    theirs.step(axes.plot.max.x, theirs.points().back().y);
    stroke(canvas, theirs.points(), Line::Silhouette, canvas.theme->ink);
}

void circle(const Canvas& canvas, ImVec2 at) {
    const float r = canvas.px(6);
    canvas.list->AddCircleFilled(at, r, packed(canvas.theme->ground));
    canvas.list->AddCircle(at, r, packed(canvas.theme->ink), 0, line_width(canvas, Line::Outline));
}
void wedge(const Canvas& canvas, ImVec2 foot) {
    const float half = canvas.px(6);
    canvas.list->AddTriangleFilled({foot.x, foot.y - 2 * half}, {foot.x + half, foot.y},
                                   {foot.x - half, foot.y}, packed(canvas.theme->ink));
}
void flag(const Canvas& canvas, float x, float top, float bottom) {
    const float size = canvas.px(9);
    segment(canvas, {x, top}, {x, bottom}, Line::Outline, canvas.theme->ink);
    canvas.list->AddTriangleFilled({x, top}, {x + size, top + size / 2}, {x, top + size},
                                   packed(canvas.theme->ink));
}

void draw_marks(const Canvas& canvas, const Axes& axes, const Model& model, const DebriefView& view) {
    const lesson::Debrief& debrief = model.debrief;
    for (const lesson::ChangeMade& change : debrief.story.changes)
        if (model.seconds(change.tick) <= axes.length_s)
            wedge(canvas, {axes.x(model.seconds(change.tick)), axes.plot.max.y});
    if (view.knew_tick)
        flag(canvas, axes.x(model.seconds(*view.knew_tick)), axes.plot.min.y, axes.plot.max.y);
    if (debrief.knew)
        circle(canvas,
               {axes.x(model.seconds(debrief.knew->tick)), axes.y(left_at(debrief, debrief.knew->tick))});
    const float now = axes.x(model.seconds(view.tick));
    if (model.seconds(view.tick) <= axes.length_s)
        segment(canvas, {now, axes.plot.min.y}, {now, axes.plot.max.y}, Line::Rule, canvas.theme->ink);
}

/// What lines and marks are: each drawn before its words. Returns the height taken.
float draw_key(const Canvas& canvas, Rect area, const Model& model, const DebriefView& view) {
    struct Entry {
        const char* words;
        int mark;
        bool shown;
    };
    const std::array<Entry, 5> entries{{{"yours", 0, true},
                                        {"the coach's", 1, !model.debrief.coach.empty()},
                                        {"only the cause left", 2, model.debrief.knew.has_value()},
                                        {"something changed", 3, !model.story().changes.empty()},
                                        {"your mark", 4, view.knew_tick.has_value()}}};
    const float line = line_height(canvas, Type::Secondary) + canvas.px(4);
    const float mark = canvas.px(26);
    const Theme& theme = *canvas.theme;
    ImVec2 at = area.min;
    for (const Entry& entry : entries) {
        if (!entry.shown)
            continue;
        const float width =
            mark + canvas.px(6) + text_size(canvas, entry.words, Type::Secondary).x + canvas.px(20);
        if (at.x > area.min.x && at.x + width - canvas.px(20) > area.max.x)
            at = {area.min.x, at.y + line};
        const float y = at.y + line / 2;
        const std::array<ImVec2, 2> stretch{ImVec2{at.x, y}, ImVec2{at.x + mark, y}};
        if (entry.mark == 0)
            stroke(canvas, stretch, Line::Silhouette, theme.ink);
        else if (entry.mark == 1)
            dashed(canvas, stretch, line_width(canvas, Line::Outline), theme.pencil, canvas.px(7),
                   canvas.px(5));
        else if (entry.mark == 2)
            circle(canvas, {at.x + mark / 2, y});
        else if (entry.mark == 3)
            wedge(canvas, {at.x + mark / 2, y + canvas.px(6)});
        else
            flag(canvas, at.x + mark / 2, at.y + canvas.px(3), at.y + line - canvas.px(3));
        text(canvas, {at.x + mark + canvas.px(6), at.y + canvas.px(2)}, entry.words, Type::Secondary,
             theme.ink);
        at.x += width;
    }
    return at.y + line - area.min.y;
}

} // namespace

void draw_stairs(const Canvas& canvas, Rect area, const Model& model, DebriefView& view) {
    area.cut_top(draw_key(canvas, area, model, view) + canvas.px(6));
    Axes axes;
    axes.most = std::max<std::size_t>(2, model.debrief.fitting_on_arrival);
    axes.length_s = decided_s(model, view);
    axes.plot = area;
    axes.plot.min.x += text_size(canvas, "100", Type::Minimum).x + canvas.px(10);
    axes.plot.min.y += canvas.px(8);
    const float line = line_height(canvas, Type::Minimum);
    const bool named = area.height() > canvas.px(kLeastNamed);
    if (named)
        axes.plot.min.y += line;
    axes.plot.max.x -= canvas.px(22);
    axes.plot.max.y -= line + canvas.px(8);
    if (axes.plot.height() < canvas.px(40) || axes.plot.width() < canvas.px(80))
        return;
    if (named)
        text(canvas, area.min, kHeightName, Type::Minimum, canvas.theme->pencil);
    draw_axes(canvas, axes);
    draw_lines(canvas, axes, model);
    draw_marks(canvas, axes, model, view);
    ImGui::SetCursorScreenPos(axes.plot.min);
    press_area("stairs", axes.plot);
    if (ImGui::IsItemActive()) {
        const float share = (ImGui::GetIO().MousePos.x - axes.plot.min.x) / axes.plot.width();
        view.tick = model.tick_at(axes.length_s * static_cast<double>(std::clamp(share, 0.0F, 1.0F)));
    }
}

} // namespace lightoff::debrief
