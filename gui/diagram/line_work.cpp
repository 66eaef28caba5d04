// SPDX-License-Identifier: MIT
#include "gui/diagram/line_work.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/diagram/picking.hpp"
#include "gui/diagram/symbols.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr float kPinRadius = 3.8F; // drawing units

enum class Edge : std::uint8_t { top, bottom, left, right };
constexpr std::array<Edge, 4> kEdges{Edge::top, Edge::bottom, Edge::left, Edge::right};

using Stretches = std::vector<std::pair<float, float>>;

Stretches without(const Stretches& all, float from, float to) {
    Stretches rest;
    for (const auto& [a, b] : all) {
        if (from > a)
            rest.push_back({a, std::min(b, from)});
        if (to < b)
            rest.push_back({std::max(a, to), b});
    }
    return rest;
}

using Segment = std::pair<ImVec2, ImVec2>;

/// The parts of one edge of a piece that no other piece of its block covers or continues.
std::vector<Segment> open_edge(const Block& block, const Rect& piece, Edge edge) {
    const bool lying = edge == Edge::top || edge == Edge::bottom;
    const float level = edge == Edge::top      ? piece.min.y
                        : edge == Edge::bottom ? piece.max.y
                        : edge == Edge::left   ? piece.min.x
                                               : piece.max.x;
    const bool begins = edge == Edge::top || edge == Edge::left; // the piece lies beyond its level
    Stretches open{{lying ? piece.min.x : piece.min.y, lying ? piece.max.x : piece.max.y}};
    for (const Rect& other : block.pieces) {
        const float near = lying ? other.min.y : other.min.x;
        const float far = lying ? other.max.y : other.max.x;
        constexpr float kTouch = 3.5F; // rows stand apart by rounding and by their pitch
        const bool covers = begins ? near < level - 0.01F && far > level - kTouch
                                   : far > level + 0.01F && near < level + kTouch;
        if (&other != &piece && covers)
            open = without(open, lying ? other.min.x : other.min.y, lying ? other.max.x : other.max.y);
    }
    std::vector<Segment> segments;
    for (const auto& [a, b] : open)
        if (b - a > 0.5F)
            segments.push_back(lying ? Segment{{a, level}, {b, level}} : Segment{{level, a}, {level, b}});
    return segments;
}

/// Drawing units.
std::vector<Segment> edges_of(const Block& block) {
    std::vector<Segment> all;
    for (const Rect& piece : block.pieces)
        for (const Edge edge : kEdges)
            for (const Segment& open : open_edge(block, piece, edge))
                all.push_back(open);
    return all;
}

void draw_block(const Sheet& sheet, const Block& block) {
    if (block.kind == Block::Kind::unit)
        for (const Rect& piece : block.pieces)
            fill(sheet.canvas, sheet.place.to_screen(piece), sheet.canvas.theme->panel);
    const Line weight = block.kind == Block::Kind::room ? Line::Hidden : Line::Rule;
    for (const auto& [from, to] : edges_of(block))
        segment(sheet.canvas, sheet.place.to_screen(from), sheet.place.to_screen(to), weight,
                sheet.canvas.theme->pencil);
}

/// The two halves of a plug point the way that it is pulled.
void draw_plug(const Sheet& sheet, const Spot& spot, ImVec2 p) {
    const float z = sheet.place.zoom;
    const ImVec2 out = spot.outward, across{-out.y, out.x};
    for (const float along : {5.0F, 8.5F}) {
        const ImVec2 tip = p + out * (along * z);
        const std::array<ImVec2, 3> head{tip + (out + across) * (3.2F * z), tip,
                                         tip + (out - across) * (3.2F * z)};
        stroke(sheet.canvas, head, Line::Detail, sheet.canvas.theme->ink);
    }
}

void draw_spot(const Sheet& sheet, std::size_t i) {
    const Canvas& canvas = sheet.canvas;
    const Spot& spot = sheet.ladder.spots[i];
    const ImVec2 p = sheet.spots[i];
    const float radius = pin_radius(sheet);
    if (spot.lug) {
        canvas.list->AddCircleFilled(p, std::max(1.5F, radius * 0.45F), packed(canvas.theme->ink));
        return;
    }
    canvas.list->AddCircleFilled(p, radius, packed(canvas.theme->ground));
    canvas.list->AddCircle(p, radius, packed(canvas.theme->ink), 0, line_width(canvas, Line::Detail));
    if (spot.plug)
        draw_plug(sheet, spot, p);
    if (spot.terminal < 0) // bare metal
        canvas.list->AddCircleFilled(p, radius * 0.45F, packed(canvas.theme->ink));
}

/// Where a click means the point for certain.
void tell_zone(const Sheet& sheet, const Spot& spot, ImVec2 p) {
    if (sheet.canvas.probe == nullptr || !sheet.area.holds(p))
        return;
    const float side = std::max(24.0F, sheet.canvas.px(kCatchZone_px));
    const ImVec2 corner = p - ImVec2{side, side} * 0.5F;
    sheet.canvas.probe->add_target(rect_at({std::round(corner.x), std::round(corner.y)}, {side, side}),
                                   spot.full_name);
}

} // namespace

float pin_radius(const Sheet& sheet) {
    return std::max(sheet.canvas.px(3), kPinRadius * sheet.place.zoom);
}

void draw_blocks(const Sheet& sheet) {
    for (const Block& block : sheet.ladder.blocks)
        draw_block(sheet, block);
}

void draw_lines(const Sheet& sheet) {
    const Canvas& canvas = sheet.canvas;
    const Colour ink = canvas.theme->ink;
    for (const Track& track : sheet.ladder.tracks) {
        if (track.joint >= 0 && sheet.is_parted(track.joint))
            continue;
        stroke(canvas, sheet.pixels(track.path), Line::Detail, ink);
    }
    for (const Wire& wire : sheet.ladder.wires)
        stroke(canvas, sheet.path_of(wire), Line::Outline, ink);
    for (const RailLine& rail : sheet.ladder.rails)
        stroke(canvas, sheet.pixels(rail.path), Line::Silhouette, ink);
    for (const Symbol& symbol : sheet.ladder.symbols)
        draw_symbol(canvas, sheet.place, symbol);
    for (const Symbol& symbol : sheet.ladder.symbols)
        if (symbol.core_below)
            for (const float dy : {15.0F, 19.0F}) {
                const ImVec2 middle = (symbol.from + symbol.to) * 0.5F;
                segment(canvas, sheet.place.to_screen(middle + ImVec2{-19, dy}),
                        sheet.place.to_screen(middle + ImVec2{19, dy}), Line::Detail, ink);
            }
    for (const Mark& mark : sheet.ladder.marks)
        draw_mark(canvas, sheet.place, mark);
}

void draw_spots(const Sheet& sheet, int cursor) {
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i) {
        tell_zone(sheet, sheet.ladder.spots[i], sheet.spots[i]);
        draw_spot(sheet, i);
    }
    if (cursor >= 0) {
        const float r = pin_radius(sheet) + sheet.canvas.px(5);
        const ImVec2 p = sheet.spot(cursor);
        outline(sheet.canvas, {p - ImVec2{r, r}, p + ImVec2{r, r}}, Line::Outline, sheet.canvas.theme->ink);
    }
}

void mend_beside_halos(const Sheet& sheet, const LabelPlacer& placer) {
    for (const Symbol& symbol : sheet.ladder.symbols) {
        const Rect body = body_of(sheet.place, symbol);
        if (!placer.is_by_halo(body))
            continue;
        sheet.canvas.list->PushClipRect(body.min, body.max, true);
        draw_symbol(sheet.canvas, sheet.place, symbol);
        sheet.canvas.list->PopClipRect();
    }
    const float r = pin_radius(sheet);
    const instruments::MultimeterSetting& meter = sheet.known.percept.instruments.multimeter;
    for (std::size_t i = 0; i < sheet.spots.size(); ++i)
        if (const int node = sheet.ladder.spots[i].node; node == meter.red || node == meter.black)
            continue; // a lead lies on it
        else if (placer.is_by_halo({sheet.spots[i] - ImVec2{r, r}, sheet.spots[i] + ImVec2{r, r}}))
            draw_spot(sheet, i);
}

void reserve_line_work(const Sheet& sheet, LabelPlacer& placer) {
    const float half = std::max(sheet.canvas.px(1.5F), line_width(sheet.canvas, Line::Outline) / 2 + 1);
    const auto discourage = [&](const std::vector<ImVec2>& path) {
        for (std::size_t i = 0; i + 1 < path.size(); ++i)
            placer.discourage(
                {{std::min(path[i].x, path[i + 1].x) - half, std::min(path[i].y, path[i + 1].y) - half},
                 {std::max(path[i].x, path[i + 1].x) + half, std::max(path[i].y, path[i + 1].y) + half}});
    };
    for (const Wire& wire : sheet.ladder.wires)
        discourage(sheet.path_of(wire));
    for (const Track& track : sheet.ladder.tracks)
        discourage(sheet.pixels(track.path));
    for (const RailLine& rail : sheet.ladder.rails)
        discourage(sheet.pixels(rail.path));
    for (const Symbol& symbol : sheet.ladder.symbols) {
        discourage(sheet.pixels({symbol.from, symbol.to}));
        placer.forbid(body_of(sheet.place, symbol));
    }
    for (const Mark& mark : sheet.ladder.marks) {
        const ImVec2 p = sheet.place.to_screen(mark.at);
        placer.forbid({p - ImVec2{6, 0} * sheet.place.zoom, p + ImVec2{6, 10} * sheet.place.zoom});
    }
    for (const Block& block : sheet.ladder.blocks)
        for (const auto& [from, to] : edges_of(block)) // from the upper left end
            placer.let_cross(Rect{sheet.place.to_screen(from), sheet.place.to_screen(to)}.shrunk(-half));
    const float r = pin_radius(sheet) + 0.5F;
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i)
        if (!sheet.ladder.spots[i].lug)
            placer.forbid({sheet.spots[i] - ImVec2{r, r}, sheet.spots[i] + ImVec2{r, r}});
}

} // namespace lightoff::diagram
