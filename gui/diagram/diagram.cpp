// SPDX-License-Identifier: MIT
#include "gui/diagram/diagram.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/diagram/names.hpp"
#include "gui/diagram/overlays.hpp"
#include "gui/diagram/symbols.hpp"
#include "gui/platform/input_queue.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace lightoff::diagram {
namespace {

using namespace canvas;
using view::Thing;
using view::Wanted;

constexpr float kLeastZoom = 0.25F, kMostZoom = 6.0F;
constexpr float kClickSlack = 4; // pixels that a pointer may move in a click
constexpr float kWireReach = 8;  // design pixels
constexpr float kLoupeGap = 14;  // design pixels: points closer than this open the loupe
constexpr float kLoupeZoom = 2.6F;
constexpr float kPinRadius = 3.8F; // drawing units
constexpr std::string_view kHint = "K walks the wire, Home fits the sheet";

/// What the pointer is on.
struct Hit {
    enum class Kind : std::uint8_t { nothing, spot, wire, symbol };
    Kind kind = Kind::nothing;
    int index = -1;
};

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

float distance(ImVec2 a, ImVec2 b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

float distance_to(const std::vector<ImVec2>& path, ImVec2 p) {
    float least = 1e9F;
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
        const ImVec2 a = path[i], d = path[i + 1] - a;
        const float square = d.x * d.x + d.y * d.y;
        const float t =
            square > 0 ? std::clamp(((p.x - a.x) * d.x + (p.y - a.y) * d.y) / square, 0.0F, 1.0F) : 0.0F;
        least = std::min(least, distance(p, a + d * t));
    }
    return least;
}

/// A point first if the pointer is in its catch zone, then what lies beneath, then the nearest point.
Hit hit_at(const Sheet& sheet, ImVec2 pointer, bool points_only) {
    const Canvas& canvas = sheet.canvas;
    const std::optional<int> spot = nearest_spot(sheet.spots, pointer, canvas.px(kReach_px));
    const float zone = std::max(12.0F, canvas.px(kCatchZone_px / 2));
    if (spot && (points_only || distance(sheet.spot(*spot), pointer) <= zone))
        return {Hit::Kind::spot, *spot};
    if (points_only)
        return {};
    for (std::size_t i = 0; i < sheet.ladder.symbols.size(); ++i)
        if (body_of(sheet.place, sheet.ladder.symbols[i]).holds(pointer))
            return {Hit::Kind::symbol, static_cast<int>(i)};
    Hit best;
    float least = std::max(8.0F, canvas.px(kWireReach));
    for (std::size_t i = 0; i < sheet.ladder.wires.size(); ++i) {
        const float far = distance_to(sheet.path_of(sheet.ladder.wires[i]), pointer);
        if (far < least) {
            least = far;
            best = {Hit::Kind::wire, static_cast<int>(i)};
        }
    }
    if (best.kind == Hit::Kind::nothing && spot)
        return {Hit::Kind::spot, *spot};
    return best;
}

/// The part of the catalogue that a symbol stands for; -1 if none.
int part_of(const Sheet& sheet, const Symbol& symbol) {
    const std::string& element = sheet.known.site->model.wiring.netlist.element_names[at(symbol.element)];
    const auto& parts = sheet.known.site->catalogue.parts;
    for (const std::string_view name : {std::string_view(element), owner_of(element)})
        for (std::size_t i = 0; i < parts.size(); ++i)
            if (parts[i].id == name ||
                std::find(parts[i].has.begin(), parts[i].has.end(), name) != parts[i].has.end())
                return static_cast<int>(i);
    return -1;
}

std::optional<Thing> thing_of(const Sheet& sheet, Hit hit) {
    switch (hit.kind) {
    case Hit::Kind::spot:
        return Thing{bench::Word::point, sheet.ladder.spots[at(hit.index)].node};
    case Hit::Kind::wire:
        return Thing{bench::Word::wire, sheet.ladder.wires[at(hit.index)].element};
    case Hit::Kind::symbol:
        if (const int part = part_of(sheet, sheet.ladder.symbols[at(hit.index)]); part >= 0)
            return Thing{bench::Word::part, part};
        break;
    case Hit::Kind::nothing:
        break;
    }
    return std::nullopt;
}

// ---- input ----

void pick(const Sheet& sheet, Hit hit, DiagramView& view, Wanted& wanted) {
    if (hit.kind == Hit::Kind::spot && view.lead_in_hand != Wanted::Lead::none) {
        wanted.lead = view.lead_in_hand;
        wanted.lead_point = sheet.ladder.spots[at(hit.index)].node;
        return;
    }
    wanted.focus = thing_of(sheet, hit);
    view.cursor = hit.kind == Hit::Kind::spot ? hit.index : -1;
}

void fit_sheet(Rect area, const Ladder& ladder, DiagramView& view) {
    view.place = fit(ladder.bounds, area);
    view.fitted_to = area;
    view.moved = false;
}

void zoom_by(Rect area, const Ladder& ladder, DiagramView& view, ImVec2 about, float factor) {
    const float whole = fit(ladder.bounds, area).zoom;
    view.place.zoom_about(about, factor, std::min(kLeastZoom, whole), std::max(kMostZoom, whole));
    view.moved = true;
}

/// The spot that the keyboard begins on: where the red lead is, else the common, else the one in the middle.
int first_cursor(const Sheet& sheet) {
    const instruments::MultimeterSetting& meter = sheet.known.percept.instruments.multimeter;
    if (meter.red != meter.black)
        if (const int spot = sheet.ladder.spot_of_node(meter.red); spot >= 0)
            return spot;
    if (sheet.ladder.common_spot >= 0)
        return sheet.ladder.common_spot;
    return nearest_spot(sheet.spots, sheet.area.centre(), 1e9F).value_or(-1);
}

/// Moves the sheet so that a spot is in sight.
void show_spot(const Sheet& sheet, int spot, DiagramView& view) {
    const Rect safe = sheet.area.shrunk(sheet.canvas.px(30));
    const ImVec2 p = view.place.to_screen(sheet.ladder.spots[at(spot)].at);
    const ImVec2 inside{std::clamp(p.x, safe.min.x, std::max(safe.min.x, safe.max.x)),
                        std::clamp(p.y, safe.min.y, std::max(safe.min.y, safe.max.y))};
    if (inside.x != p.x || inside.y != p.y) {
        view.place.pan(inside - p);
        view.moved = true;
    }
}

std::optional<Direction> arrow_pressed() {
    using platform::Key;
    constexpr std::array<std::pair<Key, Direction>, 4> kArrows{{{Key::Left, Direction::left},
                                                                {Key::Right, Direction::right},
                                                                {Key::Up, Direction::up},
                                                                {Key::Down, Direction::down}}};
    for (const auto& [key, direction] : kArrows)
        if (platform::key_pressed(key, true))
            return direction;
    return std::nullopt;
}

ImVec2 along(Direction direction) {
    switch (direction) {
    case Direction::left:
        return {1, 0};
    case Direction::right:
        return {-1, 0};
    case Direction::up:
        return {0, 1};
    case Direction::down:
        break;
    }
    return {0, -1};
}

void step(const Sheet& sheet, Direction direction, DiagramView& view, Wanted& wanted) {
    const Stride stride = ImGui::GetIO().KeyShift ? Stride::ends : Stride::terminals;
    const std::optional<int> next = next_spot_along(sheet.ladder, view.cursor, direction, stride);
    if (!next)
        return;
    view.cursor = *next;
    show_spot(sheet, *next, view);
    wanted.hover = thing_of(sheet, {Hit::Kind::spot, *next});
    if (view.walking) {
        wanted.lead = Wanted::Lead::red;
        wanted.lead_point = sheet.ladder.spots[at(*next)].node;
    }
}

void take_keys(const Sheet& sheet, DiagramView& view, Wanted& wanted) {
    using platform::Key;
    using platform::key_pressed;
    if (const std::optional<Direction> arrow = arrow_pressed()) {
        if (view.cursor >= 0)
            return step(sheet, *arrow, view, wanted);
        view.place.pan(along(*arrow) * sheet.canvas.px(60));
        view.moved = true;
    }
    for (const ImWchar c : ImGui::GetIO().InputQueueCharacters)
        if (c == '+' || c == '=' || c == '-')
            zoom_by(sheet.area, sheet.ladder, view, sheet.area.centre(), c == '-' ? 0.8F : 1.25F);
    if (key_pressed(Key::Home))
        fit_sheet(sheet.area, sheet.ladder, view);
    if (key_pressed(Key::Escape)) {
        view.cursor = -1;
        view.walking = false;
    }
    if (key_pressed(Key::K)) {
        view.walking = !view.walking;
        view.cursor = view.walking ? first_cursor(sheet) : -1;
        if (view.cursor >= 0)
            show_spot(sheet, view.cursor, view);
    }
    if (key_pressed(Key::Enter) || key_pressed(Key::KeypadEnter)) {
        if (view.cursor >= 0)
            return pick(sheet, {Hit::Kind::spot, view.cursor}, view, wanted);
        view.cursor = first_cursor(sheet);
    }
}

void take_mouse(const Sheet& sheet, DiagramView& view, Wanted& wanted, Hit& hover) {
    const ImGuiIO& io = ImGui::GetIO();
    ImGui::SetCursorScreenPos(sheet.area.min);
    press_area("sheet", sheet.area);
    const bool hovered = ImGui::IsItemHovered();
    if (ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack)) {
        view.dragging = true;
        view.moved = true;
        view.place.pan(io.MouseDelta);
    }
    if (hovered && io.MouseWheel != 0)
        zoom_by(sheet.area, sheet.ladder, view, io.MousePos, std::pow(1.2F, io.MouseWheel));
    if (hovered && !view.dragging) {
        hover = hit_at(sheet, io.MousePos, view.lead_in_hand != Wanted::Lead::none);
        wanted.hover = thing_of(sheet, hover);
    }
    if (ImGui::IsItemDeactivated()) {
        const bool dragged = io.MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] > kClickSlack * kClickSlack;
        if (!dragged && hovered)
            pick(sheet, hover, view, wanted);
        view.dragging = false;
    }
}

// ---- drawing ----

enum class Side : std::uint8_t { top, bottom, left, right };

/// Draws the parts of one edge of a piece that no other piece of its block covers or continues.
void draw_open_edge(const Sheet& sheet, const Block& block, const Rect& piece, Side side, Line weight) {
    const bool lying = side == Side::top || side == Side::bottom;
    const float level = side == Side::top      ? piece.min.y
                        : side == Side::bottom ? piece.max.y
                        : side == Side::left   ? piece.min.x
                                               : piece.max.x;
    const bool low_side = side == Side::top || side == Side::left; // the piece lies beyond its level
    std::vector<std::pair<float, float>> open{
        {lying ? piece.min.x : piece.min.y, lying ? piece.max.x : piece.max.y}};
    for (const Rect& other : block.pieces) {
        const float near = lying ? other.min.y : other.min.x;
        const float far = lying ? other.max.y : other.max.x;
        constexpr float kTouch = 3.5F; // rows stand apart by rounding and by their pitch
        const bool covers = low_side ? near < level - 0.01F && far > level - kTouch
                                     : far > level + 0.01F && near < level + kTouch;
        if (&other == &piece || !covers)
            continue;
        const float from = lying ? other.min.x : other.min.y;
        const float to = lying ? other.max.x : other.max.y;
        std::vector<std::pair<float, float>> rest;
        for (const auto& [a, b] : open) {
            if (from > a)
                rest.push_back({a, std::min(b, from)});
            if (to < b)
                rest.push_back({std::max(a, to), b});
        }
        open = std::move(rest);
    }
    for (const auto& [a, b] : open)
        if (b - a > 0.5F)
            segment(sheet.canvas, sheet.place.to_screen(lying ? ImVec2{a, level} : ImVec2{level, a}),
                    sheet.place.to_screen(lying ? ImVec2{b, level} : ImVec2{level, b}), weight,
                    sheet.canvas.theme->pencil);
}

void draw_block(const Sheet& sheet, const Block& block) {
    const Canvas& canvas = sheet.canvas;
    if (block.kind == Block::Kind::room) {
        for (const Rect& piece : block.pieces)
            for (const Side side : {Side::top, Side::bottom, Side::left, Side::right})
                draw_open_edge(sheet, block, piece, side, Line::Hidden);
        return;
    }
    if (block.kind == Block::Kind::unit)
        for (const Rect& piece : block.pieces)
            fill(canvas, sheet.place.to_screen(piece), canvas.theme->panel);
    for (const Rect& piece : block.pieces)
        for (const Side side : {Side::top, Side::bottom, Side::left, Side::right})
            draw_open_edge(sheet, block, piece, side, Line::Rule);
}

void draw_lines(const Sheet& sheet) {
    const Canvas& canvas = sheet.canvas;
    const Colour ink = canvas.theme->ink;
    for (const Track& track : sheet.ladder.tracks) {
        if (track.joint >= 0 && sheet.is_parted(track.joint))
            continue;
        std::vector<ImVec2> path;
        for (const ImVec2 p : track.path)
            path.push_back(sheet.place.to_screen(p));
        stroke(canvas, path, Line::Detail, ink);
    }
    for (const Wire& wire : sheet.ladder.wires)
        stroke(canvas, sheet.path_of(wire), Line::Outline, ink);
    for (const RailLine& rail : sheet.ladder.rails) {
        std::vector<ImVec2> path;
        for (const ImVec2 p : rail.path)
            path.push_back(sheet.place.to_screen(p));
        stroke(canvas, path, Line::Silhouette, ink);
    }
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

void draw_spots(const Sheet& sheet, const DiagramView& view) {
    const Canvas& canvas = sheet.canvas;
    const Theme& theme = *canvas.theme;
    const float radius = std::max(canvas.px(3), kPinRadius * sheet.place.zoom);
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i) {
        const Spot& spot = sheet.ladder.spots[i];
        const ImVec2 p = sheet.spots[i];
        if (spot.lug) {
            canvas.list->AddCircleFilled(p, std::max(1.5F, radius * 0.45F), packed(theme.ink));
            continue;
        }
        canvas.list->AddCircleFilled(p, radius, packed(theme.ground));
        canvas.list->AddCircle(p, radius, packed(theme.ink), 0, line_width(canvas, Line::Detail));
        if (spot.plug)
            draw_plug(sheet, spot, p);
        if (spot.terminal < 0) // bare metal
            canvas.list->AddCircleFilled(p, radius * 0.45F, packed(theme.ink));
    }
    if (view.cursor >= 0) {
        const float r = radius + canvas.px(5);
        const ImVec2 p = sheet.spot(view.cursor);
        outline(canvas, {p - ImVec2{r, r}, p + ImVec2{r, r}}, Line::Outline, theme.ink);
    }
}

// ---- words ----

Type type_at(const Sheet& sheet) {
    const float zoom = sheet.place.zoom / sheet.canvas.scale;
    return zoom < 1.7F ? Type::Minimum : zoom < 2.4F ? Type::Secondary : Type::Body;
}

Colour ground_under(const Sheet& sheet, Rect ink) {
    for (const Block& block : sheet.ladder.blocks)
        if (block.kind == Block::Kind::unit)
            for (const Rect& piece : block.pieces)
                if (sheet.place.to_screen(piece).holds(ink.centre()))
                    return sheet.canvas.theme->panel;
    return sheet.canvas.theme->ground;
}

bool letter(const Sheet& sheet, LabelPlacer& placer, std::string_view words, Type type, Colour colour,
            std::span<const LabelPlacer::Choice> choices) {
    const auto placed = placer.place(words, type, choices);
    if (!placed)
        return false;
    if (placed->over_lines)
        haloed_text(sheet.canvas, placed->choice.at, words, type, colour, ground_under(sheet, placed->ink),
                    placed->choice.align);
    else
        text(sheet.canvas, placed->choice.at, words, type, colour, placed->choice.align);
    return true;
}

void reserve_lines(const Sheet& sheet, LabelPlacer& placer) {
    const float half = sheet.canvas.px(1.5F);
    const auto discourage = [&](const std::vector<ImVec2>& path) {
        for (std::size_t i = 0; i + 1 < path.size(); ++i)
            placer.discourage(
                {{std::min(path[i].x, path[i + 1].x) - half, std::min(path[i].y, path[i + 1].y) - half},
                 {std::max(path[i].x, path[i + 1].x) + half, std::max(path[i].y, path[i + 1].y) + half}});
    };
    const auto pixels = [&](const std::vector<ImVec2>& path) {
        std::vector<ImVec2> out;
        for (const ImVec2 p : path)
            out.push_back(sheet.place.to_screen(p));
        return out;
    };
    for (const Wire& wire : sheet.ladder.wires)
        discourage(sheet.path_of(wire));
    for (const Track& track : sheet.ladder.tracks)
        discourage(pixels(track.path));
    for (const RailLine& rail : sheet.ladder.rails)
        discourage(pixels(rail.path));
    for (const Symbol& symbol : sheet.ladder.symbols) {
        discourage(pixels({symbol.from, symbol.to}));
        placer.forbid(body_of(sheet.place, symbol));
    }
    for (const Mark& mark : sheet.ladder.marks) {
        const ImVec2 p = sheet.place.to_screen(mark.at);
        placer.forbid({p - ImVec2{6, 0} * sheet.place.zoom, p + ImVec2{6, 10} * sheet.place.zoom});
    }
    for (const Block& block : sheet.ladder.blocks)
        for (const Rect& piece : block.pieces) {
            const Rect box = sheet.place.to_screen(piece);
            discourage({box.min, {box.min.x, box.max.y}});
            discourage({{box.max.x, box.min.y}, box.max});
            if (block.kind != Block::Kind::unit) {
                discourage({box.min, {box.max.x, box.min.y}});
                discourage({{box.min.x, box.max.y}, box.max});
            }
        }
    const float r = std::max(sheet.canvas.px(3), kPinRadius * sheet.place.zoom) + 0.5F;
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i)
        if (!sheet.ladder.spots[i].lug)
            placer.forbid({sheet.spots[i] - ImVec2{r, r}, sheet.spots[i] + ImVec2{r, r}});
}

void letter_rails(const Sheet& sheet, LabelPlacer& placer) {
    const Canvas& canvas = sheet.canvas;
    for (const RailLine& rail : sheet.ladder.rails) {
        const ImVec2 head = sheet.place.to_screen(rail.head);
        const bool left = rail.head.x < sheet.ladder.bounds.centre().x;
        const float dx = 16 * sheet.place.zoom + canvas.px(2);
        const float line = line_height(canvas, Type::Heading);
        const float x = left ? head.x - dx : head.x + dx;
        const Align align = left ? Align::End : Align::Start;
        std::vector<LabelPlacer::Choice> choices;
        for (const float dy : {-0.5F, 0.2F, 0.8F, 1.5F})
            choices.push_back({{x, head.y + dy * line}, align});
        letter(sheet, placer, rail.name, Type::Heading, canvas.theme->ink, choices);
    }
}

/// Above a place: in its middle, or to the side that `outward` points to first. `below` as well where that
/// can't be taken for another row's.
std::vector<LabelPlacer::Choice> around(ImVec2 p, float up, float line, float aside, float outward,
                                        bool below) {
    // A line's box has empty space above capitals and below the base line: let it reach in.
    const float top = p.y - up - line * 0.83F;
    std::vector<LabelPlacer::Choice> choices;
    const auto add = [&](float y) {
        const LabelPlacer::Choice right{{p.x - aside, y}, Align::Start}, left{{p.x + aside, y}, Align::End};
        if (outward == 0) {
            choices.push_back({{p.x, y}, Align::Middle});
            choices.push_back(right);
            choices.push_back(left);
            return;
        }
        choices.push_back(outward < 0 ? left : right);
        choices.push_back(
            {{p.x + aside * (outward < 0 ? -1.0F : 1.0F), y}, outward < 0 ? Align::End : Align::Start});
    };
    add(top);
    if (below) {
        const std::size_t above = choices.size();
        add(p.y + up - line * 0.17F);
        for (std::size_t i = above; i < choices.size(); ++i)
            choices[i].alone = true;
    }
    return choices;
}

/// In the symbol's own row, the line broken for it.
void letter_beside(const Sheet& sheet, LabelPlacer& placer, std::string_view words, Rect body) {
    const float line = line_height(sheet.canvas, Type::Minimum);
    const float gap = sheet.canvas.px(8);
    const std::array<LabelPlacer::Choice, 1> choices{
        LabelPlacer::Choice{{body.max.x + gap, body.centre().y - line / 2}, Align::Start}};
    const auto placed = placer.place(words, Type::Minimum, choices);
    if (!placed)
        return;
    const float pad = sheet.canvas.px(4);
    fill(sheet.canvas, {placed->ink.min - ImVec2{pad, 0}, placed->ink.max + ImVec2{pad, 0}},
         ground_under(sheet, placed->ink));
    text(sheet.canvas, placed->choice.at, words, Type::Minimum, sheet.canvas.theme->ink, Align::Start);
}

void letter_symbols(const Sheet& sheet, LabelPlacer& placer) {
    const Type type = type_at(sheet);
    const float line = line_height(sheet.canvas, type);
    for (const Symbol& symbol : sheet.ladder.symbols) {
        if (symbol.name.empty())
            continue;
        const Rect body = body_of(sheet.place, symbol);
        const ImVec2 middle = body.centre();
        if (symbol.kind == SymbolKind::relay_coil || symbol.kind == SymbolKind::reads) {
            letter_beside(sheet, placer, symbol.name, body);
            continue;
        }
        std::vector<LabelPlacer::Choice> choices = around(
            middle, body.height() / 2, line, body.width() / 2 + sheet.canvas.px(3), 0, !symbol.core_below);
        if (symbol.kind == SymbolKind::transformer_winding && !symbol.core_below) // its iron is above
            choices.erase(choices.begin(), choices.begin() + 3);
        if (symbol.kind == SymbolKind::transformer_winding)
            for (LabelPlacer::Choice& choice : choices)
                choice.alone = false; // on its outer side, whatever lies there
        const bool fits = letter(sheet, placer, symbol.name, type, sheet.canvas.theme->ink, choices);
        if (!fits && !symbol.short_name.empty())
            letter(sheet, placer, symbol.short_name, type, sheet.canvas.theme->ink, choices);
    }
}

/// Whether its wire is off: the name then may stand below, where the wire does not hang.
bool is_bare_pin(const Sheet& sheet, const Spot& spot) {
    return spot.terminal >= 0 &&
           sheet.is_off(sheet.ladder.spots[at(sheet.ladder.lug_spot[at(spot.terminal)])]);
}

void letter_spots(const Sheet& sheet, LabelPlacer& placer, bool short_ones) {
    const Type type = type_at(sheet);
    const float line = line_height(sheet.canvas, type);
    const float r = std::max(sheet.canvas.px(3), kPinRadius * sheet.place.zoom) + 2;
    const std::string board =
        sheet.ladder.common_spot >= 0 ? sheet.ladder.spots[at(sheet.ladder.common_spot)].owner : "";
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i) {
        const Spot& spot = sheet.ladder.spots[i];
        if (spot.lug || (spot.name.size() <= 2) != short_ones)
            continue;
        if (!spot.wired && spot.terminal >= 0) { // nothing lies beyond it: the name goes on with the row
            const int lug = sheet.ladder.lug_spot[at(spot.terminal)];
            const float x = sheet.spot(lug).x + spot.outward.x * sheet.canvas.px(5);
            const std::array<LabelPlacer::Choice, 1> beyond{LabelPlacer::Choice{
                {x, sheet.spots[i].y - line / 2}, spot.outward.x < 0 ? Align::End : Align::Start}};
            if (letter(sheet, placer, spot.name, type, sheet.canvas.theme->ink, beyond))
                continue;
        }
        const bool at_edge =
            spot.owner == board; // beside its wire, or names would stand over the board's edge
        letter(sheet, placer, spot.name, type,
               short_ones ? sheet.canvas.theme->ink : sheet.canvas.theme->pencil,
               around(sheet.spots[i], r, line, r, at_edge ? spot.outward.x : 0, is_bare_pin(sheet, spot)));
    }
}

void letter_blocks(const Sheet& sheet, LabelPlacer& placer, bool rooms) {
    const Type type = type_at(sheet);
    const float line = line_height(sheet.canvas, type);
    for (const Block& block : sheet.ladder.blocks) {
        if ((block.kind == Block::Kind::room) != rooms)
            continue;
        std::vector<LabelPlacer::Choice> choices;
        for (const Rect& piece : block.pieces) {
            const Rect box = sheet.place.to_screen(piece);
            const float in = sheet.canvas.px(4);
            if (block.kind != Block::Kind::unit) {
                choices.push_back({{box.min.x, box.min.y - line * 0.9F}, Align::Start});
                choices.push_back({{box.max.x, box.min.y - line * 0.9F}, Align::End});
                choices.push_back({{box.min.x, box.max.y - line * 0.1F}, Align::Start});
            }
            choices.push_back({{box.min.x + in, box.max.y - line}, Align::Start});
            choices.push_back({{box.max.x - in, box.max.y - line}, Align::End});
            choices.push_back({{box.min.x + in, box.min.y}, Align::Start});
            choices.push_back({{box.max.x - in, box.min.y}, Align::End});
        }
        letter(sheet, placer, block.name, type, sheet.canvas.theme->pencil, choices);
    }
}

/// The letters of a wire's colour stand on the wire, with a stripe of the colour itself below them.
void letter_wires(const Sheet& sheet, LabelPlacer& placer) {
    const Canvas& canvas = sheet.canvas;
    const float line = line_height(canvas, Type::Minimum);
    for (const Wire& wire : sheet.ladder.wires) {
        if (wire.letters.empty())
            continue;
        const float width = text_size(canvas, wire.letters, Type::Minimum).x;
        const ImVec2 p = sheet.place.to_screen(wire.ferrule);
        const std::array<LabelPlacer::Choice, 1> choices{
            LabelPlacer::Choice{{p.x, p.y - line / 2}, Align::Middle}};
        const auto placed = placer.place(wire.letters, Type::Minimum, choices);
        if (!placed)
            continue;
        const ImVec2 half{width / 2 + canvas.px(2), line * 0.36F};
        fill(canvas, {p - half, p + half}, canvas.theme->ground);
        text(canvas, placed->choice.at, wire.letters, Type::Minimum, canvas.theme->ink, Align::Middle);
        const Rect stripe{{p.x - half.x, p.y + half.y},
                          {p.x + half.x, p.y + half.y + std::max(3.0F, canvas.px(3))}};
        fill(canvas, stripe, insulation(wire.colour));
        outline(canvas, stripe, Line::Rule, canvas.theme->pencil);
    }
}

void letter_lifted(const Sheet& sheet, LabelPlacer& placer) {
    const float line = line_height(sheet.canvas, Type::Minimum);
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i)
        if (const Spot& spot = sheet.ladder.spots[i]; sheet.is_off(spot)) {
            const float r = sheet.canvas.px(5);
            letter(sheet, placer, "off", Type::Minimum, sheet.canvas.theme->ink,
                   around(sheet.spots[i], r, line, r, 0, true));
        }
}

// ---- the tag at the pointer, with the loupe ----

std::string where_in_words(furnace::Place::Where where) {
    switch (where) {
    case furnace::Place::Where::burner_compartment:
        return "burner compartment";
    case furnace::Place::Where::blower_compartment:
        return "blower compartment";
    case furnace::Place::Where::living_room:
        return "living room";
    case furnace::Place::Where::outside:
        break;
    }
    return "outside the furnace";
}

std::vector<std::string> words_for(const Sheet& sheet, Hit hit) {
    switch (hit.kind) {
    case Hit::Kind::spot: {
        const Spot& spot = sheet.ladder.spots[at(hit.index)];
        const std::string which = spot.terminal < 0    ? "bare metal"
                                  : !spot.lug          ? "terminal"
                                  : sheet.is_off(spot) ? "end of its wire, off the terminal"
                                                       : "end of its wire";
        return {spot.full_name, which + ", " + where_in_words(spot.where)};
    }
    case Hit::Kind::wire: {
        const Wire& wire = sheet.ladder.wires[at(hit.index)];
        return {"wire " + wire.name, wire.letters.empty() ? std::string("through its screw") : wire.colour};
    }
    case Hit::Kind::symbol: {
        const Symbol& symbol = sheet.ladder.symbols[at(hit.index)];
        const int part = part_of(sheet, symbol);
        const std::string name = symbol.name.empty() ? std::string("switch of the control") : symbol.name;
        if (part < 0)
            return {name};
        return {sheet.known.site->catalogue.parts[at(part)].title, name};
    }
    case Hit::Kind::nothing:
        break;
    }
    return {};
}

/// Spots so close to one that the pointer could mean either.
std::vector<int> close_to(const Sheet& sheet, int spot) {
    std::vector<int> close;
    for (std::size_t i = 0; i < sheet.spots.size(); ++i)
        if (static_cast<int>(i) != spot &&
            distance(sheet.spots[i], sheet.spot(spot)) < sheet.canvas.px(kLoupeGap))
            close.push_back(static_cast<int>(i));
    return close;
}

/// A piece of the sheet round a spot, enlarged, the spot ringed.
void draw_loupe(const Sheet& sheet, Rect box, int spot) {
    const Canvas& canvas = sheet.canvas;
    canvas.list->PushClipRect(box.min, box.max, true);
    const float wanted = kLoupeZoom * canvas.scale;
    Transform place;
    place.zoom = std::max(wanted, sheet.place.zoom * 1.6F);
    place.offset = box.centre() - sheet.ladder.spots[at(spot)].at * place.zoom;
    Canvas close = canvas;
    close.zoom = std::max(1.0F, place.zoom / canvas.scale);
    close.probe = nullptr;
    Sheet loupe{close, box, sheet.ladder, sheet.known, place, spot_places(sheet.ladder, place, sheet.known)};
    draw_lines(loupe);
    draw_spots(loupe, {});
    canvas.list->AddCircle(loupe.spot(spot), canvas.px(15), packed(canvas.theme->ink), 0, canvas.px(2));
    canvas.list->PopClipRect();
}

void draw_tag(const Sheet& sheet, Hit hit, ImVec2 pointer) {
    const std::vector<std::string> words = words_for(sheet, hit);
    if (words.empty())
        return;
    const Canvas& canvas = sheet.canvas;
    const float pad = canvas.px(8);
    const bool loupe = hit.kind == Hit::Kind::spot && !close_to(sheet, hit.index).empty();
    const float glass = loupe ? canvas.px(76) : 0;
    ImVec2 size{loupe ? canvas.px(150) : 0, glass + 2 * pad};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const ImVec2 line = text_size(canvas, words[i], i == 0 ? Type::Body : Type::Secondary);
        size = {std::max(size.x, line.x + 2 * pad), size.y + line.y};
    }
    ImVec2 corner = pointer + ImVec2{canvas.px(18), canvas.px(18)};
    if (corner.x + size.x > sheet.area.max.x)
        corner.x = pointer.x - canvas.px(18) - size.x;
    if (corner.y + size.y > sheet.area.max.y)
        corner.y = pointer.y - canvas.px(18) - size.y;
    corner = {std::max(corner.x, sheet.area.min.x), std::max(corner.y, sheet.area.min.y)};
    if (canvas.probe != nullptr)
        canvas.probe->set_layer(1);
    const Rect box = rect_at(corner, size);
    fill(canvas, box, canvas.theme->panel);
    outline(canvas, box, Line::Detail, canvas.theme->ink);
    ImVec2 pen = corner + ImVec2{pad, pad};
    for (std::size_t i = 0; i < words.size(); ++i)
        pen.y = text(canvas, pen, words[i], i == 0 ? Type::Body : Type::Secondary,
                     i == 0 ? canvas.theme->ink : canvas.theme->pencil)
                    .max.y;
    if (loupe)
        draw_loupe(sheet, {{box.min.x + 2, pen.y}, {box.max.x - 2, box.max.y - 2}}, hit.index);
    if (canvas.probe != nullptr)
        canvas.probe->set_layer(0);
}

// ---- the strip below ----

void draw_strip(const Canvas& canvas, Rect strip, Rect sheet_area, const Ladder& ladder, DiagramView& view) {
    const auto take = [&](std::string_view words, std::string_view key) {
        Rect box = strip.cut_right(button_width(canvas, words, key));
        strip.cut_right(canvas.px(6));
        return button(canvas, box, words, false, key);
    };
    if (take("Fit", ""))
        fit_sheet(sheet_area, ladder, view);
    if (take("+", ""))
        zoom_by(sheet_area, ladder, view, sheet_area.centre(), 1.25F);
    if (take("\u2212", ""))
        zoom_by(sheet_area, ladder, view, sheet_area.centre(), 0.8F);
    const std::string_view words =
        view.walking ? "Walking the wire: arrows take the red lead along, Escape ends" : kHint;
    if (text_size(canvas, words, Type::Minimum).x < strip.width())
        text_in(canvas, strip, words, Type::Minimum, view.walking ? canvas.theme->ink : canvas.theme->pencil);
}

void draw_sheet(const Sheet& sheet, const DiagramView& view, Hit hover) {
    const Canvas& canvas = sheet.canvas;
    canvas.list->PushClipRect(sheet.area.min, sheet.area.max, true);
    for (const Block& block : sheet.ladder.blocks)
        draw_block(sheet, block);
    draw_lines(sheet);
    draw_stamps(sheet);
    draw_spots(sheet, view);
    draw_leads(sheet);
    LabelPlacer placer(canvas, sheet.area);
    reserve_leads(sheet, placer);
    reserve_lines(sheet, placer);
    letter_rails(sheet, placer);
    letter_stamps(sheet, placer);
    draw_handiwork(sheet, placer);
    letter_lifted(sheet, placer);
    letter_blocks(sheet, placer, true);
    letter_symbols(sheet, placer);
    letter_blocks(sheet, placer, false);
    letter_spots(sheet, placer, true);
    letter_wires(sheet, placer);
    letter_spots(sheet, placer, false);
    if (hover.kind != Hit::Kind::nothing)
        draw_tag(sheet, hover, ImGui::GetIO().MousePos);
    else if (view.cursor >= 0)
        draw_tag(sheet, {Hit::Kind::spot, view.cursor}, sheet.spot(view.cursor));
    canvas.list->PopClipRect();
}

} // namespace

std::vector<ImVec2> spot_places(const Ladder& ladder, const Transform& place, const view::Known& known) {
    std::vector<ImVec2> places;
    places.reserve(ladder.spots.size());
    for (const Spot& spot : ladder.spots) {
        ImVec2 p = place.to_screen(spot.at);
        if (spot.lug) {
            const int joint = known.site->model.wiring.terminals[at(spot.terminal)].joint;
            if (electrical::has_element(known.percept.worked.parted, joint))
                p = p + ImVec2{spot.outward.x * 3 - spot.outward.y * 8,
                               -std::abs(spot.outward.x) * 8 + spot.outward.y * 3} *
                            place.zoom;
        }
        places.push_back(p);
    }
    return places;
}

std::optional<int> nearest_spot(std::span<const ImVec2> places, ImVec2 pointer, float reach_px) {
    std::optional<int> best;
    float least = reach_px;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (const float far = distance(places[i], pointer); far <= least) {
            least = far;
            best = static_cast<int>(i);
        }
    return best;
}

void draw_diagram(const Canvas& outer, Rect area, const Ladder& ladder, const view::Known& known,
                  DiagramView& view, Wanted& wanted) {
    ImGui::SetCursorScreenPos(area.min);
    if (view.take_keyboard) {
        ImGui::SetNextWindowFocus();
        view.take_keyboard = false;
    }
    ImGui::BeginChild("diagram", area.size(), false,
                      kPlainWindow | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse |
                          ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoBackground);
    Rect rest = area;
    const Rect strip = rest.cut_bottom(control_height(outer));
    rest.cut_bottom(outer.px(4));
    const bool another = rest.min.x != view.fitted_to.min.x || rest.min.y != view.fitted_to.min.y ||
                         rest.max.x != view.fitted_to.max.x || rest.max.y != view.fitted_to.max.y;
    if (another && (!view.moved || view.fitted_to.width() <= 0))
        fit_sheet(rest, ladder, view);
    Canvas canvas = outer.here();
    canvas.zoom = std::max(0.4F, view.place.zoom / canvas.scale);
    Hit hover;
    {
        const Sheet sheet{canvas, rest, ladder, known, view.place, spot_places(ladder, view.place, known)};
        take_mouse(sheet, view, wanted, hover);
        // Escape makes the library leave a child window before we see the key.
        const bool escaped = view.has_keyboard && platform::key_pressed(platform::Key::Escape);
        if (escaped && view.cursor >= 0)
            view.take_keyboard = true;
        view.has_keyboard = ImGui::IsWindowFocused();
        if ((view.has_keyboard || escaped) && !ImGui::GetIO().WantTextInput)
            take_keys(sheet, view, wanted);
    }
    canvas.zoom = std::max(0.4F, view.place.zoom / canvas.scale);
    draw_sheet({canvas, rest, ladder, known, view.place, spot_places(ladder, view.place, known)}, view,
               hover);
    draw_strip(outer.here(), strip, rest, ladder, view);
    ImGui::EndChild();
}

} // namespace lightoff::diagram
