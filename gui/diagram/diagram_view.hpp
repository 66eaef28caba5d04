// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/transform.hpp"
#include "gui/diagram/ladder.hpp"
#include "gui/view/known.hpp"

#include <optional>
#include <vector>

namespace lightoff::diagram {

/// What the pane keeps between frames.
struct DiagramView {
    canvas::Transform place; ///< drawing units to pixels
    canvas::Rect
        fitted_to; ///< area that it was last laid into; another area lays it anew unless moved by hand
    enum class Held : std::uint8_t {
        opened, ///< all of the sheet, or as much of it as letters allow
        whole,  ///< all of it, however small: it was asked for
        by_hand ///< moved or zoomed
    };
    Held held = Held::opened;
    std::optional<view::Thing> focus;                           ///< set by the page: the sheet opens there
    std::optional<ImVec2> followed;                             ///< drawing units: where it was led last
    view::Wanted::Lead lead_in_hand = view::Wanted::Lead::none; ///< set by the page: the next point gets it
    bool shows_all = false;       ///< set by a page that is no attempt: `carried` is drawn, nothing is walked
    std::vector<Carried> carried; ///< by node
    int cursor = -1;              ///< spot that the keyboard is on; -1: arrow keys move the sheet
    bool walking = false;         ///< arrow keys take the red lead along
    bool take_keyboard = false;   ///< set by the page: the pane gets the keyboard in the next frame
    bool has_keyboard = false;
    bool dragging = false;

    /// The whole ladder in an area.
    void fit_to(canvas::Rect area, const Ladder& ladder);
    /// As much of it as letters of this height (pixels) allow, about a place of it or from its upper left
    /// corner.
    void open_in(canvas::Rect area, const Ladder& ladder, float letters, std::optional<ImVec2> about);
    /// Lays it anew if the area is another one, unless it was moved by hand.
    void keep_fitted(canvas::Rect area, const Ladder& ladder, float letters, std::optional<ImVec2> about);
    /// The whole ladder; once more: as it opens.
    void toggle_whole(canvas::Rect area, const Ladder& ladder, float letters, std::optional<ImVec2> about);
    /// Moves it so that a place of it lies that far within the area; not if all of it is in sight.
    void show(canvas::Rect area, const Ladder& ladder, ImVec2 at, float within);
    [[nodiscard]] bool shows_whole(canvas::Rect area, const Ladder& ladder) const;
    /// Pixels.
    void pan(ImVec2 by);
    /// Between the least and the most zoom; what lies at `about` (pixels) stays there.
    void zoom_by(canvas::Rect area, const Ladder& ladder, ImVec2 about, float factor);
};

/// Whether rows are high enough for letters of this height: they and a quarter of it between.
bool bears_letters(const canvas::Transform& place, float letters);

} // namespace lightoff::diagram
