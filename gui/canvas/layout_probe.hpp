// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/geometry.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::canvas {

/// Remembers every text, box and click target drawn through our helpers in a frame, so that a test can find
/// text that is cut off, shortened, written over other text or across the edge of a box, and targets too
/// small to hit.
class LayoutProbe {
public:
    struct Text {
        Rect ink;  // of the line box without its empty top and bottom
        Rect clip; // what of it could be seen
        std::string words;
        bool shortened = false;
        int layer = 0;
        Colour colour = {};              // as it was asked for
        std::optional<Colour> halo = {}; // around every letter, whatever lies beneath
    };
    struct Box {
        Rect edge;
        std::string name;
        int layer = 0;
    };

    void begin_frame();
    /// Things on different layers may lie over each other on purpose (a hovering tag over a page).
    void set_layer(int layer) { layer_ = layer; }
    /// What scrolls is looked at through this: only what is whole in its height counts, for a line cut
    /// through by the edge of a scrolled page is no mistake. Empty: all counts.
    void set_view(std::optional<Rect> view) { view_ = view; }
    void add_text(Rect line_box, Rect clip, std::string_view words, bool shortened, Colour colour = {},
                  std::optional<Colour> halo = {});
    void add_box(Rect edge, std::string_view name);
    void add_target(Rect edge, std::string_view name);

    const std::vector<Text>& texts() const { return texts_; }
    const std::vector<Box>& boxes() const { return boxes_; }
    const std::vector<Box>& targets() const { return targets_; }
    /// One sentence for each thing wrong in this frame; `least_target_px` is the smallest click target
    /// allowed.
    std::vector<std::string> problems(float least_target_px = 24) const;

private:
    std::vector<Text> texts_;
    std::vector<Box> boxes_;
    std::vector<Box> targets_;
    bool in_view(Rect box) const {
        return !view_ || (box.min.y >= view_->min.y && box.max.y <= view_->max.y);
    }
    int layer_ = 0;
    std::optional<Rect> view_;
};

/// The same canvas for drawing in a box of a page that scrolls: the probe hears of it only if all of the box
/// is in view, for a line cut through by the edge of a scrolled page is no mistake.
inline Canvas in_view(Canvas canvas, Rect box, Rect view) {
    if (box.min.y < view.min.y || box.max.y > view.max.y)
        canvas.probe = nullptr;
    return canvas;
}

} // namespace lightoff::canvas
