// SPDX-License-Identifier: MIT
#include "gui/cutaway/labels.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr Type kType = Type::Secondary;
constexpr float kMostShift = 2.2F; // lines that a label may stand off its part's height

/// Moves heights apart, least squares of the shifts: runs of labels that touch share theirs.
std::vector<float> spread(const std::vector<float>& wanted, float low, float high, float step) {
    struct Run {
        float sum = 0; // of (wanted - place within the run)
        float count = 0;
        float top(float l, float h, float s) const {
            return std::clamp(sum / count, l, std::max(l, h - s * (count - 1)));
        }
    };
    std::vector<Run> runs;
    for (const float y : wanted) {
        runs.push_back({y, 1});
        while (runs.size() > 1) {
            const Run& last = runs.back();
            const Run& before = runs[runs.size() - 2];
            if (before.top(low, high, step) + step * before.count <= last.top(low, high, step)) {
                break;
            }
            const Run joined{before.sum + last.sum - last.count * before.count * step,
                             before.count + last.count};
            runs.pop_back();
            runs.back() = joined;
        }
    }
    std::vector<float> places;
    for (const Run& run : runs) {
        for (int i = 0; i < static_cast<int>(run.count); ++i) {
            places.push_back(run.top(low, high, step) + step * static_cast<float>(i));
        }
    }
    return places;
}

float shift(const Label& label, float height) {
    return std::abs(height - label.anchor.y);
}

std::vector<float> heights_of(const std::vector<Label>& labels, Rect column, float line_px) {
    std::vector<float> wanted;
    for (const Label& label : labels) {
        wanted.push_back(label.anchor.y);
    }
    return spread(wanted, column.min.y + line_px / 2, column.max.y - line_px / 2, line_px);
}

std::size_t worst_of(const std::vector<Label>& labels, const std::vector<float>& heights) {
    std::size_t worst = 0;
    for (std::size_t i = 1; i < labels.size(); ++i) {
        if (shift(labels[i], heights[i]) > shift(labels[worst], heights[worst])) {
            worst = i;
        }
    }
    return worst;
}

float worst_shift(const std::vector<Label>& labels, const std::vector<float>& heights) {
    const std::size_t worst = worst_of(labels, heights);
    return shift(labels[worst], heights[worst]);
}

/// The one not of first need that stands nearest to the label pushed farthest; else the last of all.
std::size_t least_needed(const std::vector<Label>& labels, const std::vector<float>& heights) {
    const float crowd_y = heights[worst_of(labels, heights)];
    std::size_t best = labels.size() - 1;
    float nearest = INFINITY;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const float distance = std::abs(heights[i] - crowd_y);
        if (!labels[i].first_need && distance < nearest) {
            nearest = distance;
            best = i;
        }
    }
    return best;
}

float turned(ImVec2 a, ImVec2 b, ImVec2 c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

} // namespace

std::vector<PlacedLabel> place_labels(std::span<const Label> labels, Side side, Rect column, float line_px) {
    std::vector<Label> kept;
    std::copy_if(labels.begin(), labels.end(), std::back_inserter(kept),
                 [side](const Label& label) { return label.side == side; });
    std::stable_sort(kept.begin(), kept.end(),
                     [](const Label& a, const Label& b) { return a.anchor.y < b.anchor.y; });
    const std::size_t room = static_cast<std::size_t>(std::max(0.0F, column.height() / line_px));
    std::vector<float> heights = heights_of(kept, column, line_px);
    while (!kept.empty() && (kept.size() > room || worst_shift(kept, heights) > kMostShift * line_px)) {
        const std::size_t out = least_needed(kept, heights);
        if (kept.size() <= room && kept[out].first_need) {
            break; // far from its part, but too needed to go
        }
        kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(out));
        heights = heights_of(kept, column, line_px);
    }
    std::vector<PlacedLabel> placed;
    for (std::size_t i = 0; i < kept.size(); ++i) {
        placed.push_back({kept[i], heights[i], side == Side::Left ? column.max.x : column.min.x});
    }
    return placed;
}

Rect box_of(const Canvas& canvas, const PlacedLabel& placed) {
    const ImVec2 size = text_size(canvas, placed.label.words, kType);
    const float x = placed.label.side == Side::Left ? placed.knee - size.x : placed.knee;
    return rect_at({x, placed.y - size.y / 2}, size);
}

bool leaders_cross(const PlacedLabel& a, const PlacedLabel& b) {
    const ImVec2 p{a.knee, a.y};
    const ImVec2 q{b.knee, b.y};
    return turned(p, a.label.anchor, q) * turned(p, a.label.anchor, b.label.anchor) < 0 &&
           turned(q, b.label.anchor, p) * turned(q, b.label.anchor, a.label.anchor) < 0;
}

float labels_width(const Canvas& canvas, std::span<const Label> labels, Side side) {
    float widest = 0;
    for (const Label& label : labels) {
        if (label.side == side) {
            widest = std::max(widest, text_size(canvas, label.words, kType).x);
        }
    }
    return std::ceil(widest) + 1; // words stand on whole pixels
}

void draw_labels(const Canvas& canvas, std::span<const PlacedLabel> placed) {
    const Theme& theme = *canvas.theme;
    const float half = line_height(canvas, kType) / 2;
    for (const PlacedLabel& one : placed) {
        const bool left = one.label.side == Side::Left;
        const float away = left ? canvas.px(5) : -canvas.px(5);
        const std::array<ImVec2, 2> leader{ImVec2{one.knee + away, one.y}, one.label.anchor};
        const float width = std::max(1.0F, canvas.px(1));
        canvas.list->AddLine(leader[0], leader[1], packed(faded(theme.ground, 0.8F)),
                             width * 3); // on dark parts
        canvas.list->AddLine(leader[0], leader[1], packed(theme.pencil), width);
        canvas.list->AddCircleFilled(one.label.anchor, canvas.px(2.2F), packed(theme.ground));
        canvas.list->AddCircleFilled(one.label.anchor, canvas.px(1.7F), packed(theme.ink));
        text(canvas, {one.knee, one.y - half}, one.label.words, kType, theme.ink,
             left ? Align::End : Align::Start);
    }
}

} // namespace lightoff::cutaway
