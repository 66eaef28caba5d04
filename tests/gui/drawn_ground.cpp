// SPDX-License-Identifier: MIT
#include "gui/drawn_ground.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <utility>

namespace lightoff::test {
namespace {

using canvas::Colour;
using canvas::Rect;

constexpr double kLeastShare = 0.1; ///< of a text's letters
constexpr int kSameColour = 6;      ///< sum over the channels: rounding of blended colours

Colour unpacked(ImU32 colour) {
    return {static_cast<std::uint8_t>(colour >> IM_COL32_R_SHIFT & 255U),
            static_cast<std::uint8_t>(colour >> IM_COL32_G_SHIFT & 255U),
            static_cast<std::uint8_t>(colour >> IM_COL32_B_SHIFT & 255U),
            static_cast<std::uint8_t>(colour >> IM_COL32_A_SHIFT & 255U)};
}

void blend(Colour& pixel, Colour over) {
    if (over.a == 255) {
        pixel = over;
        return;
    }
    if (over.a == 0)
        return;
    const Colour opaque{over.r, over.g, over.b, 255};
    pixel = canvas::mix(pixel, opaque, static_cast<float>(over.a) / 255);
}

int apart(Colour a, Colour b) {
    return std::abs(a.r - b.r) + std::abs(a.g - b.g) + std::abs(a.b - b.b);
}

/// The library's texture of letters and smoothed lines.
class Texture {
public:
    explicit Texture(ImFontAtlas& atlas) : white_(atlas.TexUvWhitePixel) {
        atlas.GetTexDataAsAlpha8(&pixels_, &width_, &height_);
        if (atlas.PackIdLines >= 0) {
            const ImFontAtlasCustomRect& rect = *atlas.GetCustomRectByIndex(atlas.PackIdLines);
            const ImVec2 one{1.0F / static_cast<float>(width_), 1.0F / static_cast<float>(height_)};
            lines_ = {{static_cast<float>(rect.X) * one.x, static_cast<float>(rect.Y) * one.y},
                      {static_cast<float>(rect.X + rect.Width) * one.x,
                       static_cast<float>(rect.Y + rect.Height) * one.y}};
        }
    }
    [[nodiscard]] bool is_plain(ImVec2 uv) const { return uv.x == white_.x && uv.y == white_.y; }
    [[nodiscard]] bool is_letter(ImVec2 uv) const { return !is_plain(uv) && !lines_.holds(uv); }
    [[nodiscard]] float opacity(ImVec2 uv) const {
        const int x = std::clamp(static_cast<int>(uv.x * static_cast<float>(width_)), 0, width_ - 1);
        const int y = std::clamp(static_cast<int>(uv.y * static_cast<float>(height_)), 0, height_ - 1);
        return static_cast<float>(pixels_[y * width_ + x]) / 255;
    }

private:
    ImVec2 white_;
    Rect lines_{{-1, -1}, {-1, -1}};
    unsigned char* pixels_ = nullptr;
    int width_ = 0, height_ = 0;
};

struct Corner {
    ImVec2 at, uv;
    std::array<float, 4> colour{};
};

Corner corner_of(const ImDrawVert& vertex, ImVec2 origin) {
    const Colour c = unpacked(vertex.col);
    return {
        {vertex.pos.x - origin.x, vertex.pos.y - origin.y},
        vertex.uv,
        {static_cast<float>(c.r), static_cast<float>(c.g), static_cast<float>(c.b), static_cast<float>(c.a)}};
}

float edge(ImVec2 a, ImVec2 b, ImVec2 p) {
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

/// Whether points on this edge belong to the triangle: of two that share an edge, one gets them.
bool takes_edge(ImVec2 a, ImVec2 b) {
    return b.y < a.y || (b.y == a.y && b.x > a.x);
}

class Filler {
public:
    Filler(Drawn& drawn, const Texture& texture) : drawn_(drawn), texture_(texture) {}

    void triangle(std::array<Corner, 3> t, Rect clip) {
        float area = edge(t[0].at, t[1].at, t[2].at);
        if (area == 0)
            return;
        if (area < 0) {
            std::swap(t[1], t[2]);
            area = -area;
        }
        const bool letter = texture_.is_letter(t[0].uv) || texture_.is_letter(t[1].uv);
        const auto [left, right] = std::minmax({t[0].at.x, t[1].at.x, t[2].at.x});
        const auto [top, bottom] = std::minmax({t[0].at.y, t[1].at.y, t[2].at.y});
        const int x0 = std::max(0, static_cast<int>(std::floor(std::max(left, clip.min.x))));
        const int y0 = std::max(0, static_cast<int>(std::floor(std::max(top, clip.min.y))));
        const int x1 = std::min(drawn_.width, static_cast<int>(std::ceil(std::min(right, clip.max.x))));
        const int y1 = std::min(drawn_.height, static_cast<int>(std::ceil(std::min(bottom, clip.max.y))));
        const bool plain = letter || texture_.is_plain(t[0].uv);
        const bool even = plain && t[0].colour == t[1].colour && t[0].colour == t[2].colour;
        const Colour colour = colour_of(t[0].colour, 1);
        for (int y = y0; y < y1; ++y) {
            const auto [from, to] = span_of(t, y, x0, x1);
            for (int x = from; x < to; ++x)
                even ? put(drawn_.at(x, y), colour, letter)
                     : put(drawn_.at(x, y), t, shares(t, x, y), area, letter);
        }
    }

private:
    static ImVec2 middle(int x, int y) {
        return {static_cast<float>(x) + 0.5F, static_cast<float>(y) + 0.5F};
    }
    static std::array<float, 3> shares(const std::array<Corner, 3>& t, int x, int y) {
        const ImVec2 p = middle(x, y);
        return {edge(t[1].at, t[2].at, p), edge(t[2].at, t[0].at, p), edge(t[0].at, t[1].at, p)};
    }
    static bool inside(const std::array<Corner, 3>& t, int x, int y) {
        const std::array<float, 3> share = shares(t, x, y);
        for (std::size_t i = 0; i < 3; ++i)
            if (share[i] < 0 || (share[i] == 0 && !takes_edge(t[(i + 1) % 3].at, t[(i + 2) % 3].at)))
                return false;
        return true;
    }
    /// The pixels of a row that lie in the triangle: it has no dents, so they are one run.
    static std::pair<int, int> span_of(const std::array<Corner, 3>& t, int y, int from, int to) {
        const float row = static_cast<float>(y) + 0.5F;
        float left = static_cast<float>(from);
        float right = static_cast<float>(to);
        for (std::size_t i = 0; i < 3; ++i) {
            const ImVec2 a = t[(i + 1) % 3].at;
            const ImVec2 b = t[(i + 2) % 3].at;
            if (a.y == b.y)
                continue;
            const float x = a.x + (b.x - a.x) * (row - a.y) / (b.y - a.y);
            if (b.y < a.y)
                left = std::max(left, x - 2);
            else
                right = std::min(right, x + 2);
        }
        from = std::max(from, static_cast<int>(left));
        to = std::min(to, static_cast<int>(std::ceil(right)));
        while (from < to && !inside(t, from, y))
            ++from;
        while (from < to && !inside(t, to - 1, y))
            --to;
        return {from, to};
    }

    void put(std::size_t pixel, const std::array<Corner, 3>& t, const std::array<float, 3>& share, float area,
             bool letter) {
        std::array<float, 4> c{};
        ImVec2 uv{0, 0};
        for (std::size_t i = 0; i < 3; ++i) {
            for (std::size_t k = 0; k < 4; ++k)
                c[k] += t[i].colour[k] * share[i] / area;
            uv = {uv.x + t[i].uv.x * share[i] / area, uv.y + t[i].uv.y * share[i] / area};
        }
        const bool plain = letter || texture_.is_plain(t[0].uv);
        put(pixel, colour_of(c, plain ? 1.0F : texture_.opacity(uv)), letter);
    }
    void put(std::size_t pixel, Colour colour, bool letter) {
        blend(drawn_.inked[pixel], colour);
        if (letter)
            drawn_.letter[pixel] = true;
        else
            blend(drawn_.ground[pixel], colour);
    }
    static Colour colour_of(const std::array<float, 4>& c, float opacity) {
        const auto byte = [](float v) {
            return static_cast<std::uint8_t>(std::clamp(v, 0.0F, 255.0F) + 0.5F);
        };
        return {byte(c[0]), byte(c[1]), byte(c[2]), byte(c[3] * opacity)};
    }

    Drawn& drawn_;
    const Texture& texture_;
};

} // namespace

Drawn last_frame(Colour clear) {
    const ImDrawData& data = *ImGui::GetDrawData();
    Drawn drawn;
    drawn.width = static_cast<int>(data.DisplaySize.x);
    drawn.height = static_cast<int>(data.DisplaySize.y);
    const std::size_t pixels = static_cast<std::size_t>(drawn.width) * static_cast<std::size_t>(drawn.height);
    drawn.ground.assign(pixels, clear);
    drawn.inked.assign(pixels, clear);
    drawn.letter.assign(pixels, false);
    const Texture texture(*ImGui::GetIO().Fonts);
    Filler filler(drawn, texture);
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            const Rect clip{{command.ClipRect.x, command.ClipRect.y},
                            {command.ClipRect.z, command.ClipRect.w}};
            for (unsigned i = 0; i + 2 < command.ElemCount; i += 3) {
                std::array<Corner, 3> t;
                for (unsigned k = 0; k < 3; ++k)
                    t[k] = corner_of(
                        list.VtxBuffer[static_cast<int>(
                            command.VtxOffset + list.IdxBuffer[static_cast<int>(command.IdxOffset + i + k)])],
                        data.DisplayPos);
                filler.triangle(t, clip);
            }
        }
    }
    return drawn;
}

std::vector<Pair> pairs_of(const Drawn& drawn, const canvas::LayoutProbe::Text& text) {
    struct Found {
        Pair pair;
        int pixels = 0;
    };
    std::vector<Found> found;
    int all = 0;
    const Rect box{{std::max({text.ink.min.x, text.clip.min.x, 0.0F}),
                    std::max({text.ink.min.y, text.clip.min.y, 0.0F})},
                   {std::min({text.ink.max.x, text.clip.max.x, static_cast<float>(drawn.width)}),
                    std::min({text.ink.max.y, text.clip.max.y, static_cast<float>(drawn.height)})}};
    for (int y = static_cast<int>(box.min.y); y < static_cast<int>(box.max.y); ++y)
        for (int x = static_cast<int>(box.min.x); x < static_cast<int>(box.max.x); ++x) {
            const std::size_t pixel = drawn.at(x, y);
            if (!drawn.letter[pixel])
                continue;
            Colour asked = drawn.ground[pixel];
            blend(asked, text.colour);
            if (apart(asked, drawn.inked[pixel]) > kSameColour)
                continue; // a neighbour's letter, or its halo
            const Colour ground = text.halo.value_or(drawn.ground[pixel]);
            ++all;
            const auto same = std::find_if(found.begin(), found.end(), [&](const Found& one) {
                return apart(one.pair.ground, ground) <= kSameColour;
            });
            if (same != found.end())
                ++same->pixels;
            else
                found.push_back({{drawn.inked[pixel], ground, 0, text.words}, 1});
        }
    std::vector<Pair> pairs;
    for (Found& one : found)
        if (one.pixels >= kLeastShare * all) {
            one.pair.contrast = canvas::contrast(one.pair.ink, one.pair.ground);
            pairs.push_back(one.pair);
        }
    return pairs;
}

} // namespace lightoff::test
