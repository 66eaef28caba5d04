// SPDX-License-Identifier: MIT
#include "gui/canvas/lettering.hpp"

#include "gui/canvas/layout_probe.hpp"

#include <array>
#include <cmath>
#include <cstdio>
#include <optional>

namespace lightoff::canvas {
namespace {

constexpr std::string_view kEllipsis = "…";

const char* end_of(std::string_view words) {
    return words.data() + words.size();
}

/// Whole pixels: glyphs are rendered for them.
ImVec2 snapped(ImVec2 at) {
    return {std::round(at.x), std::round(at.y)};
}

ImVec2 aligned(ImVec2 at, float width, Align align) {
    const float share = align == Align::Start ? 0.0F : align == Align::Middle ? 0.5F : 1.0F;
    return snapped({at.x - width * share, at.y});
}

void note(const Canvas& canvas, Rect box, std::string_view words, bool shortened, Colour colour,
          std::optional<Colour> halo = {}) {
    if (canvas.probe != nullptr) {
        canvas.probe->add_text(box, {canvas.list->GetClipRectMin(), canvas.list->GetClipRectMax()}, words,
                               shortened, colour, halo);
    }
}

void put(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour colour, float wrap = 0) {
    const ImFont* font = canvas.fonts->of(type);
    canvas.list->AddText(font, font->FontSize, at, packed(colour), words.data(), end_of(words), wrap);
}

std::size_t without_last_letter(std::string_view words) {
    std::size_t n = words.size() - 1;
    while (n > 0 && (static_cast<unsigned char>(words[n]) & 0xC0U) == 0x80U) {
        --n; // continuation bytes of UTF-8
    }
    return n;
}

std::string shortened_to(const Canvas& canvas, std::string_view words, Type type, float width) {
    while (!words.empty()) {
        words = words.substr(0, without_last_letter(words));
        std::string shorter = std::string(words) + std::string(kEllipsis);
        if (text_size(canvas, shorter, type).x <= width) {
            return shorter;
        }
    }
    return std::string(kEllipsis);
}

} // namespace

ImVec2 text_size(const Canvas& canvas, std::string_view words, Type type, float wrap) {
    const ImFont* font = canvas.fonts->of(type);
    return font->CalcTextSizeA(font->FontSize, 1e9F, wrap, words.data(), end_of(words));
}

float line_height(const Canvas& canvas, Type type) {
    return canvas.fonts->of(type)->FontSize;
}

Rect text(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour colour, Align align,
          std::optional<Colour> on_halo) {
    const ImVec2 size = text_size(canvas, words, type);
    const ImVec2 corner = aligned(at, size.x, align);
    put(canvas, corner, words, type, colour);
    const Rect box = rect_at(corner, size);
    note(canvas, box, words, false, colour, on_halo);
    return box;
}

Rect text_in(const Canvas& canvas, Rect box, std::string_view words, Type type, Colour colour, Align align) {
    std::string shorter;
    const bool fits = text_size(canvas, words, type).x <= box.width() + 0.5F;
    if (!fits) {
        shorter = shortened_to(canvas, words, type, box.width());
    }
    const std::string_view shown = fits ? words : std::string_view(shorter);
    const ImVec2 size = text_size(canvas, shown, type);
    const float x = align == Align::Start ? box.min.x : align == Align::Middle ? box.centre().x : box.max.x;
    const ImVec2 corner = aligned({x, box.centre().y - size.y / 2}, size.x, align);
    put(canvas, corner, shown, type, colour);
    const Rect filled = rect_at(corner, size);
    note(canvas, filled, words, !fits, colour);
    return filled;
}

Rect paragraph(const Canvas& canvas, ImVec2 at, float width, std::string_view words, Type type,
               Colour colour) {
    const ImVec2 corner = snapped(at);
    put(canvas, corner, words, type, colour, width);
    const Rect box = rect_at(corner, text_size(canvas, words, type, width));
    note(canvas, box, words, false, colour);
    return box;
}

void halo_of(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour halo, Align align) {
    const ImVec2 corner = aligned(at, text_size(canvas, words, type).x, align);
    const float r = std::max(1.0F, std::round(canvas.px(2)));
    for (const ImVec2 off :
         std::array<ImVec2, 8>{ImVec2{-r, 0}, {r, 0}, {0, -r}, {0, r}, {-r, -r}, {r, r}, {-r, r}, {r, -r}}) {
        put(canvas, corner + off, words, type, halo);
    }
}

Rect haloed_text(const Canvas& canvas, ImVec2 at, std::string_view words, Type type, Colour colour,
                 Colour halo, Align align) {
    halo_of(canvas, at, words, type, halo, align);
    return text(canvas, at, words, type, colour, align, halo);
}

std::string_view longest_that_fits(const Canvas& canvas, std::initializer_list<std::string_view> words,
                                   Type type, float width) {
    std::string_view last;
    for (const std::string_view one : words) {
        last = one;
        if (text_size(canvas, one, type).x <= width) {
            break;
        }
    }
    return last;
}

Type largest_type(const Canvas& canvas, std::string_view words, float width) {
    for (const Type type : {Type::Heading, Type::Body}) {
        if (text_size(canvas, words, type).x <= width) {
            return type;
        }
    }
    return Type::Secondary;
}

std::string figure(double value, int decimals) {
    if (!std::isfinite(value)) {
        return "–";
    }
    std::array<char, 48> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%.*f", decimals, std::abs(value));
    const std::string digits(buffer.data());
    const bool is_zero = digits.find_first_of("123456789") == std::string::npos;
    return value < 0 && !is_zero ? "−" + digits : digits;
}

} // namespace lightoff::canvas
