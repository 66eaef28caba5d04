// SPDX-License-Identifier: MIT
#include "gui/paper/rulings.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace lightoff::paper {

using namespace canvas;

namespace {

/// Through every line of words that are broken at `wide`.
void strike_through(const Canvas& canvas, ImVec2 at, float wide, std::string_view words, Type type) {
    const ImFont* font = canvas.fonts->of(type);
    const char* begin = words.data();
    const char* const end = words.data() + words.size();
    while (begin < end) {
        const char* line_end = font->CalcWordWrapPositionA(1.0F, begin, end, wide);
        line_end = line_end == begin ? end : line_end;
        const std::string_view line(begin, static_cast<std::size_t>(line_end - begin));
        const float y = std::round(at.y + font->FontSize * 0.54F);
        canvas.list->AddLine({at.x - canvas.px(3), y},
                             {at.x + text_size(canvas, line, type).x + canvas.px(3), y},
                             packed(canvas.theme->ink), line_width(canvas, Line::Outline));
        at.y += font->FontSize;
        begin = line_end;
        while (begin < end && *begin == ' ')
            ++begin;
    }
}

struct ButtonBox {
    ImVec2 size;
    float x = 0;
};

std::vector<ButtonBox> measure(const Canvas& canvas, std::span<const std::string> buttons) {
    std::vector<ButtonBox> boxes;
    for (const std::string& button : buttons) {
        const ImVec2 words = text_size(canvas, sheet::shown_part(button), Type::Secondary);
        boxes.push_back({{std::max(24.0F, std::ceil(words.x) + 2 * canvas.px(9)),
                          std::round(std::max(24.0F, words.y + canvas.px(8)))}});
    }
    return boxes;
}

} // namespace

std::optional<std::size_t> draw_entry(Column& column, std::string_view words, Type type, bool struck,
                                      std::span<const std::string> buttons) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    std::vector<ButtonBox> boxes = measure(canvas, buttons);
    float wide = 0;
    float tall = 0;
    for (const ButtonBox& box : boxes) {
        wide += box.size.x + canvas.px(6);
        tall = std::max(tall, box.size.y);
    }
    const std::string_view shown = sheet::shown_part(words);
    const bool beside = column.width() - wide >= std::min(text_size(canvas, shown, type).x, canvas.px(190));
    const float words_wide = beside ? column.width() - wide - canvas.px(4) : column.width();
    const float high = text_size(canvas, shown, type, words_wide).y;
    const Rect box = column.take(std::max(high, beside ? tall : 0.0F) + canvas.px(4));
    const Canvas here = column.canvas_for(box);
    const ImVec2 at{box.min.x, std::round(box.centre().y - high / 2)};
    paragraph(here, at, words_wide, shown, type, struck ? theme.pencil : theme.ink);
    if (struck)
        strike_through(here, at, words_wide, shown, type);
    if (!beside) {
        column.gap(2);
        return column.buttons(buttons);
    }
    std::optional<std::size_t> pressed;
    float x = box.max.x - wide + canvas.px(6);
    for (std::size_t i = 0; i < buttons.size(); ++i) {
        const Rect button =
            rect_at({std::round(x), std::round(box.centre().y - boxes[i].size.y / 2)}, boxes[i].size);
        x += boxes[i].size.x + canvas.px(6);
        const std::string_view label = sheet::shown_part(buttons[i]);
        const sheet::Touch touch = sheet::touch(here, button, buttons[i], label);
        sheet::frame_of(here, button, touch);
        text_in(here, button, label, Type::Secondary, touch.held ? theme.ground : theme.ink, Align::Middle);
        if (touch.pressed)
            pressed = i;
    }
    return pressed;
}

void draw_double_frame(const Canvas& canvas, Rect box) {
    outline(canvas, box, Line::Outline, canvas.theme->ink);
    outline(canvas, box.shrunk(canvas.px(5)), Line::Rule, canvas.theme->ink);
}

void draw_tag(const Canvas& canvas, Rect box) {
    const float cut = canvas.px(20);
    const std::array<ImVec2, 6> edge{ImVec2{box.min.x + cut, box.min.y},
                                     ImVec2{box.max.x, box.min.y},
                                     box.max,
                                     ImVec2{box.min.x + cut, box.max.y},
                                     ImVec2{box.min.x, box.max.y - cut},
                                     ImVec2{box.min.x, box.min.y + cut}};
    stroke(canvas, edge, Line::Outline, canvas.theme->ink, true);
    const ImVec2 hole{box.min.x + canvas.px(15), box.centre().y};
    canvas.list->AddCircle(hole, canvas.px(6), packed(canvas.theme->ink), 24,
                           line_width(canvas, Line::Detail));
    canvas.list->AddCircle(hole, canvas.px(3), packed(canvas.theme->ink), 24,
                           line_width(canvas, Line::Detail));
}

std::string capitalised(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

std::string for_people(std::string_view name) {
    std::string words(name);
    for (char& c : words)
        if (c == '-' || c == '_')
            c = ' ';
    return capitalised(std::move(words));
}

} // namespace lightoff::paper
