// SPDX-License-Identifier: MIT
#include "gui/sheet/column.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/tab_order.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::sheet {

using namespace canvas;

namespace {

constexpr float kSide = 12;          // design pixels beside a button's words
constexpr float kLeastTarget = 24;   // pixels
constexpr std::size_t kLongest = 64; // letters that can be typed into a field
constexpr float kLabelShare = 0.38F; // of a form's line

} // namespace

std::string_view shown_part(std::string_view words) {
    return words.substr(0, words.find("##"));
}

Touch touch(const Canvas& canvas, Rect box, std::string_view id, std::string_view name) {
    ImGui::SetCursorScreenPos(box.min);
    Touch touch;
    touch.pressed = canvas::press_area(std::string(id).c_str(), box);
    tab_stop();
    touch.pressed = touch.pressed || enter_pressed();
    touch.hovered = ImGui::IsItemHovered();
    touch.held = ImGui::IsItemActive();
    touch.keyboard = has_keyboard();
    if (canvas.probe != nullptr) {
        canvas.probe->add_target(box, name);
    }
    return touch;
}

void frame_of(const Canvas& canvas, Rect box, const Touch& touch, bool chosen) {
    const Theme& theme = *canvas.theme;
    if (chosen || touch.held || touch.hovered) {
        fill(canvas, box, chosen || touch.held ? theme.ink : theme.panel);
    }
    outline(canvas, box, Line::Rule, touch.hovered ? theme.ink : theme.pencil);
    if (touch.keyboard) {
        outline(canvas, box.shrunk(-canvas.px(3)), Line::Outline, theme.ink);
    }
}

Column::Column(const Canvas& outer, Rect area, const char* id) {
    ImGui::SetCursorScreenPos(area.min);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    ImGui::BeginChild(id, area.size(), false, ImGuiWindowFlags_NoBackground);
    ImGui::PopStyleVar();
    canvas_ = outer.here();
    view_ = area;
    const float margin = std::round(outer.px(6)); // the keyboard's frame stands outside of what it frames
    area_ = area;
    area_.min.x += margin;
    area_.max.x -= std::round(ImGui::GetStyle().ScrollbarSize) + margin;
    y_ = std::round(area.min.y - ImGui::GetScrollY() + margin);
}

Column::~Column() {
    ImGui::SetCursorScreenPos({view_.min.x, y_});
    ImGui::Dummy({1, std::round(canvas_.px(8))});
    ImGui::EndChild();
}

Canvas Column::canvas_for(Rect box) const {
    Canvas copy = canvas_;
    if (box.min.y < view_.min.y || box.max.y > view_.max.y) {
        copy.probe = nullptr;
    }
    return copy;
}

Rect Column::take(float height_px) {
    const Rect box{{area_.min.x, y_}, {area_.max.x, y_ + std::round(height_px)}};
    y_ = box.max.y;
    return box;
}

void Column::words_in(std::string_view words, Type type, Colour colour, float indent_px) {
    const float wide = width() - indent_px;
    const Rect box = take(text_size(canvas_, words, type, wide).y);
    if (box.max.y >= view_.min.y && box.min.y <= view_.max.y) {
        paragraph(canvas_for(box), {box.min.x + indent_px, box.min.y}, wide, words, type, colour);
    }
}

void Column::heading(std::string_view words) {
    gap(10);
    words_in(words, Type::Heading, canvas_.theme->ink, 0);
    gap(2);
    rule();
    gap(6);
}

void Column::words(std::string_view words, Type type) {
    words_in(words, type, canvas_.theme->ink, 0);
}

void Column::note(std::string_view words) {
    words_in(words, Type::Secondary, canvas_.theme->pencil, 0);
}

void Column::alarm(std::string_view words) {
    words_in(words, Type::Body, canvas_.theme->alarm, 0);
}

void Column::rule() {
    segment(canvas_, {area_.min.x, y_}, {area_.max.x, y_}, Line::Rule, canvas_.theme->pencil);
    y_ += std::round(std::max(1.0F, px(1)));
}

void Column::field(std::string_view label, std::string_view value) {
    const float label_wide = std::floor(width() * kLabelShare);
    const float value_wide = width() - label_wide;
    const ImVec2 words = text_size(canvas_, label, Type::Secondary);
    const bool beside = words.x <= label_wide - px(8) && width() >= px(300);
    if (!beside) {
        gap(4);
        note(label);
        words_in(value, Type::Body, canvas_.theme->ink, 0);
    } else {
        const Rect box = take(text_size(canvas_, value, Type::Body, value_wide).y + px(8));
        const Canvas here = canvas_for(box);
        const float drop = line_height(canvas_, Type::Body) - line_height(canvas_, Type::Secondary);
        text(here, {box.min.x, box.min.y + px(5) + drop * 0.7F}, label, Type::Secondary,
             canvas_.theme->pencil);
        paragraph(here, {box.min.x + label_wide, box.min.y + px(5)}, value_wide, value, Type::Body,
                  canvas_.theme->ink);
    }
    segment(canvas_, {area_.min.x, y_}, {area_.max.x, y_}, Line::Rule, canvas_.theme->rule);
    y_ += std::round(std::max(1.0F, px(1)));
}

Rect Column::button_box(std::string_view words, ImVec2 at) const {
    const std::string_view shown = shown_part(words);
    const float most = width() - 2 * px(kSide);
    const ImVec2 size = text_size(canvas_, shown, Type::Body, most);
    return rect_at(at, {std::max(kLeastTarget, std::ceil(size.x) + 2 * px(kSide)),
                        std::round(std::max(kLeastTarget, std::ceil(size.y) + px(10)))});
}

namespace {

bool draw_button(const Canvas& canvas, Rect box, std::string_view words, bool chosen) {
    const std::string_view shown = shown_part(words);
    const Touch now = touch(canvas, box, words, shown);
    frame_of(canvas, box, now, chosen);
    const float wide = box.width() - 2 * canvas.px(kSide);
    const ImVec2 size = text_size(canvas, shown, Type::Body, wide + 1);
    const Colour ink = chosen || now.held ? canvas.theme->ground : canvas.theme->ink;
    paragraph(canvas, {box.centre().x - size.x / 2, box.centre().y - size.y / 2}, wide + 1, shown, Type::Body,
              ink);
    return now.pressed;
}

} // namespace

bool Column::button(std::string_view words, bool chosen) {
    const Rect box = button_box(words, {area_.min.x, y_});
    y_ = std::round(box.max.y + px(8));
    return draw_button(canvas_for(box), box, words, chosen);
}

std::optional<std::size_t> Column::buttons(std::span<const std::string> words,
                                           std::optional<std::size_t> chosen) {
    std::optional<std::size_t> pressed;
    const float between = std::round(px(8));
    ImVec2 at{area_.min.x, y_};
    float tallest = 0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        Rect box = button_box(words[i], at);
        if (box.max.x > area_.max.x + 0.5F && at.x > area_.min.x) {
            at = {area_.min.x, at.y + tallest + between};
            tallest = 0;
            box = button_box(words[i], at);
        }
        if (draw_button(canvas_for(box), box, words[i], chosen == i)) {
            pressed = i;
        }
        tallest = std::max(tallest, box.height());
        at.x = box.max.x + between;
    }
    y_ = std::round(at.y + tallest + between);
    return pressed;
}

bool Column::row(std::string_view words, std::string_view note, bool chosen) {
    const Theme& theme = *canvas_.theme;
    const float side = px(8);
    const float wide = width() - 2 * side;
    const std::string_view shown = shown_part(words);
    const float first = text_size(canvas_, shown, Type::Body, wide).y;
    const float second = note.empty() ? 0 : text_size(canvas_, note, Type::Secondary, wide).y;
    const Rect box = take(std::max(kLeastTarget, first + second + px(8)));
    const Canvas here = canvas_for(box);
    const Touch now = touch(here, box, words, shown);
    if (chosen || now.held || now.hovered) {
        fill(here, box, chosen || now.held ? theme.ink : theme.panel);
    }
    segment(here, {box.min.x, box.max.y - 1}, {box.max.x, box.max.y - 1}, Line::Rule,
            now.hovered ? theme.ink : theme.rule);
    if (now.keyboard) {
        outline(here, box, Line::Outline, theme.ink);
    }
    if (box.max.y >= view_.min.y && box.min.y <= view_.max.y) {
        const bool reversed = chosen || now.held;
        const float top = box.centre().y - (first + second) / 2;
        paragraph(here, {box.min.x + side, top}, wide, shown, Type::Body,
                  reversed ? theme.ground : theme.ink);
        if (!note.empty()) {
            paragraph(here, {box.min.x + side, top + first}, wide, note, Type::Secondary,
                      reversed ? theme.ground : theme.pencil);
        }
    }
    return now.pressed;
}

bool Column::text_field(std::string_view label, std::string& text) {
    gap(2);
    note(shown_part(label));
    gap(2);
    std::array<char, kLongest> letters{};
    text.copy(letters.data(), letters.size() - 1);
    y_ = std::round(y_);
    ImGui::SetCursorScreenPos({area_.min.x, y_});
    const float above = std::ceil((control_height(canvas_) - line_height(canvas_, Type::Body)) / 2);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, ImVec2(std::round(px(8)), above));
    ImGui::PushFont(canvas_.fonts->of(Type::Body));
    ImGui::SetNextItemWidth(width());
    ImGui::PushAllowKeyboardFocus(false); // the library's own Tab would come in between
    const std::string id = "##" + std::string(label);
    const bool changed = ImGui::InputText(id.c_str(), letters.data(), letters.size());
    ImGui::PopAllowKeyboardFocus();
    tab_stop(true);
    const Rect box{ImGui::GetItemRectMin(), ImGui::GetItemRectMax()};
    ImGui::PopFont();
    ImGui::PopStyleVar();
    if (has_keyboard()) {
        outline(canvas_, box.shrunk(-px(3)), Line::Outline, canvas_.theme->ink);
    }
    if (canvas_.probe != nullptr) {
        canvas_.probe->add_target(box, shown_part(label));
    }
    y_ = std::round(box.max.y + px(6));
    if (changed) {
        text = letters.data();
    }
    return changed;
}

} // namespace lightoff::sheet
