// SPDX-License-Identifier: MIT
#include "gui/diagram/label_placer.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace lightoff::diagram {
namespace {

using canvas::operator+;
using canvas::operator-;
using canvas::Rect;

constexpr float kSlack = 0.7F; // pixels: letters stand on whole ones
constexpr float kNear = 8;     // design pixels: a line this close seems to be the one named
constexpr float kGap = 2;      // design pixels between words
/// What has ink below the base line.
constexpr std::string_view kHanging = "gjpqy,;()";
constexpr float kHalo = 2; // design pixels round words over lines, as halo_of has it

bool overlap(const Rect& a, const Rect& b) {
    return a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y;
}

} // namespace

LabelPlacer::Boxes::Boxes(Rect view, float band)
    : view_(view), band_(band),
      bands_(static_cast<std::size_t>(std::max(1.0F, std::ceil(view.height() / band))) + 1) {}

std::size_t LabelPlacer::Boxes::band_of(float y) const {
    const float band = std::floor((y - view_.min.y) / band_);
    return static_cast<std::size_t>(std::clamp(band, 0.0F, static_cast<float>(bands_.size() - 1)));
}

void LabelPlacer::Boxes::add(Rect box) {
    if (!overlap(box, view_))
        return;
    for (std::size_t i = band_of(box.min.y); i <= band_of(box.max.y); ++i)
        bands_[i].push_back(box);
}

bool LabelPlacer::Boxes::meets(Rect box) const {
    for (std::size_t i = band_of(box.min.y); i <= band_of(box.max.y); ++i)
        for (const Rect& other : bands_[i])
            if (overlap(box, other))
                return true;
    return false;
}

LabelPlacer::LabelPlacer(const canvas::Canvas& canvas, Rect view)
    : canvas_(canvas), view_(view), forbidden_(view, canvas.px(32)), discouraged_(view, canvas.px(32)) {}

void LabelPlacer::forbid(Rect box) {
    forbidden_.add(box);
}

void LabelPlacer::discourage(Rect box) {
    discouraged_.add(box);
}

void LabelPlacer::let_cross(Rect edge) {
    edges_.push_back(edge);
}

std::vector<Rect> LabelPlacer::edges_through(Rect ink) const {
    std::vector<Rect> through;
    std::copy_if(edges_.begin(), edges_.end(), std::back_inserter(through),
                 [&](const Rect& edge) { return overlap(edge, ink); });
    return through;
}

bool LabelPlacer::is_by_halo(Rect box) const {
    const float rim = canvas_.px(3);
    return std::any_of(lettered_.begin(), lettered_.end(), [&](const Lettered& one) {
        return one.halo && overlap(box, one.placed.ink.shrunk(-rim));
    });
}

void LabelPlacer::letter(const Placed& placed, std::string_view words, canvas::Type type,
                         canvas::Colour colour, std::optional<canvas::Colour> halo) {
    lettered_.push_back({placed, std::string(words), type, colour, halo});
}

void LabelPlacer::draw_halos() const {
    for (const Lettered& one : lettered_)
        if (one.halo)
            canvas::halo_of(canvas_, one.placed.choice.at, one.words, one.type, *one.halo,
                            one.placed.choice.align);
}

void LabelPlacer::draw_letters() const {
    for (const Lettered& one : lettered_)
        canvas::text(canvas_, one.placed.choice.at, one.words, one.type, one.colour, one.placed.choice.align,
                     one.halo);
}

std::optional<LabelPlacer::Placed> LabelPlacer::try_choice(const Choice& choice, ImVec2 size,
                                                           bool hangs) const {
    const float share = choice.align == canvas::Align::Start    ? 0.0F
                        : choice.align == canvas::Align::Middle ? 0.5F
                                                                : 1.0F;
    const ImVec2 corner{std::round(choice.at.x - size.x * share), std::round(choice.at.y)};
    const float empty = size.y * kEmptyOfLine;
    const Rect ink{{corner.x, corner.y + empty}, {corner.x + size.x, corner.y + size.y - empty}};
    const bool in_view = corner.x >= view_.min.x && corner.y >= view_.min.y &&
                         corner.x + size.x <= view_.max.x && corner.y + size.y <= view_.max.y;
    const Rect below{{ink.min.x, ink.max.y}, {ink.max.x, ink.max.y + canvas_.px(kNear)}};
    if (choice.alone && (discouraged_.meets(below) || !edges_through(below).empty()))
        return std::nullopt;
    if (!in_view || forbidden_.meets(ink.shrunk(kSlack)))
        return std::nullopt;
    Placed placed{choice, ink, !edges_through(ink).empty(), discouraged_.meets(ink)};
    placed.hangs_over_lines = hangs && discouraged_.meets({ink.min, ink.max + ImVec2{0, empty}});
    placed.crowds_words = placed.needs_halo() && crowds_words(ink);
    return placed;
}

/// By the halo that words over a line or an edge are drawn with.
bool LabelPlacer::crowds_words(Rect ink) const {
    const Rect haloed = ink.shrunk(-canvas_.px(kHalo));
    return std::any_of(words_.begin(), words_.end(),
                       [&](const Rect& words) { return overlap(words, haloed); });
}

std::optional<LabelPlacer::Placed> LabelPlacer::place(std::string_view words, canvas::Type type,
                                                      std::span<const Choice> choices, bool on_line) {
    const ImVec2 size = canvas::text_size(canvas_, words, type);
    const bool hangs = words.find_first_of(kHanging) != std::string_view::npos;
    const auto cost = [](const Placed& placed) {
        return (placed.crowds_words ? 4 : 0) + (placed.over_lines ? 2 : 0) + (placed.over_edges ? 1 : 0);
    };
    std::optional<Placed> best;
    for (const Choice& choice : choices) {
        const std::optional<Placed> placed = try_choice(choice, size, hangs);
        if (!placed || (placed->over_lines && off_lines_ && !on_line))
            continue;
        if (!best || cost(*placed) < cost(*best))
            best = placed;
    }
    if (best) {
        words_.push_back(best->ink);
        const float gap = canvas_.px(kGap);
        forbidden_.add({best->ink.min - ImVec2{gap, 0}, best->ink.max + ImVec2{gap, 0}});
    }
    return best;
}

} // namespace lightoff::diagram
