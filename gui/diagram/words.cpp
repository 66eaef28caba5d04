// SPDX-License-Identifier: MIT
#include "gui/diagram/words.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/diagram/insulation.hpp"
#include "gui/diagram/line_work.hpp"
#include "gui/diagram/symbols.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>

namespace lightoff::diagram {
namespace {

using namespace canvas;

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

/// Edges that run through words are broken for them, as a halo alone leaves them standing between two
/// letters; `breaks`: other lines, too.
void break_lines(const Sheet& sheet, const LabelPlacer& placer, const LabelPlacer::Placed& placed,
                 bool breaks) {
    const Rect ink = placed.ink;
    const Colour ground = ground_under(sheet, ink);
    for (const Rect& edge : placer.edges_through(ink))
        fill(sheet.canvas,
             {{std::max(edge.min.x, ink.min.x), std::max(edge.min.y, ink.min.y)},
              {std::min(edge.max.x, ink.max.x), std::min(edge.max.y, ink.max.y)}},
             ground);
    if (!breaks || !placed.over_lines)
        return;
    const float height = ink.height() * 0.3F;
    fill(sheet.canvas, {ink.min + ImVec2{0, height}, ink.max - ImVec2{0, height}}, ground);
}

bool letter(const Sheet& sheet, LabelPlacer& placer, std::string_view words, Type type, Colour colour,
            std::span<const LabelPlacer::Choice> choices, bool breaks = false) {
    const auto placed = placer.place(words, type, choices);
    if (!placed)
        return false;
    if (!placed->needs_halo()) {
        placer.letter(*placed, words, type, colour);
        return true;
    }
    break_lines(sheet, placer, *placed, breaks);
    placer.letter(*placed, words, type, colour, ground_under(sheet, placed->ink));
    return true;
}

/// Above a place: in its middle, or to the side that `outward` points to first. `below` as well where that
/// can't be taken for another row's. `clear`: so high that letters that hang down clear it, where there is
/// room.
std::vector<LabelPlacer::Choice> around(ImVec2 p, float up, float line, float aside, float outward,
                                        bool below, bool clear = false) {
    // A line's box has empty space above capitals and below the base line: let it reach in, if need be.
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
    if (clear)
        add(top - line * 0.17F);
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
    const auto placed = placer.place(words, Type::Minimum, choices, true);
    if (!placed)
        return;
    // No more than the row's line: letters of the row above may hang down to here.
    const float pad = sheet.canvas.px(4), reach = line_width(sheet.canvas, Line::Outline) + 1;
    const float middle = body.centre().y;
    fill(sheet.canvas, {{placed->ink.min.x - pad, middle - reach}, {placed->ink.max.x + pad, middle + reach}},
         ground_under(sheet, placed->ink));
    placer.letter(*placed, words, Type::Minimum, sheet.canvas.theme->ink);
}

/// Where a wire's letters may stand: at its ferrule, else a little beside it on the same stretch. Pixels.
std::vector<ImVec2> ferrule_places(const Sheet& sheet, const Wire& wire, float aside) {
    const ImVec2 p = sheet.place.to_screen(wire.ferrule);
    std::vector<ImVec2> places{p};
    const std::vector<ImVec2> path = sheet.pixels(wire.path);
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
        const auto [left, right] = std::minmax(path[i].x, path[i + 1].x);
        if (std::abs(path[i].y - p.y) > 1 || std::abs(path[i + 1].y - p.y) > 1 || p.x < left || p.x > right)
            continue;
        for (const float dx : {-aside, aside})
            if (p.x + dx - aside / 2 > left && p.x + dx + aside / 2 < right)
                places.push_back(p + ImVec2{dx, 0});
    }
    return places;
}

/// Of a wire's own colour, below its letters.
Rect stripe_box(const LabelPlacer::Choice& letters, float line, ImVec2 half, float height) {
    const ImVec2 p = letters.at + ImVec2{0, line / 2 + half.y};
    return {p - ImVec2{half.x, 0}, p + ImVec2{half.x, height}};
}

/// Whether its wire is off: the name then may stand below, where the wire does not hang.
bool is_bare_pin(const Sheet& sheet, const Spot& spot) {
    return spot.terminal >= 0 && sheet.is_off(sheet.ladder.spot(sheet.ladder.lug_of(spot.terminal)));
}

} // namespace

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
        const bool iron_above = symbol.kind == SymbolKind::transformer_winding && !symbol.core_below;
        std::vector<LabelPlacer::Choice> choices =
            around(middle, body.height() / 2, line, body.width() / 2 + sheet.canvas.px(3), 0,
                   !symbol.core_below, !iron_above);
        if (iron_above)
            choices.erase(choices.begin(), choices.begin() + 3);
        if (symbol.kind == SymbolKind::transformer_winding)
            for (LabelPlacer::Choice& choice : choices)
                choice.alone = false; // on its outer side, whatever lies there
        const bool fits = letter(sheet, placer, symbol.name, type, sheet.canvas.theme->ink, choices);
        if (!fits && !symbol.short_name.empty())
            letter(sheet, placer, symbol.short_name, type, sheet.canvas.theme->ink, choices);
    }
}

void letter_spots(const Sheet& sheet, LabelPlacer& placer, bool short_ones) {
    const Type type = type_at(sheet);
    const float line = line_height(sheet.canvas, type);
    const float r = pin_radius(sheet) + 2;
    const std::string board =
        sheet.ladder.common_spot >= 0 ? sheet.ladder.spot(sheet.ladder.common_spot).owner : "";
    for (std::size_t i = 0; i < sheet.ladder.spots.size(); ++i) {
        const Spot& spot = sheet.ladder.spots[i];
        if (spot.lug || (spot.name.size() <= 2) != short_ones)
            continue;
        if (!spot.wired && spot.terminal >= 0) { // nothing lies beyond it: the name goes on with the row
            const int lug = sheet.ladder.lug_of(spot.terminal);
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
                choices.push_back({{box.min.x, box.min.y - line}, Align::Start});
                choices.push_back({{box.max.x, box.min.y - line}, Align::End});
                choices.push_back({{box.min.x, box.max.y}, Align::Start});
            }
            choices.push_back({{box.min.x + in, box.max.y - line}, Align::Start});
            choices.push_back({{box.max.x - in, box.max.y - line}, Align::End});
            choices.push_back({{box.min.x + in, box.min.y}, Align::Start});
            choices.push_back({{box.max.x - in, box.min.y}, Align::End});
        }
        letter(sheet, placer, block.name, type, sheet.canvas.theme->pencil, choices, true);
    }
}

void letter_wires(const Sheet& sheet, LabelPlacer& placer) {
    const Canvas& canvas = sheet.canvas;
    const float line = line_height(canvas, Type::Minimum);
    for (const Wire& wire : sheet.ladder.wires) {
        if (wire.letters.empty())
            continue;
        const float width = text_size(canvas, wire.letters, Type::Minimum).x;
        const ImVec2 half{width / 2 + canvas.px(2), line * 0.36F};
        const float stripe = std::max(3.0F, canvas.px(3));
        std::vector<LabelPlacer::Choice> choices;
        for (const ImVec2 p : ferrule_places(sheet, wire, 3 * half.x))
            if (choices.empty() || placer.is_free({p - half, p + half + ImVec2{0, stripe}}))
                choices.push_back({{p.x, p.y - line / 2}, Align::Middle});
        if (choices.size() > 1 && !placer.is_free(stripe_box(choices.front(), line, half, stripe)))
            choices.erase(choices.begin());
        const auto placed = placer.place(wire.letters, Type::Minimum, choices, true);
        if (!placed)
            continue;
        const ImVec2 p = placed->choice.at + ImVec2{0, line / 2};
        fill(canvas, {p - half, p + half}, canvas.theme->ground);
        placer.letter(*placed, wire.letters, Type::Minimum, canvas.theme->ink);
        const Rect below = stripe_box(placed->choice, line, half, stripe);
        fill(canvas, below, insulation_colour(wire.colour));
        outline(canvas, below, Line::Rule, canvas.theme->pencil);
        placer.forbid(below);
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

} // namespace lightoff::diagram
