// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/lettering.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::diagram {

/// Above capitals and below the base line, of a line's box.
inline constexpr float kEmptyOfLine = 0.17F;

/// Finds room for words among line-work: no word over another, over a symbol or a point, or across the edge
/// of the view. Words that find no room are left out; ask in the order of their importance. Pixels. What was
/// placed is drawn in the end, all halos before all letters, so that none eats into another's.
class LabelPlacer {
public:
    LabelPlacer(const canvas::Canvas& canvas, canvas::Rect view);

    /// Nothing may be written there.
    void forbid(canvas::Rect box);
    /// Words are better kept off it.
    void discourage(canvas::Rect box);
    /// An edge that is broken for words, where they find no better room.
    void let_cross(canvas::Rect edge);
    /// From then on words that must not lie over lines are left out instead.
    void keep_off_lines() { off_lines_ = true; }

    struct Choice {
        ImVec2 at{0, 0}; ///< upper corner of the line of words, left, middle or right by `align`
        canvas::Align align = canvas::Align::Middle;
        bool alone = false; ///< only if no line runs close below, which the words would seem to belong to
    };
    struct Placed {
        Choice choice;
        canvas::Rect ink;
        bool over_edges = false;
        bool over_lines = false;
        bool hangs_over_lines = false; ///< only what hangs below the base line does
        bool crowds_words = false;     ///< its halo reaches others

        [[nodiscard]] bool needs_halo() const { return over_edges || over_lines || hangs_over_lines; }
    };
    /// The first choice that meets nothing, else the first that only edges run through, else the first whose
    /// halo keeps off other words, else the first that is allowed; its room is taken from then on.
    /// `on_line`: they belong on one.
    std::optional<Placed> place(std::string_view words, canvas::Type type, std::span<const Choice> choices,
                                bool on_line = false);
    /// Whether no words and nothing forbidden lie there.
    [[nodiscard]] bool is_free(canvas::Rect box) const { return !forbidden_.meets(box); }
    /// Edges that run through the ink of words.
    [[nodiscard]] std::vector<canvas::Rect> edges_through(canvas::Rect ink) const;

    /// What stands there in the end.
    void letter(const Placed& placed, std::string_view words, canvas::Type type, canvas::Colour colour,
                std::optional<canvas::Colour> halo = {});
    void draw_halos() const;
    void draw_letters() const;
    /// Whether a halo may eat into what stands there.
    [[nodiscard]] bool is_by_halo(canvas::Rect box) const;

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

    /// Where words would lie; none: it is not allowed. `hangs`: some of their letters do below the base line.
    [[nodiscard]] std::optional<Placed> try_choice(const Choice& choice, ImVec2 size, bool hangs) const;

    [[nodiscard]] bool crowds_words(canvas::Rect ink) const;

    struct Lettered {
        Placed placed;
        std::string words;
        canvas::Type type;
        canvas::Colour colour;
        std::optional<canvas::Colour> halo;
    };

    const canvas::Canvas& canvas_;
    canvas::Rect view_;
    Boxes forbidden_, discouraged_;
    std::vector<canvas::Rect> edges_, words_;
    std::vector<Lettered> lettered_;
    bool off_lines_ = false;
};

} // namespace lightoff::diagram
