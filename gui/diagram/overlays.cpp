// SPDX-License-Identifier: MIT
#include "gui/diagram/overlays.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/path_walker.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/view/marks.hpp"
#include "instruments/attachments.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr float kBracketReach = 190; // drawing units: two points farther apart are stamped one by one
constexpr float kBend = 16;          // drawing units before its end that a lifted wire bends
constexpr Colour kRedLead = hex(0xB3261E);
constexpr Colour kBlackLead = hex(0x17191B);

constexpr std::array<std::pair<std::string_view, Colour>, 13> kInsulation{{{"black", hex(0x202224)},
                                                                           {"white", hex(0xFFFFFF)},
                                                                           {"red", hex(0xC0392B)},
                                                                           {"yellow", hex(0xE9C62B)},
                                                                           {"green", hex(0x2E8B4F)},
                                                                           {"blue", hex(0x2F6DB5)},
                                                                           {"brown", hex(0x7A4A28)},
                                                                           {"orange", hex(0xE07A26)},
                                                                           {"grey", hex(0x8A8D90)},
                                                                           {"violet", hex(0x6F4A9E)},
                                                                           {"purple", hex(0x6F4A9E)},
                                                                           {"pink", hex(0xE58FA8)},
                                                                           {"bare", hex(0xB87333)}}};

/// Leads one end of a path to another place, from a little before it.
void bend(std::vector<ImVec2>& path, bool front, ImVec2 to, float before) {
    if (path.size() < 2)
        return;
    if (!front)
        std::reverse(path.begin(), path.end());
    const ImVec2 along = path[1] - path[0];
    const float length = std::hypot(along.x, along.y);
    const ImVec2 knee = path[0] + along * (length > 0 ? std::min(0.5F, before / length) : 0.0F);
    path[0] = to;
    path.insert(path.begin() + 1, knee);
    if (!front)
        std::reverse(path.begin(), path.end());
}

bool on_dark(const Theme& theme) {
    return relative_luminance(theme.ground) < 0.2;
}

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
    const Spot& lug = sheet.ladder.spots[static_cast<std::size_t>(end_spot)];
    if (!lug.lug || sheet.is_off(lug))
        return false;
    const int pin = sheet.ladder.pin_spot[static_cast<std::size_t>(lug.terminal)];
    return sheet.ladder.spots[static_cast<std::size_t>(pin)].node == node;
}

void ring(const Sheet& sheet, int spot, const view::Stamp& stamp) {
    std::vector<ImVec2> circle;
    const float radius = std::max(sheet.canvas.px(8), 7.5F * sheet.place.zoom);
    for (int i = 0; i <= 28; ++i) {
        const float a = static_cast<float>(i) * 6.2831853F / 28;
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
    return stamp.words + " to " + sheet.ladder.spots[static_cast<std::size_t>(pair.black)].name;
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
    const auto placed = placer.place(words, Type::Minimum, choices);
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
    text(canvas, placed->choice.at, words, Type::Minimum,
         stamp.stale ? canvas.theme->pencil : canvas.theme->ink, placed->choice.align);
}

std::vector<ImVec2> curve(ImVec2 a, ImVec2 b, ImVec2 c, ImVec2 d) {
    std::vector<ImVec2> path;
    constexpr int kSteps = 32;
    for (int i = 0; i <= kSteps; ++i) {
        const float t = static_cast<float>(i) / kSteps;
        const float u = 1 - t;
        path.push_back(a * (u * u * u) + b * (3 * u * u * t) + c * (3 * u * t * t) + d * (t * t * t));
    }
    return path;
}

void draw_joined(const Sheet& sheet, LabelPlacer& placer, std::size_t slot) {
    const auto& ends = sheet.known.percept.worked.joined[slot];
    if (ends[0] == ends[1])
        return;
    const int a = sheet.ladder.spot_of_node(ends[0]);
    const int b = sheet.ladder.spot_of_node(ends[1]);
    if (a < 0 || b < 0)
        return;
    const Canvas& canvas = sheet.canvas;
    const ImVec2 from = sheet.spot(a), to = sheet.spot(b);
    const float sag = canvas.px(22) + std::abs(to.x - from.x) * 0.08F;
    const std::vector<ImVec2> path = curve(from, from + ImVec2{0, sag}, to + ImVec2{0, sag}, to);
    lead(canvas, path, canvas.theme->ink, canvas.theme->ground);
    const std::string_view words = slot == instruments::kJumperSlot         ? "jumper"
                                   : slot == instruments::kSmallBreakerSlot ? "small breaker"
                                                                            : "landed here";
    const ImVec2 middle = path[path.size() / 2];
    const std::array<LabelPlacer::Choice, 2> choices{
        LabelPlacer::Choice{middle + ImVec2{0, canvas.px(4)}, Align::Middle},
        LabelPlacer::Choice{middle - ImVec2{0, canvas.px(4) + line_height(canvas, Type::Minimum)},
                            Align::Middle}};
    if (const auto placed = placer.place(words, Type::Minimum, choices))
        haloed_text(canvas, placed->choice.at, words, Type::Minimum, canvas.theme->ink, canvas.theme->ground,
                    placed->choice.align);
}

void draw_jaw(const Sheet& sheet, LabelPlacer& placer, int element, std::string_view words, float aside) {
    for (const Wire& wire : sheet.ladder.wires) {
        if (wire.element != element)
            continue;
        const Canvas& canvas = sheet.canvas;
        const ImVec2 at = sheet.place.to_screen(wire.ferrule) + ImVec2{canvas.px(aside), 0};
        std::vector<ImVec2> jaw;
        for (int i = 2; i <= 26; ++i) { // open at the top, where it closes
            const float angle = (static_cast<float>(i) / 28 - 0.25F) * 6.2831853F;
            jaw.push_back(at + ImVec2{std::cos(angle) * canvas.px(6), std::sin(angle) * canvas.px(11)});
        }
        lead(canvas, jaw, canvas.theme->ink, canvas.theme->ground);
        const float line = line_height(canvas, Type::Minimum);
        const std::array<LabelPlacer::Choice, 2> choices{
            LabelPlacer::Choice{at + ImVec2{0, canvas.px(10)}, Align::Middle},
            LabelPlacer::Choice{at - ImVec2{0, canvas.px(10) + line}, Align::Middle}};
        if (const auto placed = placer.place(words, Type::Minimum, choices))
            haloed_text(canvas, placed->choice.at, words, Type::Minimum, canvas.theme->ink,
                        canvas.theme->ground, placed->choice.align);
    }
}

struct Tip {
    int spot = -1;
    char letter = 'R';
    Colour colour;
    float side = 1;
};

/// Where both leads are; none while the meter's leads are off.
std::vector<Tip> tips_of(const Sheet& sheet) {
    const instruments::MultimeterSetting& meter = sheet.known.percept.instruments.multimeter;
    if (meter.red == meter.black)
        return {};
    const auto spot = [&](int node) {
        return node == sheet.ladder.common_node && sheet.ladder.common_spot >= 0
                   ? sheet.ladder.common_spot
                   : sheet.ladder.spot_of_node(node);
    };
    std::vector<Tip> tips;
    for (const Tip& tip :
         {Tip{spot(meter.black), 'B', kBlackLead, 1}, Tip{spot(meter.red), 'R', kRedLead, -1}})
        if (tip.spot >= 0)
            tips.push_back(tip);
    return tips;
}

/// From the point down and over to the meter, which lies to the right of the sheet.
std::vector<ImVec2> lead_path(const Sheet& sheet, const Tip& tip) {
    const ImVec2 at = sheet.spot(tip.spot);
    const ImVec2 meter{sheet.area.max.x,
                       sheet.area.min.y + sheet.area.height() * 0.92F + sheet.canvas.px(12) * tip.side};
    const float over = meter.x - at.x;
    const float sag = std::max(sheet.canvas.px(40), (meter.y - at.y) * 0.8F);
    const float aside = std::min(over, sheet.canvas.px(60)); // past the screws below
    return curve(at, at + ImVec2{aside, sag * 0.5F},
                 meter - ImVec2{std::max(sheet.canvas.px(30), over * 0.5F), 0}, meter);
}

ImVec2 letter_of(const Sheet& sheet, const Tip& tip) {
    return sheet.spot(tip.spot) + ImVec2{sheet.canvas.px(11) * tip.side, -sheet.canvas.px(13)};
}

} // namespace

bool Sheet::is_parted(int joint) const {
    return electrical::has_element(known.percept.worked.parted, joint);
}

bool Sheet::is_off(const Spot& lug) const {
    return lug.lug &&
           is_parted(known.site->model.wiring.terminals[static_cast<std::size_t>(lug.terminal)].joint);
}

std::vector<ImVec2> Sheet::path_of(const Wire& wire) const {
    std::vector<ImVec2> path;
    for (const ImVec2 p : wire.path)
        path.push_back(place.to_screen(p));
    // A lug that is off its pin takes the wire's end along.
    if (wire.from >= 0 && is_off(ladder.spots[static_cast<std::size_t>(wire.from)]))
        bend(path, true, spot(wire.from), kBend * place.zoom);
    if (wire.to >= 0 && is_off(ladder.spots[static_cast<std::size_t>(wire.to)]))
        bend(path, false, spot(wire.to), kBend * place.zoom);
    return path;
}

Colour insulation(std::string_view colour) {
    for (const auto& [name, rgb] : kInsulation)
        if (name == colour)
            return rgb;
    return hex(0x8A8D90);
}

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

void draw_handiwork(const Sheet& sheet, LabelPlacer& placer) {
    for (std::size_t slot = instruments::kJumperSlot; slot < sheet.known.percept.worked.joined.size(); ++slot)
        draw_joined(sheet, placer, slot);
    const bench::Instruments& bag = sheet.known.percept.instruments;
    if (bag.clamp.on != 0 && bag.clamp.element >= 0)
        draw_jaw(sheet, placer, bag.clamp.element, "clamp", 16);
    if (bag.wattmeter.on != 0 && bag.wattmeter.element >= 0)
        draw_jaw(sheet, placer, bag.wattmeter.element, "wattmeter", -16);
}

void reserve_leads(const Sheet& sheet, LabelPlacer& placer) {
    for (const Tip& tip : tips_of(sheet)) {
        const float r = sheet.canvas.px(3);
        for (const ImVec2 p : lead_path(sheet, tip))
            placer.discourage({p - ImVec2{r, r}, p + ImVec2{r, r}});
        const ImVec2 half{sheet.canvas.px(9), sheet.canvas.px(9)};
        placer.forbid({letter_of(sheet, tip) - half, letter_of(sheet, tip) + half});
    }
}

void draw_leads(const Sheet& sheet) {
    const Canvas& canvas = sheet.canvas;
    for (const Tip& tip : tips_of(sheet)) {
        const std::vector<ImVec2> path = lead_path(sheet, tip);
        // A black lead on a dark ground shows by its pale edge.
        const bool dark = on_dark(*canvas.theme);
        const Colour edge = dark ? mix(canvas.theme->ground, canvas.theme->ink, 0.5F) : canvas.theme->ground;
        lead(canvas, path, tip.colour, edge);
    }
    for (const Tip& tip : tips_of(sheet)) {
        const ImVec2 at = sheet.spot(tip.spot);
        const ImVec2 letter = letter_of(sheet, tip);
        const float r = canvas.px(9);
        canvas.list->AddCircleFilled(at, canvas.px(4.5F), packed(tip.colour));
        canvas.list->AddCircle(at, canvas.px(5.5F), packed(canvas.theme->ink), 0, canvas.px(1.2F));
        canvas.list->AddCircleFilled(letter, r, packed(canvas.theme->ground));
        const bool lost = tip.letter == 'B' && on_dark(*canvas.theme); // black on a dark ground
        canvas.list->AddCircle(letter, r, packed(lost ? canvas.theme->pencil : tip.colour), 0, canvas.px(2));
        const std::string words(1, tip.letter);
        text(canvas, letter - ImVec2{0, line_height(canvas, Type::Minimum) / 2}, words, Type::Minimum,
             canvas.theme->ink, Align::Middle);
    }
}

} // namespace lightoff::diagram
