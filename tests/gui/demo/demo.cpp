// SPDX-License-Identifier: MIT
#include "gui/demo/demo.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/trace/ticks.hpp"

#include <array>
#include <cmath>

namespace lightoff::demo {
namespace {

using namespace canvas;
using trace::Event;
using trace::Lane;

constexpr std::string_view kHint =
    "The wheel zooms, dragging looks back, End returns to the newest. The column at the "
    "right shows the value now, or under the pointer.";
constexpr double kSample_s = 0.05;
constexpr std::array<std::string_view, 4> kSpeedNames{"1×", "10×", "60×", "600×"};
constexpr std::array<double, 4> kSpeeds{1, 10, 60, 600};

const std::vector<Lane>& lanes() {
    static const std::vector<Lane> kLanes{
        {"Thermostat", "", 0, 1, 0, true, {"off", "calling"}, Energy::Volts24},
        {"Inducer", "rpm", 0, 4000, 0, false, {}, Energy::Volts120},
        {"Vent pressure", "inwc", -1.5F, 0, 2, false, {}, Energy::Air},
        {"Pressure switch", "", 0, 1, 0, true, {"open", "closed"}, Energy::Volts24},
        {"Igniter", "A", 0, 6, 1, false, {}, Energy::Volts120},
        {"Gas valve", "", 0, 1, 0, true, {"shut", "open"}, Energy::Gas},
        {"Flame current", "µA", 0, 6, 1, false, {}, Energy::Heat},
        {"Supply air", "°F", 60, 140, 0, false, {}, Energy::Heat},
    };
    return kLanes;
}

const std::vector<Event>& events() {
    static const std::vector<Event> kEvents{{10, "call for heat"}, {17, "draft proved"}, {42, "valve opens"},
                                            {44, "flame"},         {74, "blower on"},    {190, "call ends"},
                                            {191, "valve shuts"}};
    return kEvents;
}

float approach(double t_s, double start_s, double tau_s) {
    return t_s < start_s ? 0.0F : static_cast<float>(1 - std::exp(-(t_s - start_s) / tau_s));
}

float window_of(double t_s, double from_s, double to_s) {
    return t_s >= from_s && t_s < to_s ? 1.0F : 0.0F;
}

// ---- the left half: a sheet of samples ----

struct Sheet {
    const Canvas& canvas;
    Rect box;
    float x = 0; // where samples begin, right of their names

    float line(Type type = Type::Secondary) const { return line_height(canvas, type); }
    float heading_height() const { return line(Type::Heading) + canvas.px(6); }
    bool has(float height) const { return box.height() >= height; }
    void heading(std::string_view words) {
        const Rect row = box.cut_top(heading_height());
        text(canvas, row.min, words, Type::Heading, canvas.theme->ink);
    }
    /// A named row; returns the box of its sample.
    Rect row(std::string_view name, float height) {
        Rect row = box.cut_top(height);
        const Rect label = row.cut_left(x);
        text_in(canvas, label, name, Type::Secondary, canvas.theme->ink);
        return row;
    }
    void gap(float design_px) { box.cut_top(canvas.px(design_px)); }
};

void draw_swatches(Sheet& sheet) {
    const Canvas& canvas = sheet.canvas;
    const Theme& theme = *canvas.theme;
    struct Swatch {
        const char* name;
        Colour colour;
    };
    const std::array<Swatch, 6> swatches{{{"ground", theme.ground},
                                          {"panel", theme.panel},
                                          {"ink", theme.ink},
                                          {"pencil", theme.pencil},
                                          {"rule", theme.rule},
                                          {"alarm", theme.alarm}}};
    Rect row = sheet.box.cut_top(sheet.line() * 2 + canvas.px(34));
    const float width = row.width() / static_cast<float>(swatches.size());
    for (const Swatch& swatch : swatches) {
        Rect cell = row.cut_left(width);
        cell.cut_right(canvas.px(8));
        const Rect chip = cell.cut_top(canvas.px(28));
        fill(canvas, chip, swatch.colour);
        outline(canvas, chip, Line::Rule, theme.pencil);
        cell.cut_top(canvas.px(4));
        text_in(canvas, cell.cut_top(sheet.line()), swatch.name, Type::Secondary, theme.ink);
        text_in(canvas, cell.cut_top(sheet.line(Type::Minimum)),
                figure(contrast(swatch.colour, theme.ground), 1) + " : 1", Type::Minimum, theme.pencil);
    }
}

void draw_energies(Sheet& sheet, float phase) {
    const Canvas& canvas = sheet.canvas;
    for (std::size_t i = 0; i < kEnergyCount; ++i) {
        const auto kind = static_cast<Energy>(i);
        const Rect sample = sheet.row(name_of(kind), std::max(sheet.line(), canvas.px(26)));
        const float y = sample.centre().y;
        const float bend = sample.min.x + sample.width() * 0.6F;
        const float drop = canvas.px(7);
        const std::array<ImVec2, 4> path{ImVec2{sample.min.x, y - drop / 2}, ImVec2{bend, y - drop / 2},
                                         ImVec2{bend + drop, y + drop / 2},
                                         ImVec2{sample.max.x, y + drop / 2}};
        energy_path(canvas, path, kind, canvas.theme->ground, phase, 0.7F);
    }
}

void draw_weights(Sheet& sheet) {
    const Canvas& canvas = sheet.canvas;
    constexpr std::array<const char*, 6> kNames{"lead", "silhouette", "outline", "detail", "hidden", "rule"};
    for (std::size_t i = 0; i < kNames.size(); ++i) {
        const Rect sample = sheet.row(kNames[i], sheet.line() + canvas.px(2));
        const float y = std::floor(sample.centre().y) + 0.5F;
        segment(canvas, {sample.min.x, y}, {sample.max.x, y}, static_cast<Line>(i), canvas.theme->ink);
    }
}

void draw_chamber(const Canvas& canvas, Rect box, float phase) {
    const Theme& theme = *canvas.theme;
    fill(canvas, box, theme.chamber);
    canvas.list->PushClipRect(box.min, box.max, true);
    const ImVec2 igniter{box.min.x + box.width() * 0.22F, box.centre().y};
    glow(canvas, igniter, box.height() * 0.62F, theme.igniter, 0.75F);
    const std::array<ImVec2, 4> element{
        igniter + ImVec2{-canvas.px(6), canvas.px(20)}, igniter + ImVec2{-canvas.px(4), -canvas.px(16)},
        igniter + ImVec2{canvas.px(4), -canvas.px(16)}, igniter + ImVec2{canvas.px(6), canvas.px(20)}};
    stroke(canvas, element, Line::Silhouette, mix(theme.igniter, hex(0xFFFFFF), 0.6F));

    std::vector<ImVec2> upper;
    std::vector<ImVec2> lower;
    const float from = box.min.x + box.width() * 0.45F;
    const float length = box.width() * 0.48F;
    for (int i = 0; i <= 40; ++i) {
        const float s = static_cast<float>(i) / 40;
        const float half =
            box.height() * 0.22F * std::pow(1 - s, 0.7F) * (0.35F + 1.3F * std::min(1.0F, s * 5));
        const float sway = canvas.px(2) * s * std::sin(phase * 0.2F + s * 9);
        upper.push_back({from + length * s, box.centre().y - half + sway});
        lower.push_back({from + length * s, box.centre().y + half + sway});
    }
    glow(canvas, {from + length * 0.35F, box.centre().y}, box.height() * 0.6F, theme.blue_flame, 0.3F);
    strip(canvas, upper, lower, faded(theme.blue_flame, 0.55F), faded(theme.blue_flame, 0.55F));
    stroke(canvas, upper, Line::Detail, theme.blue_flame);
    stroke(canvas, lower, Line::Detail, theme.blue_flame);
    canvas.list->PopClipRect();
    outline(canvas, box, Line::Outline, theme.ink);
}

void draw_leads(const Canvas& canvas, Rect box) {
    const Theme& theme = *canvas.theme;
    fill(canvas, box, theme.panel);
    const std::array<ImVec2, 2> first{box.min + ImVec2{0, canvas.px(12)}, box.max - ImVec2{0, canvas.px(12)}};
    const std::array<ImVec2, 2> second{ImVec2{box.min.x, box.max.y - canvas.px(12)},
                                       ImVec2{box.max.x, box.min.y + canvas.px(12)}};
    canvas.list->PushClipRect(box.min, box.max, true);
    lead(canvas, first, theme.ink, theme.panel);
    lead(canvas, second, theme.alarm, theme.panel);
    canvas.list->PopClipRect();
    outline(canvas, box, Line::Rule, theme.pencil);
}

void draw_dirt(const Canvas& canvas, Rect row) {
    const float width = row.width() / 6;
    for (int step = 0; step <= 5; ++step) {
        Rect cell = row.cut_left(width);
        cell.cut_right(canvas.px(6));
        stipple(canvas, cell, step, canvas.theme->ink);
        outline(canvas, cell, Line::Rule, canvas.theme->pencil);
    }
}

/// Each part appears whole or not at all, as the room allows.
void draw_sheet(const Canvas& canvas, Rect box, float phase) {
    Sheet sheet{canvas, box};
    sheet.x = text_size(canvas, "silhouette", Type::Secondary).x + canvas.px(18);
    if (sheet.has(sheet.heading_height() + sheet.line() * 2 + canvas.px(34))) {
        sheet.heading("Colours");
        draw_swatches(sheet);
        sheet.gap(10);
    }
    if (sheet.has(sheet.heading_height() + 5 * std::max(sheet.line(), canvas.px(26)))) {
        sheet.heading("Energy");
        draw_energies(sheet, phase);
        sheet.gap(10);
    }
    if (sheet.has(sheet.heading_height() + 6 * (sheet.line() + canvas.px(2)))) {
        sheet.heading("Lines");
        draw_weights(sheet);
        sheet.gap(12);
    }
    if (sheet.has(canvas.px(96))) {
        Rect row = sheet.box.cut_top(canvas.px(96));
        draw_chamber(canvas, row.cut_left(row.width() * 0.6F), phase);
        row.cut_left(canvas.px(12));
        draw_leads(canvas, row);
        sheet.gap(12);
    }
    if (sheet.has(canvas.px(30))) {
        draw_dirt(canvas, sheet.row("dirt", canvas.px(30)));
        sheet.gap(8);
    }
    if (sheet.has(canvas.px(30))) {
        const Rect stale = sheet.row("stale", canvas.px(30));
        hatch(canvas, stale, canvas.theme->pencil);
        outline(canvas, stale, Line::Rule, canvas.theme->pencil);
    }
}

void draw_meter(const Canvas& canvas, Rect box) {
    const Theme& theme = *canvas.theme;
    fill(canvas, box, theme.panel);
    outline(canvas, box, Line::Detail, theme.ink);
    if (canvas.probe != nullptr) {
        canvas.probe->add_box(box, "meter");
    }
    Rect inner = box.shrunk(canvas.px(12));
    text(canvas, inner.min, "red on W, black on C", Type::Minimum, theme.pencil);
    text_in(canvas, {{inner.min.x, inner.max.y - line_height(canvas, Type::Display)}, inner.max}, "24.6 V",
            Type::Display, theme.ink, Align::End);
}

} // namespace

Demo::Demo(double history_s) : recording_(lanes().size()) {
    while (now_s_ < history_s) {
        sample(now_s_);
        now_s_ += kSample_s;
    }
}

void Demo::set_look(ThemeId theme, float text_percent) {
    wishes_.theme = theme;
    wishes_.text_percent = text_percent;
}

void Demo::sample(double t_s) {
    const auto ripple = static_cast<float>(std::sin(t_s * 37) * std::sin(t_s * 11.3));
    const float call = window_of(t_s, 10, 190);
    const float inducer = approach(t_s, 10.5, 1.5) * (1 - approach(t_s, 205, 4));
    const float flame = window_of(t_s, 44, 191);
    const float supply = approach(t_s, 60, 30) * (1 - approach(t_s, 195, 40));
    const std::array<float, 8> values{call,
                                      3350 * inducer + 25 * ripple * inducer,
                                      -1.05F * inducer * inducer + 0.04F * ripple,
                                      window_of(t_s, 17, 207),
                                      t_s < 20 || t_s > 48 ? 0 : 4.1F + 1.2F * (1 - approach(t_s, 20, 6)),
                                      window_of(t_s, 42, 191),
                                      flame * (3.4F + 0.3F * ripple),
                                      68 + 57 * supply + 0.4F * ripple};
    recording_.append(t_s, values);
}

void Demo::frame(const platform::FrameInput& input) {
    if (!paused_) {
        const double until_s = now_s_ + input.wall_delta_s * kSpeeds[speed_];
        for (; now_s_ < until_s; now_s_ += kSample_s) {
            sample(now_s_);
        }
    }
    wishes_.next_frame_in_s = paused_ ? 1e9 : 0;
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(input.size);
    ImGui::Begin("page", nullptr, kPage);
    draw(input.canvas.here(), {{0, 0}, input.size});
    ImGui::End();
}

void Demo::draw(const Canvas& canvas, Rect page) {
    Rect rest = page.shrunk(canvas.px(20));
    draw_header(canvas, rest.cut_top(control_height(canvas)));
    rest.cut_top(canvas.px(16));
    if (rest.width() >= canvas.px(1150)) { // on a narrower page the recorder has it all
        draw_sheet(canvas, rest.cut_left(canvas.px(460)), static_cast<float>(now_s_) * 30);
        rest.cut_left(canvas.px(32));
    }
    draw_recorder(canvas, rest);
}

void Demo::draw_header(const Canvas& canvas, Rect box) {
    const Rect speeds{{box.max.x - choice_width(canvas, kSpeedNames), box.min.y}, box.max};
    speed_ = choice(canvas, speeds, kSpeedNames, speed_);
    Rect left{box.min, {speeds.min.x - canvas.px(16), box.max.y}};
    if (button(canvas, left.cut_right(button_width(canvas, "Run on")),
               paused_ ? "Run on##run" : "Pause##run")) {
        paused_ = !paused_;
    }
    left.cut_right(canvas.px(16));
    text_in(canvas, left.cut_right(text_size(canvas, "0:00:00", Type::Body).x), trace::time_label(now_s_),
            Type::Body, canvas.theme->ink, Align::End);
    if (left.width() >= text_size(canvas, "Drawing sheet", Type::Title).x) {
        text_in(canvas, left, "Drawing sheet", Type::Title, canvas.theme->ink);
    }
}

void Demo::draw_recorder(const Canvas& canvas, Rect box) {
    if (box.height() >= canvas.px(420)) {
        Rect meter = box.cut_bottom(line_height(canvas, Type::Display) + line_height(canvas, Type::Minimum) +
                                    canvas.px(28));
        box.cut_bottom(canvas.px(14));
        draw_meter(canvas, meter.cut_left(std::min(meter.width(), canvas.px(260))));
        meter.cut_left(canvas.px(24));
        paragraph(canvas, meter.min, meter.width(), kHint, Type::Secondary, canvas.theme->pencil);
    }
    chart_.draw(canvas, box, recording_, lanes(), events(), view_);
}

} // namespace lightoff::demo
