// SPDX-License-Identifier: MIT
#include "gui/canvas/layout_probe.hpp"

namespace lightoff::canvas {
namespace {

constexpr float kSlack = 0.75F;       // pixels: less than this is rounding
constexpr float kEmptyOfLine = 0.17F; // of the line box above capitals and below the base line, each

bool inside(const Rect& inner, const Rect& outer) {
    return inner.min.x >= outer.min.x - kSlack && inner.min.y >= outer.min.y - kSlack &&
           inner.max.x <= outer.max.x + kSlack && inner.max.y <= outer.max.y + kSlack;
}

bool overlap(const Rect& a, const Rect& b) {
    return std::min(a.max.x, b.max.x) - std::max(a.min.x, b.min.x) > kSlack &&
           std::min(a.max.y, b.max.y) - std::max(a.min.y, b.min.y) > kSlack;
}

std::string quoted(const std::string& words) {
    return "\"" + words + "\"";
}

} // namespace

void LayoutProbe::begin_frame() {
    texts_.clear();
    boxes_.clear();
    targets_.clear();
    layer_ = 0;
    view_.reset();
}

void LayoutProbe::add_text(Rect line_box, Rect clip, std::string_view words, bool shortened, Colour colour,
                           std::optional<Colour> halo) {
    if (!in_view(line_box))
        return;
    const float empty = line_box.height() * kEmptyOfLine;
    line_box.min.y += empty;
    line_box.max.y -= empty;
    texts_.push_back({line_box, clip, std::string(words), shortened, layer_, colour, halo});
}

void LayoutProbe::add_box(Rect edge, std::string_view name) {
    if (in_view(edge))
        boxes_.push_back({edge, std::string(name), layer_});
}

void LayoutProbe::add_target(Rect edge, std::string_view name) {
    if (in_view(edge))
        targets_.push_back({edge, std::string(name), layer_});
}

std::vector<std::string> LayoutProbe::problems(float least_target_px) const {
    std::vector<std::string> found;
    for (std::size_t i = 0; i < texts_.size(); ++i) {
        const Text& text = texts_[i];
        if (!inside(text.ink, text.clip)) {
            found.push_back(quoted(text.words) + " is cut off");
        }
        if (text.shortened) {
            found.push_back(quoted(text.words) + " is shortened");
        }
        for (std::size_t k = 0; k < i; ++k) {
            if (texts_[k].layer == text.layer && overlap(texts_[k].ink, text.ink)) {
                found.push_back(quoted(text.words) + " lies over " + quoted(texts_[k].words));
            }
        }
        for (const Box& box : boxes_) {
            if (box.layer == text.layer && overlap(text.ink, box.edge) && !inside(text.ink, box.edge)) {
                found.push_back(quoted(text.words) + " crosses the edge of " + box.name);
            }
        }
    }
    for (const Box& target : targets_) {
        if (target.edge.width() < least_target_px || target.edge.height() < least_target_px) {
            found.push_back(target.name + " is too small to hit");
        }
    }
    return found;
}

} // namespace lightoff::canvas
