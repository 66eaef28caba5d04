// SPDX-License-Identifier: MIT
#include "gui/diagram/handiwork.hpp"

#include "gui/canvas/strokes.hpp"
#include "instruments/attachments.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr Colour kRedLead = hex(0xB3261E);
constexpr Colour kBlackLead = hex(0x17191B);

bool on_dark(const Theme& theme) {
    return relative_luminance(theme.ground) < 0.2;
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
    if (const auto placed = placer.place(words, Type::Minimum, choices, true))
        placer.letter(*placed, words, Type::Minimum, canvas.theme->ink, canvas.theme->ground);
}

void draw_jaw(const Sheet& sheet, LabelPlacer& placer, int element, std::string_view words, float aside) {
    for (const Wire& wire : sheet.ladder.wires) {
        if (wire.element != element)
            continue;
        const Canvas& canvas = sheet.canvas;
        const ImVec2 at = sheet.place.to_screen(wire.ferrule) + ImVec2{canvas.px(aside), 0};
        std::vector<ImVec2> jaw;
        for (int i = 2; i <= 26; ++i) { // open at the top, where it closes
            const float angle = (static_cast<float>(i) / 28 - 0.25F) * kTurn;
            jaw.push_back(at + ImVec2{std::cos(angle) * canvas.px(6), std::sin(angle) * canvas.px(11)});
        }
        lead(canvas, jaw, canvas.theme->ink, canvas.theme->ground);
        const float line = line_height(canvas, Type::Minimum);
        const std::array<LabelPlacer::Choice, 2> choices{
            LabelPlacer::Choice{at + ImVec2{0, canvas.px(10)}, Align::Middle},
            LabelPlacer::Choice{at - ImVec2{0, canvas.px(10) + line}, Align::Middle}};
        if (const auto placed = placer.place(words, Type::Minimum, choices, true))
            placer.letter(*placed, words, Type::Minimum, canvas.theme->ink, canvas.theme->ground);
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
