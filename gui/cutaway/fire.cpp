// SPDX-License-Identifier: MIT
#include "gui/cutaway/fire.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/path_walker.hpp"

#include <cmath>
#include <vector>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr Colour kYellowFlame = hex(0xFFC24A);
constexpr Colour kWhite = hex(0xFFFFFF);
constexpr Colour kDullRed = hex(0x7A1408);
constexpr float kDullRed_k = 800;
constexpr float kBright_k = 1500;
constexpr int kSteps = 28;

struct Edges {
    std::vector<ImVec2> upper, lower;
};

/// Edges beside a stretch of the way; half(s) is the half width at share s of the stretch, swing(s) the
/// sideways shift.
template <class Half, class Swing>
Edges edges_along(const PathWalker& walk, float from, float to, Half half, Swing swing) {
    Edges edges;
    for (int i = 0; i <= kSteps; ++i) {
        const float s = static_cast<float>(i) / kSteps;
        const auto [point, along] = walk.at(from + (to - from) * s);
        const ImVec2 across{-along.y, along.x};
        edges.upper.push_back(point + across * (swing(s) - half(s)));
        edges.lower.push_back(point + across * (swing(s) + half(s)));
    }
    return edges;
}

/// Fat behind the mouth, then tapering to a point.
float body(float s) {
    return std::pow(1 - s, 0.62F) * (0.45F + 0.75F * std::min(1.0F, s * 4));
}

float hot_share(float gas_k) {
    return std::clamp((gas_k - 330) / 900, 0.0F, 1.0F);
}

} // namespace

void draw_flame(const Canvas& canvas, Path way, float full_length, float half_width, const Flame& flame,
                float time_s, int number) {
    if (flame.strength <= 0.02F || flame.length <= 0.02F) {
        return;
    }
    const Theme& theme = *canvas.theme;
    const PathWalker walk(way);
    const float from = flame.lift * half_width * 2.2F;
    const float length = full_length * flame.length * (0.35F + 0.65F * flame.strength);
    const float to = std::min(walk.length(), from + length);
    const Colour outer = mix(theme.blue_flame, kYellowFlame, flame.yellow);
    const Colour inner = mix(mix(theme.blue_flame, kWhite, 0.55F), kYellowFlame, flame.yellow * 0.6F);

    const float roughness = half_width * (0.05F + 0.35F * flame.softness);
    const float beat = 9 - 5 * flame.softness;
    const float offset = static_cast<float>(number) * 1.7F;
    const auto swing = [&](float s) { return roughness * s * std::sin(time_s * beat + offset + s * 7); };
    const auto width = [&](float share) {
        return [&, share](float s) { return half_width * share * body(s) * (0.5F + 0.5F * flame.strength); };
    };
    const Edges cloak = edges_along(walk, from, to, width(0.86F), swing);
    strip(canvas, cloak.upper, cloak.lower, faded(outer, 0.50F), faded(outer, 0.50F));
    const Edges heart = edges_along(walk, from, from + (to - from) * 0.72F, width(0.55F), swing);
    strip(canvas, heart.upper, heart.lower, faded(outer, 0.65F), faded(outer, 0.65F));
    const float cone_end = from + (to - from) * (0.30F + 0.15F * flame.yellow);
    const Edges cone = edges_along(walk, from, cone_end, width(0.30F), swing);
    strip(canvas, cone.upper, cone.lower, faded(inner, 0.95F), faded(inner, 0.95F));
    stroke(canvas, cloak.upper, Line::Detail, faded(outer, 0.9F));
    stroke(canvas, cloak.lower, Line::Detail, faded(outer, 0.9F));
}

Glow glow_of(const Theme& theme, float surface_k) {
    const float share = std::clamp((surface_k - kDullRed_k) / (kBright_k - kDullRed_k), 0.0F, 1.0F);
    if (share <= 0) {
        return {theme.pencil, 0};
    }
    const Colour warm = mix(kDullRed, theme.igniter, std::min(1.0F, share * 1.8F));
    return {mix(warm, kWhite, 0.65F * share * share), 0.9F * share * share};
}

void draw_flame_light(const Canvas& canvas, ImVec2 centre, float radius, const Flame& flame) {
    if (flame.strength > 0.02F) {
        glow(canvas, centre, radius, mix(canvas.theme->blue_flame, kYellowFlame, flame.yellow),
             0.30F * flame.strength);
    }
}

void draw_igniter_light(const Canvas& canvas, ImVec2 foot, float height, float surface_k) {
    const float strength = glow_of(*canvas.theme, surface_k).strength;
    if (strength > 0) {
        glow(canvas, foot - ImVec2{0, height * 0.6F}, height * 3.2F, canvas.theme->igniter, strength);
    }
}

void draw_igniter(const Canvas& canvas, ImVec2 foot, float height, float surface_k) {
    const Theme& theme = *canvas.theme;
    const float gap = height * 0.17F;
    const Glow light = glow_of(theme, surface_k);
    const ImVec2 top = foot - ImVec2{0, height};
    const std::array<ImVec2, 4> element{foot + ImVec2{-gap, 0}, ImVec2{top.x - gap, top.y},
                                        ImVec2{top.x + gap, top.y}, foot + ImVec2{gap, 0}};
    const Colour cold = mix(theme.chamber, hex(0xFFFFFF), 0.55F);
    stroke(canvas, element, Line::Silhouette, light.strength > 0 ? light.colour : cold);
}

Colour gas_tint(const Theme& theme, float gas_k) {
    const float share = hot_share(gas_k);
    return faded(mix(hex(0xC8441A), theme.igniter, share), 0.62F * share);
}

void draw_flue_gas(const Canvas& canvas, Path way, float half_width, float hot_k, float cool_k, float drift,
                   bool flows) {
    const Theme& theme = *canvas.theme;
    const PathWalker walk(way);
    std::vector<ImVec2> upper;
    std::vector<ImVec2> lower;
    constexpr int kPieces = 24;
    for (int i = 0; i < kPieces; ++i) {
        const float s = (static_cast<float>(i) + 0.5F) / kPieces;
        upper.clear();
        lower.clear();
        for (const float end : {static_cast<float>(i) / kPieces, static_cast<float>(i + 1) / kPieces}) {
            const auto [point, along] = walk.at(walk.length() * end);
            const ImVec2 across{-along.y, along.x};
            upper.push_back(point - across * half_width);
            lower.push_back(point + across * half_width);
        }
        // Falls off as gas cools in a tube: steeply first.
        const float k = cool_k + (hot_k - cool_k) * std::exp(-2.6F * s);
        const Colour tint = gas_tint(theme, k);
        strip(canvas, upper, lower, tint, tint);
    }
    if (!flows) {
        return;
    }
    const float step = half_width * 2.6F;
    const Colour dot = mix(theme.chamber, hex(0xFFFFFF), 0.62F);
    for (float at = std::fmod(drift, step); at < walk.length(); at += step) {
        canvas.list->AddCircleFilled(walk.at(at).point, half_width * 0.15F, packed(dot));
    }
}

} // namespace lightoff::cutaway
