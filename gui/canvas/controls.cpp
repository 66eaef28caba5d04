// SPDX-License-Identifier: MIT
#include "gui/canvas/controls.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/tab_order.hpp"

#include <cmath>
#include <string>

namespace lightoff::canvas {
namespace {

constexpr float kSidePadding = 12; // design pixels
constexpr float kLeastTarget = 24; // pixels on the screen, WCAG 2.2 target size (minimum), level AA

std::string_view shown_part(std::string_view words) {
    return words.substr(0, words.find("##"));
}

/// Of the key's name and the gap before it.
float key_width(const Canvas& canvas, std::string_view key) {
    return key.empty() ? 0 : std::ceil(text_size(canvas, key, Type::Minimum).x + canvas.px(8));
}

float shared_edge(const Canvas& canvas) {
    return std::round(line_width(canvas, Line::Rule));
}

} // namespace

bool press_area(const char* id, Rect box) {
    ImGui::SetCursorScreenPos(box.min);
    return ImGui::InvisibleButton(id, {std::max(1.0F, box.width()), std::max(1.0F, box.height())});
}

float control_height(const Canvas& canvas) {
    return std::max(kLeastTarget, line_height(canvas, Type::Body) + canvas.px(12));
}

float button_width(const Canvas& canvas, std::string_view words, std::string_view key) {
    return std::max(kLeastTarget, text_size(canvas, shown_part(words), Type::Body).x +
                                      key_width(canvas, key) + 2 * canvas.px(kSidePadding));
}

bool button(const Canvas& canvas, Rect box, std::string_view words, bool chosen, std::string_view key) {
    const std::string id(words);
    const bool clicked = press_area(id.c_str(), box);
    tab_stop();
    const bool pressed = clicked || enter_pressed();
    const bool hovered = ImGui::IsItemHovered();
    const bool reversed = chosen || ImGui::IsItemActive();
    const Theme& theme = *canvas.theme;

    if (reversed || hovered) {
        fill(canvas, box, reversed ? theme.ink : theme.panel);
    }
    outline(canvas, box, Line::Rule, hovered ? theme.ink : theme.pencil);
    if (has_keyboard()) {
        outline(canvas, box.shrunk(-canvas.px(3)), Line::Outline, theme.ink);
    }
    Rect inner{{box.min.x + canvas.px(4), box.min.y}, {box.max.x - canvas.px(4), box.max.y}};
    if (!key.empty()) {
        inner.cut_right(canvas.px(kSidePadding - 4));
        text_in(canvas, inner.cut_right(key_width(canvas, key)), key, Type::Minimum,
                reversed ? theme.panel : theme.pencil, Align::End);
        inner.cut_left(canvas.px(kSidePadding - 4));
    }
    text_in(canvas, inner, shown_part(words), Type::Body, reversed ? theme.ground : theme.ink, Align::Middle);
    if (canvas.probe != nullptr) {
        canvas.probe->add_target(box, shown_part(words));
    }
    return pressed;
}

float choice_width(const Canvas& canvas, std::span<const std::string_view> words) {
    float width = shared_edge(canvas);
    for (const std::string_view word : words) {
        width += button_width(canvas, word) - shared_edge(canvas);
    }
    return width;
}

std::size_t choice(const Canvas& canvas, Rect row, std::span<const std::string_view> words,
                   std::size_t chosen) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (button(canvas, row.cut_left(button_width(canvas, words[i])), words[i], i == chosen)) {
            chosen = i;
        }
        row.min.x -= shared_edge(canvas);
    }
    return chosen;
}

} // namespace lightoff::canvas
