// SPDX-License-Identifier: MIT
#include "gui/instruments/draw.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/strokes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace lightoff::faces {

using namespace canvas;

namespace {

constexpr float kPi = 3.14159265F;

void text_at(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour colour,
             Align align = Align::Start) {
    if (!words.empty()) {
        text(canvas, at, words, type, colour, align);
    }
}

/// Space above the capitals of a line: big and small figures stand on one base line by it.
float base_of(const Canvas& canvas, Type type) {
    return line_height(canvas, type) * 0.78F;
}

/// Number and unit on one base line, ending at `right`; the unit under the number where they do not fit.
/// Returns the height that they take; draws nothing where `draw` is false.
float figure_block(const Canvas& canvas, Rect room, const sheet::Figure& figure, Type big, Type small,
                   bool draw) {
    for (const Type smaller : {Type::Title, Type::Heading}) { // big letters in a narrow rack
        if (text_size(canvas, figure.number, big).x > room.width()) {
            big = smaller;
        }
    }
    const Colour ink = canvas.theme->ink;
    const ImVec2 number = text_size(canvas, figure.number, big);
    const ImVec2 unit = text_size(canvas, figure.unit, small);
    const float between = figure.unit.empty() ? 0 : canvas.px(8);
    const bool beside = number.x + between + unit.x <= room.width();
    const float height = line_height(canvas, big) + (beside || figure.unit.empty() ? 0 : unit.y);
    if (!draw) {
        return height;
    }
    if (beside) {
        text_at(canvas, {room.max.x - unit.x - between, room.min.y}, figure.number, big, ink, Align::End);
        text_at(canvas, {room.max.x, room.min.y + base_of(canvas, big) - base_of(canvas, small)}, figure.unit,
                small, ink, Align::End);
    } else {
        text_at(canvas, {room.max.x, room.min.y}, figure.number, big, ink, Align::End);
        text_at(canvas, {room.max.x, room.min.y + line_height(canvas, big)}, figure.unit, small, ink,
                Align::End);
    }
    return height;
}

void draw_sunk_box(const Canvas& canvas, Rect box) {
    fill(canvas, box, canvas.theme->panel);
    outline(canvas, box, Line::Outline, canvas.theme->ink);
    if (canvas.probe != nullptr) {
        canvas.probe->add_box(box, "a window");
    }
}

/// The two seconds for which a number must stand, as a rule that fills.
void draw_settling(const Canvas& canvas, Rect bar, float settled) {
    const Theme& theme = *canvas.theme;
    const float full = std::clamp(settled, 0.0F, 1.0F);
    const float y = std::round(bar.max.y);
    fill(canvas, {{bar.min.x, bar.min.y}, {bar.min.x + bar.width() * full, y}}, theme.ink);
    segment(canvas, {bar.min.x, y}, {bar.max.x, y}, Line::Rule, theme.ink);
    for (int i = 0; i <= 4; ++i) { // half seconds
        const float x = std::round(bar.min.x + bar.width() * static_cast<float>(i) / 4);
        segment(canvas, {x, y - (i % 2 == 0 ? bar.height() + canvas.px(3) : bar.height() * 0.6F)}, {x, y},
                Line::Rule, theme.ink);
    }
}

std::string state_words(const Pane& pane) {
    std::string words = pane.state;
    if (!pane.beep.empty()) {
        words += (words.empty() ? "" : ", ") + pane.beep;
    }
    return words;
}

/// Height of everything in a window that is `wide` inside, and with `draw` the drawing of it.
float window_block(const Canvas& canvas, Rect room, const Pane& pane, Type big, Type small, bool draw) {
    const Theme& theme = *canvas.theme;
    const float top = room.min.y;
    const auto line = [&](std::string_view words, Colour colour) {
        if (words.empty()) {
            return;
        }
        const float height = text_size(canvas, words, Type::Secondary, room.width()).y;
        if (draw) {
            paragraph(canvas, room.min, room.width(), words, Type::Secondary, colour);
        }
        room.min.y += height;
    };
    line(pane.label.empty() || pane.mode.empty() ? pane.label + pane.mode : pane.label + ", " + pane.mode,
         theme.pencil);
    const bool off = pane.figure.number.empty();
    room.min.y += figure_block(canvas, room, off ? sheet::Figure{"–", ""} : pane.figure, off ? small : big,
                               small, draw);
    if (off) {
        room.min.y += line_height(canvas, big) - line_height(canvas, small); // it keeps its height
    }
    line(pane.in_si, theme.ink);
    if (pane.settled >= 0) {
        room.min.y += canvas.px(6);
        const float height = std::round(canvas.px(5));
        if (draw) {
            draw_settling(canvas, {room.min, {room.max.x, room.min.y + height}}, pane.settled);
        }
        room.min.y += height + canvas.px(3);
    }
    line(state_words(pane).empty() ? " " : state_words(pane), pane.alarm ? theme.alarm : theme.pencil);
    return room.min.y - top;
}

Rect inside(const Canvas& canvas, Rect box) {
    const float side = canvas.px(box.width() < canvas.px(200) ? 8 : 12);
    return {{box.min.x + side, box.min.y + canvas.px(8)}, {box.max.x - side, box.max.y - canvas.px(8)}};
}

} // namespace

void draw_plate(const Canvas& canvas, Rect plate) {
    const float cut = canvas.px(18);
    const std::array<ImVec2, 5> edge{plate.min, ImVec2{plate.max.x - cut, plate.min.y},
                                     ImVec2{plate.max.x, plate.min.y + cut}, plate.max,
                                     ImVec2{plate.min.x, plate.max.y}};
    stroke(canvas, edge, Line::Outline, canvas.theme->ink, true);
}

void draw_window(Column& column, const Pane& pane) {
    const Canvas& canvas = column.canvas();
    const Rect probe = inside(canvas, {{column.left(), 0}, {column.right(), 0}});
    Canvas silent = canvas;
    silent.probe = nullptr;
    const float height =
        window_block(silent, {probe.min, {probe.max.x, 0}}, pane, Type::Display, Type::Heading, false);
    const Rect box = column.take(height + 2 * canvas.px(8));
    const Canvas here = column.canvas_for(box);
    draw_sunk_box(here, box);
    window_block(here, inside(canvas, box), pane, Type::Display, Type::Heading, true);
    column.gap(8);
}

void draw_small_windows(Column& column, std::span<const Pane> panes) {
    const Canvas& canvas = column.canvas();
    const float gap = std::round(canvas.px(8));
    const float least = canvas.px(168);
    const auto most = static_cast<std::size_t>(std::max(1.0F, (column.width() + gap) / (least + gap)));
    const std::size_t across = std::min(most, panes.size());
    const float wide = std::floor((column.width() + gap) / static_cast<float>(across) - gap);
    for (std::size_t first = 0; first < panes.size(); first += across) {
        const std::size_t last = std::min(panes.size(), first + across);
        float height = 0;
        for (std::size_t i = first; i < last; ++i) {
            const Rect room = inside(canvas, {{0, 0}, {wide, 0}});
            height = std::max(height, window_block(canvas, room, panes[i], Type::Title, Type::Body, false));
        }
        const Rect row = column.take(height + 2 * canvas.px(8));
        const Canvas here = column.canvas_for(row);
        for (std::size_t i = first; i < last; ++i) {
            const Rect box = rect_at({row.min.x + static_cast<float>(i - first) * (wide + gap), row.min.y},
                                     {wide, row.height()});
            draw_sunk_box(here, box);
            window_block(here, inside(canvas, box), panes[i], Type::Title, Type::Body, true);
        }
        column.gap(8);
    }
}

namespace {

/// Where the pieces of a connection stand.
struct ConnectionLayout {
    float radius = 0, line_from = 0, line_to = 0, words_from = 0, words_wide = 0;
    ImVec2 words, hand; // sizes
    bool hand_beside = false;
    bool words_below = false; // of ring and lead, where the rack is too narrow for words beside them
    float lead_high = 0;
    float height = 0;
};

ConnectionLayout lay_out(const Column& column, const Connection& one) {
    const Canvas& canvas = column.canvas();
    ConnectionLayout at;
    const float letter = text_size(canvas, one.letter, Type::Minimum).x;
    at.radius = std::round(std::max(canvas.px(13), letter / 2 + canvas.px(6)));
    at.line_from = 2 * at.radius + canvas.px(14);
    at.line_to = at.line_from + canvas.px(32);
    at.words_from = at.line_to + canvas.px(12);
    at.hand = text_size(canvas, one.hand, Type::Secondary) + ImVec2{canvas.px(16), canvas.px(6)};
    at.words_below = column.width() - at.words_from < canvas.px(130);
    if (at.words_below) {
        at.line_to = std::clamp(column.width() - at.hand.x - canvas.px(20), at.line_from, at.line_to);
    }
    const float room = column.width() - (at.words_below ? 0 : at.words_from) - canvas.px(6);
    at.hand_beside = at.words_below || room - at.hand.x - canvas.px(12) >= canvas.px(120);
    at.words_wide = at.hand_beside && !at.words_below ? room - at.hand.x - canvas.px(12) : room;
    at.words = text_size(canvas, one.words, Type::Body, at.words_wide);
    const float words_high = at.words.y + (at.hand_beside ? 0 : at.hand.y + canvas.px(4));
    at.lead_high = std::max(2 * at.radius, at.hand_beside ? at.hand.y : 0.0F) + canvas.px(8);
    at.height = at.words_below ? at.lead_high + words_high + canvas.px(6)
                               : std::max(at.lead_high, words_high) + canvas.px(4);
    return at;
}

/// Ring, lead and its tip.
void draw_lead(const Canvas& canvas, Rect box, const Connection& one, const ConnectionLayout& at,
               Colour beneath) {
    const Theme& theme = *canvas.theme;
    const Colour colour = one.red ? theme.alarm : theme.ink;
    const float y = std::round(box.centre().y);
    const ImVec2 ring{box.min.x + at.radius + canvas.px(6), y};
    const float sag = one.placed ? 0 : canvas.px(9);
    std::vector<ImVec2> wire;
    for (int i = 0; i <= 12; ++i) {
        const float share = static_cast<float>(i) / 12;
        wire.push_back(
            {box.min.x + at.line_from + (at.line_to - at.line_from) * share, y + sag * share * share});
    }
    lead(canvas, wire, colour, beneath);
    canvas.list->AddCircleFilled(ring, at.radius, packed(theme.ground));
    canvas.list->AddCircle(ring, at.radius, packed(colour), 0, line_width(canvas, Line::Outline));
    if (one.placed) { // a tip that stands on something
        canvas.list->AddCircleFilled({box.min.x + at.line_to, y}, canvas.px(5), packed(colour));
    }
    text(canvas, {ring.x, ring.y - line_height(canvas, Type::Minimum) / 2}, one.letter, Type::Minimum,
         theme.ink, Align::Middle);
}

} // namespace

sheet::Touch draw_connection(Column& column, const Connection& one) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    const ConnectionLayout at = lay_out(column, one);
    const Rect box = column.take(at.height);
    const Canvas here = column.canvas_for(box);
    const sheet::Touch touch = sheet::touch(here, box, one.id, one.words);
    const bool raised = touch.hovered || one.open;
    if (raised) {
        fill(here, box, theme.panel);
    }
    if (touch.keyboard) {
        outline(here, box, Line::Outline, theme.ink);
    }
    const Rect row{box.min, {box.max.x, box.min.y + (at.words_below ? at.lead_high : at.height)}};
    draw_lead(here, row, one, at, raised ? theme.panel : theme.ground);
    const float high = at.words.y + (at.hand_beside ? 0 : at.hand.y + canvas.px(4));
    const ImVec2 words = at.words_below
                             ? ImVec2{box.min.x + canvas.px(6), row.max.y}
                             : ImVec2{box.min.x + at.words_from, std::round(box.centre().y - high / 2)};
    paragraph(here, words, at.words_wide, one.words, Type::Body, theme.ink);
    const Rect hand =
        at.hand_beside
            ? rect_at({box.max.x - at.hand.x - canvas.px(6), std::round(row.centre().y - at.hand.y / 2)},
                      at.hand)
            : rect_at({words.x, words.y + at.words.y + canvas.px(4)}, at.hand);
    outline(here, hand, Line::Rule, touch.hovered ? theme.ink : theme.pencil);
    text_in(here, {hand.min, hand.max + ImVec2{0.5F, 0}}, one.hand, Type::Secondary, theme.ink,
            Align::Middle);
    return touch;
}

namespace {

constexpr float kKnobRoom = 116;  // between the two columns of names, design pixels
constexpr float kKnobNames = 118; // least width of one of them

/// Height of a name broken at `wide`.
float name_height(const Canvas& canvas, std::string_view name, float wide) {
    return std::max(24.0F, text_size(canvas, name, Type::Secondary, wide - canvas.px(12)).y + canvas.px(8));
}

/// The names of one side, middled in height; true for the one that was pressed.
struct KnobSide {
    std::vector<std::size_t> detents; // from the top
    float left = 0, wide = 0;
    bool right = false;
};

float side_height(const Canvas& canvas, const KnobSide& side, std::span<const std::string> names) {
    float height = 0;
    for (const std::size_t i : side.detents) {
        height += name_height(canvas, names[i], side.wide) + canvas.px(2);
    }
    return height;
}

} // namespace

std::optional<std::size_t> draw_knob(Column& column, std::span<const std::string> detents, std::size_t at) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    const float wide = std::floor((column.width() - canvas.px(kKnobRoom)) / 2);
    if (wide < canvas.px(kKnobNames)) {
        return column.buttons(detents, at);
    }
    std::array<KnobSide, 2> sides;
    sides[0] = {{}, column.left(), wide, false};
    sides[1] = {{}, column.right() - wide, wide, true};
    const std::size_t on_left = detents.size() / 2;
    for (std::size_t i = 0; i < detents.size(); ++i) {
        auto& list = sides[i < on_left ? 0 : 1].detents;
        list.insert(i < on_left ? list.begin() : list.end(), i);
    }
    const float height = std::max(
        {side_height(canvas, sides[0], detents), side_height(canvas, sides[1], detents), canvas.px(96)});
    const Rect box = column.take(height);
    const Canvas here = column.canvas_for(box);
    const ImVec2 centre{std::round(box.centre().x), std::round(box.centre().y)};
    const float radius = canvas.px(34);
    std::optional<std::size_t> pressed;
    for (const KnobSide& side : sides) {
        float y = std::round(centre.y - side_height(canvas, side, detents) / 2);
        for (const std::size_t i : side.detents) {
            const Rect name = rect_at({side.left, y}, {wide, name_height(canvas, detents[i], wide)});
            y = name.max.y + canvas.px(2);
            const sheet::Touch touch = sheet::touch(here, name, detents[i], detents[i]);
            pressed = touch.pressed ? i : pressed;
            const bool chosen = i == at || touch.held;
            if (chosen || touch.hovered) {
                fill(here, name, chosen ? theme.ink : theme.panel);
            }
            if (touch.keyboard) {
                outline(here, name.shrunk(-canvas.px(2)), Line::Outline, theme.ink);
            }
            const float inside_wide = wide - canvas.px(12);
            const ImVec2 size = text_size(here, detents[i], Type::Secondary, inside_wide);
            const float x = side.right ? name.min.x + canvas.px(6) : name.max.x - canvas.px(6) - size.x;
            paragraph(here, {x, name.centre().y - size.y / 2}, inside_wide + 1, detents[i], Type::Secondary,
                      chosen ? theme.ground : theme.ink);
            // Leader from the rim to the name; the pointer stands on that of the chosen one.
            const ImVec2 anchor{side.right ? name.min.x : name.max.x, name.centre().y};
            const ImVec2 away = anchor - centre;
            const float far = std::sqrt(away.x * away.x + away.y * away.y);
            const ImVec2 along = away * (1 / far);
            here.list->AddLine(centre + along * (radius + canvas.px(4)), anchor,
                               packed(i == at ? theme.ink : theme.pencil),
                               line_width(here, i == at ? Line::Outline : Line::Rule));
            if (i == at) {
                const ImVec2 beside{-along.y, along.x};
                here.list->AddTriangleFilled(centre + along * radius, centre + beside * canvas.px(9),
                                             centre - beside * canvas.px(9), packed(theme.ink));
            }
        }
    }
    here.list->AddCircle(centre, radius, packed(theme.ink), 48, line_width(here, Line::Outline));
    here.list->AddCircleFilled(centre, canvas.px(9), packed(theme.ink), 24);
    column.gap(6);
    return pressed;
}

void draw_dial(Column& column, float turns, bool looking) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    const float across = std::round(std::min(column.width(), canvas.px(190)));
    const Rect box = column.take(across);
    const ImVec2 centre{box.min.x + across / 2, box.centre().y};
    const float radius = across / 2 - canvas.px(4);
    const ImU32 ink = packed(theme.ink);
    canvas.list->AddCircleFilled(centre, radius, packed(theme.panel), 64);
    canvas.list->AddCircle(centre, radius, ink, 64, line_width(canvas, Line::Outline));
    for (int i = 0; i < 20; ++i) {
        const float angle = 2 * kPi * static_cast<float>(i) / 20;
        const ImVec2 along{std::sin(angle), -std::cos(angle)};
        const float length = i % 10 == 0 ? 0.24F : i % 2 == 0 ? 0.16F : 0.08F;
        canvas.list->AddLine(centre + along * radius, centre + along * (radius * (1 - length)), ink,
                             line_width(canvas, i % 10 == 0 ? Line::Outline : Line::Detail));
    }
    if (looking) {
        const float angle = 2 * kPi * turns;
        const ImVec2 along{std::sin(angle), -std::cos(angle)};
        const ImVec2 across_it{-along.y, along.x};
        const float half = canvas.px(5);
        canvas.list->AddTriangleFilled(centre + along * (radius * 0.84F), centre + across_it * half,
                                       centre - across_it * half, ink);
        canvas.list->AddLine(centre, centre - along * (radius * 0.25F), ink, canvas.px(4));
    }
    canvas.list->AddCircleFilled(centre, canvas.px(6), ink);
    column.gap(8);
}

void draw_ticks(Column& column, int a_second, float phase) {
    const Canvas& canvas = column.canvas();
    const Rect box = column.take(canvas.px(22));
    const int count = std::max(1, a_second);
    segment(canvas, {box.min.x, box.max.y}, box.max, Line::Rule, canvas.theme->pencil);
    for (int i = 0; i < count; ++i) {
        const float share = (static_cast<float>(i) + phase) / static_cast<float>(count);
        const float x = std::round(box.min.x + box.width() * share);
        segment(canvas, {x, box.min.y + canvas.px(4)}, {x, box.max.y}, Line::Outline, canvas.theme->ink);
    }
    column.gap(8);
}

void draw_bubble(Column& column, float millimetres) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    const Rect box = column.take(canvas.px(96));
    const float mm = std::min(canvas.px(4), box.width() / 60);
    const float y = box.max.y - canvas.px(16);
    const float middle = box.min.x + box.width() / 2;
    segment(canvas, {middle - 28 * mm, y}, {middle + 28 * mm, y}, Line::Outline, theme.ink);
    for (int i = -25; i <= 25; i += 5) { // a ruler in steps of 5 mm
        const float x = std::round(middle + static_cast<float>(i) * mm);
        segment(canvas, {x, y}, {x, y + canvas.px(i % 25 == 0 ? 12 : 6)}, Line::Rule, theme.ink);
    }
    if (millimetres > 0) {
        const float radius = std::max(canvas.px(2), millimetres * mm / 2);
        canvas.list->AddCircle({middle, y - radius}, radius, packed(theme.ink), 48,
                               line_width(canvas, Line::Detail));
        canvas.list->PathArcTo({middle, y - radius}, radius * 0.7F, kPi * 1.1F, kPi * 1.45F, 12);
        canvas.list->PathStroke(packed(theme.pencil), 0, line_width(canvas, Line::Detail));
    }
    column.gap(8);
}

void draw_tip(Column& column, bool glows) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    const Rect box = column.take(canvas.px(56));
    const float y = box.centre().y;
    const float h = canvas.px(13);
    const float x = box.min.x + canvas.px(30);
    const float end = std::min(box.max.x - canvas.px(4), x + canvas.px(230));
    const Rect chamber{{x - canvas.px(26), box.min.y}, {x + canvas.px(56), box.max.y}};
    if (glows) { // light looks dead on paper
        fill(canvas, chamber, theme.chamber);
        canvas.list->PushClipRect(chamber.min, chamber.max, true);
        glow(canvas, {x + canvas.px(12), y}, canvas.px(34), theme.igniter, 0.9F);
        canvas.list->PopClipRect();
    }
    const std::array<ImVec2, 5> nose{
        ImVec2{x + canvas.px(52), y - h}, ImVec2{x + canvas.px(14), y - h * 0.6F}, ImVec2{x, y},
        ImVec2{x + canvas.px(14), y + h * 0.6F}, ImVec2{x + canvas.px(52), y + h}};
    stroke(canvas, nose, Line::Outline, glows ? theme.igniter : theme.ink);
    const std::array<ImVec2, 4> body{ImVec2{x + canvas.px(56), y - h}, ImVec2{end, y - h}, ImVec2{end, y + h},
                                     ImVec2{x + canvas.px(56), y + h}};
    stroke(canvas, body, Line::Outline, theme.ink, true);
    segment(canvas, {x + canvas.px(80), y}, {end - canvas.px(16), y}, Line::Detail, theme.ink);
    column.gap(8);
}

} // namespace lightoff::faces
