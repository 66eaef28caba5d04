// SPDX-License-Identifier: MIT
#include "gui/work/unproved.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::work {
namespace {

using namespace canvas;

constexpr std::string_view kShort = "Not proved dead";
constexpr std::string_view kShortest = "Not proved";
constexpr float kGap = 8;         ///< design pixels between two strokes of the hatching
constexpr float kOfMargin = 0.6F; ///< the rest keeps it off what stands beside it

/// Slanted strokes in a band that runs from `from` to `to`, straight down or to the right.
void hatch_band(const Canvas& canvas, ImVec2 from, ImVec2 to, float width) {
    const bool down = to.y > from.y;
    const float length = down ? to.y - from.y : to.x - from.x;
    const float thick = line_width(canvas, Line::Hidden);
    const float step = canvas.px(kGap);
    for (float at = 0; at + width <= length; at += step) {
        const ImVec2 corner = down ? ImVec2{from.x, from.y + at} : ImVec2{from.x + at, from.y};
        canvas.list->AddLine({corner.x, corner.y + width}, {corner.x + width, corner.y},
                             packed(canvas.theme->pencil), thick);
    }
}

void draw_edge_of(const Canvas& canvas, Rect box, float width) {
    hatch_band(canvas, box.min, {box.max.x, box.min.y}, width);
    hatch_band(canvas, {box.min.x, box.max.y - width}, {box.max.x, box.max.y - width}, width);
    hatch_band(canvas, {box.min.x, box.min.y + width}, {box.min.x, box.max.y - width}, width);
    hatch_band(canvas, {box.max.x - width, box.min.y + width}, {box.max.x - width, box.max.y - width}, width);
}

} // namespace

std::string unproved_words(const view::Known& known) {
    const bench::LeftAs& left = known.percept.left_as;
    if (known.proved_dead_tick || (left.burner_door_on && left.blower_door_on))
        return {};
    return std::string(kShort) + (left.burner_door_on   ? ": blower compartment"
                                  : left.blower_door_on ? ": burner compartment"
                                                        : ": both compartments");
}

void draw_unproved_edge(const Canvas& canvas, Rect page, float width) {
    draw_edge_of(canvas, page, std::floor(width * kOfMargin));
}

Rect draw_unproved_caption(const Canvas& canvas, Rect row, float title_width, std::string_view words) {
    const Type type = Type::Body;
    const float high = line_height(canvas, type) * 0.7F;
    const float sample = 2.6F * high; // of the hatching, so that the two belong together
    const float gap = canvas.px(7);
    const float before = canvas.px(24);
    const auto needs = [&](std::string_view some) { return sample + gap + text_size(canvas, some, type).x; };
    struct Choice {
        std::string_view words;
        bool title;
    };
    const std::array<Choice, 5> choices{
        {{words, true}, {kShort, true}, {words, false}, {kShort, false}, {kShortest, false}}};
    const auto* const found = std::find_if(choices.begin(), choices.end(), [&](const Choice& one) {
        return (one.title ? title_width + before : 0) + needs(one.words) <= row.width();
    });
    const Choice chosen = found == choices.end() ? choices.back() : *found;
    const Rect title = chosen.title ? row.cut_left(title_width) : Rect{row.min, row.min};
    if (chosen.title)
        row.cut_left(before);
    const ImVec2 corner{row.min.x, std::round(row.centre().y - high / 2)};
    row.cut_left(sample + gap);
    hatch_band(canvas, corner, corner + ImVec2{sample, 0}, high);
    text_in(canvas, row, chosen.words, type, canvas.theme->ink);
    return title;
}

} // namespace lightoff::work
