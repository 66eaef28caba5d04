// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/lettering.hpp"

#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <string_view>

/// Sheets of paper: lettering, rulings and controls one below the other, in whatever width there is.
namespace lightoff::sheet {

using canvas::Canvas;
using canvas::Colour;
using canvas::Rect;
using canvas::Type;

/// What a pointer or the keyboard does to a place drawn by the caller.
struct Touch {
    bool pressed = false, hovered = false, held = false, keyboard = false;
};
/// Makes a box a place to press; `name` is told to the layout probe. `id` must be its own among its siblings.
Touch touch(const Canvas& canvas, Rect box, std::string_view id, std::string_view name);
/// The frame that shows it: a hairline, reversed ground while `chosen` or held, a heavy one for the keyboard.
void frame_of(const Canvas& canvas, Rect box, const Touch& touch, bool chosen = false);

/// A column that is filled from the top. What does not fit is reached by scrolling: nothing in it is ever
/// shortened, words are broken into as many lines as they need.
class Column {
public:
    /// Begins a child window of that id; its end is the column's.
    Column(const Canvas& outer, Rect area, const char* id);
    ~Column();
    Column(const Column&) = delete;
    Column& operator=(const Column&) = delete;

    [[nodiscard]] const Canvas& canvas() const { return canvas_; }
    [[nodiscard]] float px(float design_px) const { return canvas_.px(design_px); }
    [[nodiscard]] float width() const { return area_.width(); }
    [[nodiscard]] float left() const { return area_.min.x; }
    [[nodiscard]] float right() const { return area_.max.x; }
    [[nodiscard]] float y() const { return y_; }
    /// Canvas for drawing in a box: the layout probe hears of it only if all of it is in view, for a line cut
    /// through by the edge of a scrolled sheet is no mistake.
    [[nodiscard]] Canvas canvas_for(Rect box) const;

    void gap(float design_px) { y_ += std::round(px(design_px)); }
    /// The next piece of the column, for drawing of the caller's own.
    Rect take(float height_px);
    /// What follows stands further in, and as it was.
    void indent(float design_px) { area_.min.x += std::round(px(design_px)); }
    /// The same at the right.
    void narrow(float design_px) { area_.max.x -= std::round(px(design_px)); }

    void title(std::string_view words) { words_in(words, Type::Title, canvas_.theme->ink, 0); }
    void heading(std::string_view words);
    void words(std::string_view words, Type type = Type::Body);
    /// Secondary, in pencil.
    void note(std::string_view words);
    void alarm(std::string_view words);
    void rule();
    /// A form's line: what it is in pencil, what is written there in ink, a ruling under both.
    void field(std::string_view label, std::string_view value);

    /// A button as wide as its words.
    bool button(std::string_view words, bool chosen = false);
    /// Buttons beside each other, in as many lines as they need; the index of the one pressed.
    std::optional<std::size_t> buttons(std::span<const std::string> words,
                                       std::optional<std::size_t> chosen = {});
    /// A line across the whole column that can be pressed, and a note under its words.
    bool row(std::string_view words, std::string_view note = {}, bool chosen = false);
    /// A field to write in. True when its text has changed.
    bool text_field(std::string_view label, std::string& text);

private:
    void words_in(std::string_view words, Type type, Colour colour, float indent_px);
    [[nodiscard]] Rect button_box(std::string_view words, ImVec2 at) const;

    Canvas canvas_;
    Rect view_;
    Rect area_;
    float y_ = 0;
};

/// Words of a button or row: what follows "##" tells it apart and is not shown. After "###" it alone does, so
/// that a control whose words change stays the same control.
std::string_view shown_part(std::string_view words);

} // namespace lightoff::sheet
