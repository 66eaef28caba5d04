// SPDX-License-Identifier: MIT
#include "gui/canvas/fills.hpp"

#include <cmath>
#include <cstdint>

namespace lightoff::canvas {
namespace {

constexpr int kGlowSides = 40;

void vertex(ImDrawList& list, ImVec2 at, Colour colour) {
    list.PrimWriteVtx(at, ImGui::GetFontTexUvWhitePixel(), packed(colour));
}

/// Even bits from a counter; only decoration hangs on them. Source: the finaliser of MurmurHash3 (public
/// domain).
std::uint32_t scattered(std::uint32_t x) {
    x ^= x >> 16;
    x *= 0x85ebca6bU;
    x ^= x >> 13;
    x *= 0xc2b2ae35U;
    return x ^ (x >> 16);
}

float unit_float(std::uint32_t x) {
    return static_cast<float>(x >> 8) / 16777216.0F;
}

} // namespace

void fill(const Canvas& canvas, Rect box, Colour colour) {
    canvas.list->AddRectFilled(box.min, box.max, packed(colour));
}

void strip(const Canvas& canvas, Path one_edge, Path other_edge, Colour one, Colour other) {
    const std::size_t count = std::min(one_edge.size(), other_edge.size());
    if (count < 2) {
        return;
    }
    ImDrawList& list = *canvas.list;
    list.PrimReserve(static_cast<int>(count - 1) * 6, static_cast<int>(count) * 2);
    const unsigned base = list._VtxCurrentIdx;
    for (std::size_t i = 0; i < count; ++i) {
        vertex(list, one_edge[i], one);
        vertex(list, other_edge[i], other);
    }
    for (unsigned i = 0; i + 1 < count; ++i) {
        const unsigned at = base + 2 * i;
        for (const unsigned corner : {at, at + 1, at + 3, at, at + 3, at + 2}) {
            list.PrimWriteIdx(static_cast<ImDrawIdx>(corner));
        }
    }
}

void glow(const Canvas& canvas, ImVec2 centre, float radius, Colour colour, float strength) {
    ImDrawList& list = *canvas.list;
    const bool adds = canvas.additive != nullptr && canvas.ordinary != nullptr;
    if (adds) {
        list.AddCallback(canvas.additive, nullptr);
    }
    list.PrimReserve(kGlowSides * 3, kGlowSides + 1);
    const unsigned base = list._VtxCurrentIdx;
    vertex(list, centre, faded(colour, strength));
    for (int i = 0; i < kGlowSides; ++i) {
        const float angle = kTurn * static_cast<float>(i) / static_cast<float>(kGlowSides);
        vertex(list, centre + ImVec2{std::cos(angle), std::sin(angle)} * radius, faded(colour, 0));
    }
    for (unsigned i = 0; i < kGlowSides; ++i) {
        list.PrimWriteIdx(static_cast<ImDrawIdx>(base));
        list.PrimWriteIdx(static_cast<ImDrawIdx>(base + 1 + i));
        list.PrimWriteIdx(static_cast<ImDrawIdx>(base + 1 + (i + 1) % kGlowSides));
    }
    if (adds) {
        list.AddCallback(canvas.ordinary, nullptr);
    }
}

void hatch(const Canvas& canvas, Rect box, Colour colour, float gap) {
    const float step = canvas.px(gap);
    canvas.list->PushClipRect(box.min, box.max, true);
    for (float x = box.min.x - box.height(); x < box.max.x; x += step) {
        canvas.list->AddLine({x, box.max.y}, {x + box.height(), box.min.y}, packed(colour),
                             line_width(canvas, Line::Rule));
    }
    canvas.list->PopClipRect();
}

void stipple(const Canvas& canvas, Rect box, int step, Colour colour) {
    const float cell = canvas.px(6);
    const float share = 0.16F * static_cast<float>(std::clamp(step, 0, 5));
    std::uint32_t n = 0;
    for (float y = box.min.y + cell / 2; y < box.max.y; y += cell) {
        for (float x = box.min.x + cell / 2; x < box.max.x; x += cell) {
            const std::uint32_t bits = scattered(++n);
            if (unit_float(bits) < share) {
                const ImVec2 off{unit_float(scattered(bits)) - 0.5F, unit_float(scattered(bits + 1)) - 0.5F};
                canvas.list->AddCircleFilled(ImVec2{x, y} + off * (cell * 0.7F), canvas.px(0.9F),
                                             packed(colour), 6);
            }
        }
    }
}

} // namespace lightoff::canvas
