// SPDX-License-Identifier: MIT
#include "gui/diagram/symbols.hpp"

#include "gui/canvas/strokes.hpp"

#include <array>
#include <cmath>
#include <initializer_list>
#include <utility>
#include <vector>

// Shapes after the symbols that North American ladder diagrams use (NEMA ICS 19 and common practice, from
// memory). Sizes are in drawing units about the symbol's middle.
namespace lightoff::diagram {
namespace {

using namespace canvas;

/// A pen about the middle of a symbol: x along it, y down.
struct Pen {
    const Canvas& canvas;
    float zoom;
    ImVec2 middle;        ///< pixels
    bool upright = false; ///< the symbol stands instead of lying
    Colour ink;

    ImVec2 at(float x, float y) const {
        return upright ? middle + ImVec2{-y, -x} * zoom : middle + ImVec2{x, y} * zoom;
    }
    void line(std::initializer_list<ImVec2> points, Line weight = Line::Outline, bool closed = false) const {
        std::vector<ImVec2> path;
        for (const ImVec2 p : points)
            path.push_back(at(p.x, p.y));
        stroke(canvas, path, weight, ink, closed);
    }
    void arc(ImVec2 centre, float radius, float from_deg, float to_deg, Line weight = Line::Outline) const {
        std::vector<ImVec2> path;
        constexpr int kSteps = 16;
        for (int i = 0; i <= kSteps; ++i) {
            const float share = static_cast<float>(i) / kSteps;
            const float angle = (from_deg + (to_deg - from_deg) * share) * kTurn / 360;
            path.push_back(at(centre.x + radius * std::cos(angle), centre.y - radius * std::sin(angle)));
        }
        stroke(canvas, path, weight, ink);
    }
    void contact_point(float x) const {
        canvas.list->AddCircleFilled(at(x, 0), std::max(1.5F, 1.9F * zoom), packed(ink));
    }
};

// Half-lengths of the bodies; lines lead on from there.
float half_of(SymbolKind kind) {
    switch (kind) {
    case SymbolKind::relay_contact:
        return 4;
    case SymbolKind::conductor:
        return 0;
    case SymbolKind::relay_coil:
        return 6;
    case SymbolKind::valve_coil:
    case SymbolKind::reads:
        return 9;
    case SymbolKind::driver:
        return 7;
    case SymbolKind::capacitor:
        return 3;
    case SymbolKind::winding:
    case SymbolKind::igniter:
        return 14;
    case SymbolKind::transformer_winding:
        return 17;
    case SymbolKind::source:
        return 9;
    case SymbolKind::flame:
        return 11;
    case SymbolKind::overload:
        return 8;
    default:
        return 10;
    }
}

/// How far a body reaches above and below its row.
std::pair<float, float> height_of(const Symbol& symbol) {
    switch (symbol.kind) {
    case SymbolKind::winding:
        return {4.5F, 2};
    case SymbolKind::transformer_winding:
        return {6, 6}; // clear of its terminals close by
    case SymbolKind::temperature_switch:
        return {4, 9};
    case SymbolKind::heat_call:
    case SymbolKind::reset_switch:
        return {9, 9};
    case SymbolKind::pressure_switch:
        return {9, 10};
    case SymbolKind::breaker:
    case SymbolKind::door_switch:
    case SymbolKind::disconnect:
    case SymbolKind::fan_switch:
        return {11, 2};
    case SymbolKind::flame:
        return {9, 6};
    case SymbolKind::overload:
    case SymbolKind::resistor:
    case SymbolKind::fuse:
        return {5, 5};
    case SymbolKind::relay_contact:
    case SymbolKind::capacitor:
        return {8, 8};
    case SymbolKind::source:
        return {9, 9};
    default:
        return {6.5F, 6.5F};
    }
}

void draw_contact(const Pen& pen, bool closed) {
    pen.line({{-4, -7}, {-4, 7}});
    pen.line({{4, -7}, {4, 7}});
    if (closed)
        pen.line({{-8, 8}, {8, -8}});
}

void blade(const Pen& pen, bool closed) {
    pen.contact_point(-10);
    pen.contact_point(10);
    if (closed)
        pen.line({{-10, 0}, {9, -2.5F}});
    else
        pen.line({{-10, 0}, {8, -8.5F}});
}

/// What works a temperature switch: a step below the blade.
void thermal_step(const Pen& pen, float top) {
    pen.line({{0, top}, {0, 4}, {3.5F, 4}, {3.5F, 8}, {-3.5F, 8}}, Line::Detail);
}

void draw_pressure(const Pen& pen, bool closed) {
    blade(pen, closed);
    pen.line({{0, closed ? -1.0F : -4.0F}, {0, 4}}, Line::Detail);
    pen.arc({0, 9}, 5, 0, 180, Line::Detail);
    pen.line({{-5, 9}, {5, 9}}, Line::Detail);
}

void draw_door(const Pen& pen) {
    pen.contact_point(-10);
    pen.contact_point(10);
    pen.line({{-11, -5}, {11, -5}});
    pen.line({{0, -5}, {0, -10}}, Line::Detail);
    pen.line({{-4, -10}, {4, -10}}, Line::Detail);
}

void draw_coils(const Pen& pen, int humps, float radius, float side) {
    for (int i = 0; i < humps; ++i) {
        const float x = radius * static_cast<float>(2 * i + 1 - humps);
        pen.arc({x, 0}, radius, 180, 180 - side * 180);
    }
}

void draw_zigzag(const Pen& pen) {
    pen.line({{-10, 0}, {-8, -4}, {-5, 4}, {-2, -4}, {1, 4}, {4, -4}, {7, 4}, {9, 0}, {10, 0}}, Line::Detail);
}

void draw_heater(const Pen& pen) {
    pen.line({{-14, 0},
              {-14, -5},
              {-9, -5},
              {-9, 5},
              {-4, 5},
              {-4, -5},
              {1, -5},
              {1, 5},
              {6, 5},
              {6, -5},
              {11, -5},
              {11, 0},
              {14, 0}});
}

void draw_flame_gap(const Pen& pen) {
    pen.line({{-11, 0}, {-5, 0}}, Line::Silhouette);
    pen.line({{11, -6}, {11, 6}}, Line::Outline);
    pen.line({{-3, 5}, {-5, 0}, {-1, -4}, {0, -9}, {4, -3}, {6, 1}, {4, 5}}, Line::Detail, true);
}

void draw_overload(const Pen& pen) {
    pen.arc({-4, 0}, 4, 180, 0);
    pen.arc({4, 0}, 4, 180, 360);
}

void draw_reads(const Pen& pen) {
    pen.line({{-9, -5}, {4, -5}, {9, 0}, {4, 5}, {-9, 5}}, Line::Detail, true);
}

void draw_driver(const Pen& pen) {
    pen.line({{-7, -6}, {7, -6}, {7, 6}, {-7, 6}}, Line::Detail, true);
    pen.line({{-4, -3}, {-4, 3}, {3, 0}}, Line::Detail, true);
}

void draw_breaker(const Pen& pen) {
    pen.contact_point(-10);
    pen.contact_point(10);
    pen.arc({0, 1}, 11, 155, 25);
}

void draw_plates(const Pen& pen) {
    pen.line({{-3, -8}, {-3, 8}});
    pen.line({{3, -8}, {3, 8}});
}

void draw_fuse(const Pen& pen) {
    pen.line({{-10, -4}, {10, -4}, {10, 4}, {-10, 4}}, Line::Outline, true);
    pen.line({{-10, 0}, {10, 0}}, Line::Detail);
}

void draw_source(const Pen& pen) {
    pen.arc({0, 0}, 9, 0, 360);
    pen.arc({0, -2.5F}, 2.5F, 90, 270, Line::Detail);
    pen.arc({0, 2.5F}, 2.5F, 90, -90, Line::Detail);
}

void draw_body(const Pen& pen, const Symbol& symbol) {
    const bool closed = symbol.closed_at_rest;
    switch (symbol.kind) {
    case SymbolKind::relay_contact:
        return draw_contact(pen, closed);
    case SymbolKind::breaker:
        return draw_breaker(pen);
    case SymbolKind::disconnect:
        return blade(pen, false);
    case SymbolKind::door_switch:
        return draw_door(pen);
    case SymbolKind::heat_call:
        blade(pen, closed);
        return thermal_step(pen, -4);
    case SymbolKind::fan_switch:
        blade(pen, closed);
        pen.line({{0, -4}, {0, -10}}, Line::Detail);
        return pen.line({{-3, -10}, {3, -10}}, Line::Detail);
    case SymbolKind::temperature_switch:
        blade(pen, closed);
        return thermal_step(pen, -1);
    case SymbolKind::reset_switch:
        blade(pen, closed);
        thermal_step(pen, -1);
        pen.line({{0, -2}, {0, -8}}, Line::Detail);
        return pen.line({{-3.5F, -8}, {3.5F, -8}}, Line::Detail);
    case SymbolKind::pressure_switch:
        return draw_pressure(pen, closed);
    case SymbolKind::overload:
        return draw_overload(pen);
    case SymbolKind::driver:
        return draw_driver(pen);
    case SymbolKind::relay_coil:
        return pen.arc({0, 0}, 6, 0, 360);
    case SymbolKind::valve_coil:
        return pen.line({{-9, 0}, {-7, -6}, {-1, -6}, {1, 6}, {7, 6}, {9, 0}});
    case SymbolKind::winding:
        return draw_coils(pen, 4, 3.5F, 1);
    case SymbolKind::transformer_winding:
        return draw_coils(pen, 4, 4.25F, symbol.core_below ? -1.0F : 1.0F);
    case SymbolKind::capacitor:
        return draw_plates(pen);
    case SymbolKind::igniter:
        return draw_heater(pen);
    case SymbolKind::flame:
        return draw_flame_gap(pen);
    case SymbolKind::fuse:
        return draw_fuse(pen);
    case SymbolKind::source:
        return draw_source(pen);
    case SymbolKind::reads:
        return draw_reads(pen);
    case SymbolKind::resistor:
        return draw_zigzag(pen);
    case SymbolKind::conductor:
        return;
    }
}

} // namespace

void draw_symbol(const Canvas& canvas, const Transform& place, const Symbol& symbol) {
    const ImVec2 from = place.to_screen(symbol.from);
    const ImVec2 to = place.to_screen(symbol.to);
    const bool upright = std::abs(to.y - from.y) > std::abs(to.x - from.x);
    const Pen pen{canvas, place.zoom, (from + to) * 0.5F, upright, canvas.theme->ink};
    const float half = half_of(symbol.kind);
    const bool forward = upright ? to.y < from.y : to.x >= from.x;
    const std::array<ImVec2, 2> first{from, pen.at(forward ? -half : half, 0)};
    const std::array<ImVec2, 2> second{pen.at(forward ? half : -half, 0), to};
    stroke(canvas, first, Line::Detail, pen.ink);
    stroke(canvas, second, Line::Detail, pen.ink);
    draw_body(pen, symbol);
}

Rect body_of(const Transform& place, const Symbol& symbol) {
    const ImVec2 middle = place.to_screen((symbol.from + symbol.to) * 0.5F);
    const float half = (half_of(symbol.kind) + 2) * place.zoom;
    const auto [up, down] = height_of(symbol);
    return {middle - ImVec2{half, up * place.zoom}, middle + ImVec2{half, down * place.zoom}};
}

void draw_mark(const Canvas& canvas, const Transform& place, const Mark& mark) {
    const Pen pen{canvas, place.zoom, place.to_screen(mark.at), false, canvas.theme->ink};
    switch (mark.kind) {
    case Mark::Kind::ground: // to the cabinet's metal
        pen.line({{0, 0}, {0, 5}}, Line::Detail);
        pen.line({{-6, 5}, {6, 5}}, Line::Detail);
        for (const float x : {-6.0F, 0.0F, 6.0F})
            pen.line({{x, 5}, {x - 3, 10}}, Line::Detail);
        return;
    case Mark::Kind::earth:
        pen.line({{0, 0}, {0, 6}}, Line::Detail);
        pen.line({{-6, 6}, {6, 6}}, Line::Detail);
        pen.line({{-4, 8.5F}, {4, 8.5F}}, Line::Detail);
        return pen.line({{-2, 11}, {2, 11}}, Line::Detail);
    case Mark::Kind::reads:
        pen.line({{0, 0}, {0, 5}}, Line::Detail);
        return pen.line({{-3.5F, 5}, {3.5F, 5}, {0, 10}}, Line::Detail, true);
    case Mark::Kind::branch:
        canvas.list->AddCircleFilled(pen.at(0, 0), std::max(1.5F, 2.2F * place.zoom), packed(pen.ink));
        return;
    }
}

} // namespace lightoff::diagram
