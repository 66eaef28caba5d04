// SPDX-License-Identifier: MIT
#include "gui/cutaway/shell.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/cutaway/air_and_power.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/places.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr float kDoorWay = 30; // units that a door comes off before it is out of sight
constexpr float kVeil = 0.74F;

} // namespace

void draw_traces(const Pen& pen) {
    for (const std::string_view part : pen.scene.traces) {
        const PartPlace* place = find_part_place(part);
        if (place == nullptr)
            continue;
        const ImVec2 knot{place->box.min.x + place->box.width() * 0.6F,
                          place->box.min.y + std::min(8.0F, place->box.height() / 2)};
        const auto from_knot = [&](float x, float y) { return knot + ImVec2{x, y}; };
        const std::vector<ImVec2> edge = pen.path(std::array{
            from_knot(1, 11), from_knot(6, 7), from_knot(12, 10), from_knot(15, 31), from_knot(-1, 34)});
        pen.canvas.list->AddConvexPolyFilled(edge.data(), static_cast<int>(edge.size()),
                                             packed(pen.theme().ground));
        stroke(pen.canvas, edge, Line::Detail, pen.theme().ink, true);
        pen.line({knot, from_knot(6, 11)}, Line::Detail, pen.theme().ink);
        for (const float y : {16.0F, 21.0F, 26.0F})
            pen.line({from_knot(2.5F, y + 1), from_knot(y < 24 ? 11.0F : 7.0F, y)}, Line::Rule,
                     pen.theme().pencil);
    }
}

void draw_veils(const Pen& pen) {
    const CutawayScene& scene = pen.scene;
    if (!scene.as_seen)
        return;
    const auto veil = [&](Rect compartment, float away) {
        if (away < 1)
            fill(pen.canvas, pen.box(compartment), faded(pen.theme().ground, kVeil * (1 - away)));
    };
    veil(kBurnerCompartment, scene.burner_door_away);
    veil(kBlowerCompartment, scene.blower_door_away);
    if (scene.blower_door_away < 1)
        draw_lamp(pen);
}

void draw_shell(const Pen& pen) {
    const Rect c = kCabinet;
    pen.ink({c.min, {kSupply.min.x, c.min.y}}, Line::Silhouette);
    pen.ink({{kSupply.max.x, c.min.y}, {c.max.x, c.min.y}, {c.max.x, kFilter.min.y}}, Line::Silhouette);
    pen.ink({{c.max.x, kFilter.max.y + 4}, c.max, {c.min.x, c.max.y}, {c.min.x, c.max.y - 6}},
            Line::Silhouette);
    pen.ink({c.min, {c.min.x, c.min.y + 6}}, Line::Silhouette);
    pen.ink({{c.min.x, kDeck - 3}, {c.min.x, kDeck + 3}}, Line::Silhouette);
    // Deck, with the blower's outlet open, and tube sheet.
    pen.ink({{c.min.x, kDeck}, {kBlower.x + 34, kDeck}}, Line::Outline);
    pen.ink({{kBlower.x + 82, kDeck}, {c.max.x, kDeck}}, Line::Outline);
    pen.ink({{kSheet, c.min.y}, {kSheet, kCollector.min.y}}, Line::Outline);
    pen.ink({{kSheet, kCollector.max.y}, {kSheet, kFireBox.min.y}}, Line::Outline);
    pen.ink({{kSheet, kFireBox.max.y}, {kSheet, kDeck}}, Line::Outline);
    pen.frame(kFireBox, Line::Detail);
}

void draw_door(const Pen& pen, Rect door, float away) {
    const std::vector<ImVec2> corners = pen.path(
        std::array{door.min, ImVec2{door.max.x, door.min.y}, door.max, ImVec2{door.min.x, door.max.y}});
    if (away > 0)
        stroke(pen.canvas, corners, Line::Hidden, faded(pen.theme().pencil, away), true);
    if (away >= 1)
        return;
    const ImVec2 off{-kDoorWay * away, 0};
    const Rect moved{door.min + off, door.max + off};
    fill(pen.canvas, pen.box(moved), faded(pen.theme().panel, 1 - away));
    outline(pen.canvas, pen.box(moved), Line::Outline, faded(pen.theme().ink, 1 - away));
}

} // namespace lightoff::cutaway
