// SPDX-License-Identifier: MIT
#include "gui/diagram/stamps.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/path_walker.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/view/marks.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr float kBracketReach = 190; // drawing units: two points farther apart are stamped one by one

Energy energy_of(const view::Stamp& stamp) {
    return stamp.line_voltage ? Energy::Volts120 : Energy::Volts24;
}

struct Pair {
    int red = -1, black = -1; ///< spots
    bool bracket = false;
};

/// The two spots of a stamp: of several on one track those that lie closest.
Pair spots_of(const Sheet& sheet, const view::Stamp& stamp) {
    Pair best;
    float least = 1e9F;
    const auto& spots = sheet.ladder.spots;
    for (std::size_t r = 0; r < spots.size(); ++r) {
        if (spots[r].node != stamp.red)
            continue;
        for (std::size_t b = 0; b < spots.size(); ++b) {
            if (spots[b].node != stamp.black)
                continue;
            const float far =
                std::abs(spots[r].at.x - spots[b].at.x) + 4 * std::abs(spots[r].at.y - spots[b].at.y);
            if (far < least) {
                least = far;
                best = {static_cast<int>(r), static_cast<int>(b),
                        spots[r].row == spots[b].row && far < kBracketReach};
            }
        }
    }
    if (best.red >= 0 && !best.bracket) { // each where its node is first met
        best.red = sheet.ladder.spot_of_node(stamp.red);
        best.black = sheet.ladder.spot_of_node(stamp.black);
        if (stamp.red == sheet.ladder.common_node && sheet.ladder.common_spot >= 0)
            best.red = sheet.ladder.common_spot;
        if (stamp.black == sheet.ladder.common_node && sheet.ladder.common_spot >= 0)
            best.black = sheet.ladder.common_spot;
    }
    return best;
}

/// Short strokes across a path: a proof gone stale.
void hatch_path(const Canvas& canvas, Path path, Colour colour) {
    const PathWalker walk(path);
    const float arm = canvas.px(4);
    for (float s = canvas.px(4); s < walk.length(); s += canvas.px(7)) {
        const auto [p, along] = walk.at(s);
        const ImVec2 slant{along.x * 0.7F - along.y * 0.7F, along.y * 0.7F + along.x * 0.7F};
        canvas.list->AddLine(p - slant * arm, p + slant * arm, packed(colour), canvas.px(1.4F));
    }
}

void prove_path(const Canvas& canvas, Path path, const view::Stamp& stamp) {
    if (path.size() < 2)
        return;
    const Colour colour = stamp.live ? canvas.theme->of(energy_of(stamp)) : canvas.theme->pencil;
    if (stamp.stale)
        return hatch_path(canvas, path, colour);
    if (stamp.live)
        return energy_path(canvas, path, energy_of(stamp), canvas.theme->ground);
    stroke(canvas, path, Line::Detail, colour);
}

/// Half of a wire from one of its ends: a reading at one end proves no more.
std::vector<ImVec2> half_of(const std::vector<ImVec2>& path, bool from_start) {
    const PathWalker walk(path);
    std::vector<ImVec2> piece;
    const float middle = walk.length() / 2;
    walk.piece(from_start ? 0 : middle, from_start ? middle : walk.length(), piece);
    return piece;
}

/// Whether a node is the wire's end or the pin that the end sits on.
bool ends_at(const Sheet& sheet, int end_node, int end_spot, int node) {
    if (end_node == node)
        return true;
    if (end_spot < 0)
        return false;
    const Spot& lug = sheet.ladder.spot(end_spot);
    if (!lug.lug || sheet.is_off(lug))
        return false;
    const int pin = sheet.ladder.pin_of(lug.terminal);
    return sheet.ladder.spot(pin).node == node;
}

void ring(const Sheet& sheet, int spot, const view::Stamp& stamp) {
    std::vector<ImVec2> circle;
    const float radius = std::max(sheet.canvas.px(8), 7.5F * sheet.place.zoom);
    for (int i = 0; i <= 28; ++i) {
        const float a = static_cast<float>(i) * kTurn / 28;
        circle.push_back(sheet.spot(spot) + ImVec2{std::cos(a), std::sin(a)} * radius);
    }
    prove_path(sheet.canvas, circle, stamp);
}

std::vector<ImVec2> bracket_of(const Sheet& sheet, const Pair& pair) {
    const ImVec2 a = sheet.spot(pair.red);
    const ImVec2 b = sheet.spot(pair.black);
    const float drop = std::max(sheet.canvas.px(9), 9 * sheet.place.zoom);
    return {a + ImVec2{0, drop * 0.4F}, a + ImVec2{0, drop}, b + ImVec2{0, drop}, b + ImVec2{0, drop * 0.4F}};
}

std::string words_of(const Sheet& sheet, const view::Stamp& stamp, const Pair& pair) {
    if (pair.bracket || stamp.black == sheet.ladder.common_node)
        return stamp.words;
    for (const RailLine& rail : sheet.ladder.rails)
        if (rail.node == stamp.black)
            return stamp.words + " to " + rail.name;
    return stamp.words + " to " + sheet.ladder.spot(pair.black).name;
}

/// From words that found room only farther off to what they are about.
void draw_leader(const Sheet& sheet, ImVec2 at, Rect tag) {
    const ImVec2 end{std::clamp(at.x, tag.min.x, tag.max.x), std::clamp(at.y, tag.min.y, tag.max.y)};
    if (std::hypot(end.x - at.x, end.y - at.y) > sheet.canvas.px(16))
        sheet.canvas.list->AddLine(at, end, packed(sheet.canvas.theme->pencil), sheet.canvas.px(1.2F));
}

void letter_stamp(const Sheet& sheet, LabelPlacer& placer, const view::Stamp& stamp) {
    const Pair pair = spots_of(sheet, stamp);
    if (pair.red < 0 || pair.black < 0)
        return;
    const Canvas& canvas = sheet.canvas;
    const ImVec2 at =
        pair.bracket ? (sheet.spot(pair.red) + sheet.spot(pair.black)) * 0.5F : sheet.spot(pair.red);
    const float line = line_height(canvas, Type::Minimum);
    const float down = pair.bracket ? std::max(canvas.px(10), 10 * sheet.place.zoom) : canvas.px(6);
    std::vector<LabelPlacer::Choice> choices;
    for (const float dy :
         {down, -down - line, down + line, -down - 2 * line, down + 2 * line, -down - 3 * line})
        for (const float dx : {0.0F, 30.0F, -30.0F, 60.0F, -60.0F, 100.0F, -100.0F})
            choices.push_back({{at.x + canvas.px(dx), at.y + dy}, Align::Middle});
    const std::string words = words_of(sheet, stamp, pair);
    const auto placed = placer.place(words, Type::Minimum, choices, true);
    if (!placed)
        return;
    const Rect tag{placed->ink.min - ImVec2{canvas.px(4), canvas.px(2)},
                   placed->ink.max + ImVec2{canvas.px(4), canvas.px(2)}};
    draw_leader(sheet, at, tag);
    fill(canvas, tag, canvas.theme->ground);
    const Colour colour = stamp.live ? canvas.theme->of(energy_of(stamp)) : canvas.theme->pencil;
    if (stamp.stale)
        hatch(canvas, tag, mix(canvas.theme->ground, colour, 0.35F), 6);
    outline(canvas, tag, Line::Detail, colour);
    // Stale or not, in ink: pencil would be too faint on the hatching.
    placer.letter(*placed, words, Type::Minimum, canvas.theme->ink);
}

} // namespace

void draw_stamps(const Sheet& sheet) {
    for (const view::Stamp& stamp : view::stamps_of(sheet.known)) {
        const Pair pair = spots_of(sheet, stamp);
        if (pair.red < 0 || pair.black < 0)
            continue;
        if (pair.bracket) {
            prove_path(sheet.canvas, bracket_of(sheet, pair), stamp);
            continue;
        }
        if (!stamp.live)
            continue;
        for (const Wire& wire : sheet.ladder.wires) {
            const std::vector<ImVec2> path = sheet.path_of(wire);
            if (ends_at(sheet, wire.from_node, wire.from, stamp.red))
                prove_path(sheet.canvas, half_of(path, true), stamp);
            if (ends_at(sheet, wire.to_node, wire.to, stamp.red))
                prove_path(sheet.canvas, half_of(path, false), stamp);
        }
        ring(sheet, pair.red, stamp);
    }
}

void letter_stamps(const Sheet& sheet, LabelPlacer& placer) {
    const std::vector<view::Stamp> stamps = view::stamps_of(sheet.known);
    for (auto it = stamps.rbegin(); it != stamps.rend(); ++it) // the newest first
        letter_stamp(sheet, placer, *it);
}

} // namespace lightoff::diagram
