// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/controls.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace lightoff::canvas {

/// A button or a word in a row that breaks where it reaches the right edge. Items of one group stand edge to
/// edge and are kept on one line if a line holds them.
struct FlowItem {
    std::string words;
    std::string key; ///< shown beside the words
    bool chosen = false;
    bool is_button = true;
    int group = 0;
    float least_width = 0; ///< pixels; so that a button whose words change keeps its size
};

struct Flow {
    std::vector<Rect> boxes;
    float height = 0; ///< pixels
};

Flow lay_out_flow(const Canvas& canvas, Rect area, const std::vector<FlowItem>& items);
/// Width of all in one row.
float width_of_flow(const Canvas& canvas, const std::vector<FlowItem>& items);
/// Draws them; returns the index of the one pressed, or -1.
int draw_flow(const Canvas& canvas, const Flow& flow, const std::vector<FlowItem>& items);

} // namespace lightoff::canvas
