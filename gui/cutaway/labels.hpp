// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace lightoff::cutaway {

enum class Side { Left, Right };

/// A trade word for a part and the point that its leader ends on (pixels).
struct Label {
    std::string_view words;
    ImVec2 anchor;
    Side side = Side::Left;
    bool first_need = true;     ///< kept where there is not room for all
    std::string_view part = {}; ///< of the catalogue; empty: the words name a place
};

/// Where words and leader go.
struct PlacedLabel {
    Label label;
    float y = 0;    ///< middle of the line of words
    float knee = 0; ///< x at which the leader leaves the words
};

/// Lays the labels of one side in a column, each as near its anchor's height as the others allow, in the
/// order of their anchors. Where the column holds fewer, those not of first need go, last ones first.
std::vector<PlacedLabel> place_labels(std::span<const Label> labels, Side side, canvas::Rect column,
                                      float line_px);

/// Where the words of a placed label stand.
canvas::Rect box_of(const canvas::Canvas& canvas, const PlacedLabel& placed);

/// Whether two leaders cross.
bool leaders_cross(const PlacedLabel& a, const PlacedLabel& b);

/// Width of the widest of them.
float labels_width(const canvas::Canvas& canvas, std::span<const Label> labels, Side side);

void draw_labels(const canvas::Canvas& canvas, std::span<const PlacedLabel> placed);

} // namespace lightoff::cutaway
