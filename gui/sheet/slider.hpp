// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <string_view>

namespace lightoff::sheet {

/// Places along a slider, 0 to 1.
struct SliderMarks {
    float healthy = 0;  ///< a tick above the line
    float as_it_is = 0; ///< an open ring on it
};

/// A ruled line with a knob. Pressing and dragging move the knob; with the keyboard the arrows left and right
/// by `step`, with Shift by a fifth of it, Home to its healthy place. True when `share` has changed.
bool slider(const canvas::Canvas& canvas, canvas::Rect box, std::string_view id, float& share,
            const SliderMarks& marks, float step = 0.02F);

/// Height of one.
float slider_height(const canvas::Canvas& canvas);

} // namespace lightoff::sheet
