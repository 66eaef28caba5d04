// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/lettering.hpp"

#include <optional>
#include <span>
#include <vector>

namespace lightoff::diagram {

/// Finds room for words among line-work: no word over another, over a symbol or a point, or across the edge
/// of the view. Words that find no room are left out; ask in the order of their importance. Pixels.
class LabelPlacer {
public:
    LabelPlacer(const canvas::Canvas& canvas, canvas::Rect view);

    /// Nothing may be written there.
    void forbid(canvas::Rect box);
    /// Words are better kept off it.
    void discourage(canvas::Rect box);

    struct Choice {
        ImVec2 at{0, 0}; ///< upper corner of the line of words, left, middle or right by `align`
        canvas::Align align = canvas::Align::Middle;
        bool alone = false; ///< only if no line runs close below, which the words would seem to belong to
    };
    struct Placed {
        Choice choice;
        canvas::Rect ink;
        bool over_lines = false;
    };
    /// The first choice that meets no line, else the first that is allowed; its room is taken from then on.
    std::optional<Placed> place(std::string_view words, canvas::Type type, std::span<const Choice> choices);

private:
    /// Boxes by horizontal bands of the view, so that few are looked at.
    class Boxes {
    public:
        Boxes(canvas::Rect view, float band);
        void add(canvas::Rect box);
        [[nodiscard]] bool meets(canvas::Rect box) const;

    private:
        [[nodiscard]] std::size_t band_of(float y) const;
        canvas::Rect view_;
        float band_;
        std::vector<std::vector<canvas::Rect>> bands_;
    };

    const canvas::Canvas& canvas_;
    canvas::Rect view_;
    Boxes forbidden_, discouraged_;
};

} // namespace lightoff::diagram
