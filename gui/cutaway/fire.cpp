// SPDX-License-Identifier: MIT
#include "gui/cutaway/fire.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/path_walker.hpp"

#include <array>
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
constexpr float kYellowSeen = 0.03F;
constexpr float kTipBegins = 4;  // a yellow tip grows out of the blue over a quarter of its length
constexpr float kWall = 0.93F;   // of a cell's half width: flame spreads there
constexpr float kSheetIn = 2.5F; // half widths of a cell from a burner's mouth to the tube sheet

struct Edges {
    std::vector<ImVec2> upper, lower;
};

/// Edges beside a stretch of the way; half(s) is the half width at share s of the stretch, swing(s) the
/// sideways shift; a wall at `wall` pixels stops it on the upper side.
template <class Half, class Swing>
Edges edges_along(const PathWalker& walk, float from, float to, Half half, Swing swing,
                  float wall = INFINITY) {
    Edges edges;
    for (int i = 0; i <= kSteps; ++i) {
        const float s = static_cast<float>(i) / kSteps;
        const auto [point, along] = walk.at(from + (to - from) * s);
        const ImVec2 across{-along.y, along.x};
        edges.upper.push_back(point + across * std::max(-wall, swing(s) - half(s)));
        edges.lower.push_back(point + across * (swing(s) + half(s)));
    }
    return edges;
}

/// Fat behind the mouth, then tapering to a point.
float body(float s) {
    return std::pow(1 - s, 0.62F) * (0.45F + 0.75F * std::min(1.0F, s * 4));
}

/// What lies beyond share `begin` of a flame, in a colour of its own that grows out of the other.
template <class Half, class Swing>
void draw_tail(const Canvas& canvas, const PathWalker& walk, float from, float to, float begin, Half half,
               Swing swing, float wall, Colour colour) {
    const auto farther = [begin](float s) { return begin + (1 - begin) * s; };
    const Edges tail = edges_along(
        walk, from + (to - from) * begin, to,
        [&](float s) { return half(farther(s)) * std::min(1.0F, s * kTipBegins); },
        [&](float s) { return swing(farther(s)); }, wall);
    strip(canvas, tail.upper, tail.lower, colour, colour);
}

/// A tongue of flame from its root along a short way.
void draw_lick(const Canvas& canvas, Path way, float width, Colour colour, float strength) {
    const PathWalker walk(way);
    const auto half = [&](float s) { return width * body(s); };
    const Edges lick = edges_along(walk, 0, walk.length(), half, [](float) { return 0.0F; });
    strip(canvas, lick.upper, lick.lower, faded(colour, strength), faded(colour, strength));
    stroke(canvas, lick.upper, Line::Detail, faded(colour, 0.9F));
    stroke(canvas, lick.lower, Line::Detail, faded(colour, 0.9F));
}

/// How far a flame that strikes metal stands off the middle of its way: over to the wall within its first
/// quarter.
float bend(float s) {
    return std::min(1.0F, s * 4);
}

/// Yellow tongues where a flame strikes: one up the sheet beside its opening, the others along the wall.
void draw_struck(const Canvas& canvas, const PathWalker& walk, float from, float to, float half_width,
                 const Flame& flame, float time_s, float offset) {
    const auto near = [&](float at, float to_wall) {
        const auto [point, along] = walk.at(at);
        return point + ImVec2{along.y, -along.x} * (to_wall * half_width);
    };
    const auto flicker = [&](float n) { return 0.85F + 0.15F * std::sin(time_s * 11 + offset + n * 2.3F); };
    const float sheet = from + kSheetIn * half_width;
    const float up = (0.6F + 1.1F * flame.touch) * flicker(0);
    draw_lick(canvas,
              std::array{near(sheet, 0.5F), near(sheet + 0.1F * half_width, 0.5F + up * 0.5F),
                         near(sheet - 0.2F * half_width, 0.5F + up)},
              half_width * 0.36F, kYellowFlame, 0.9F);
    constexpr int kTongues = 4;
    const float step = std::max(0.0F, to - sheet) / kTongues; // a short flame does not reach in
    for (int i = 0; i < kTongues; ++i) {
        const auto n = static_cast<float>(i);
        const float start = sheet + step * (0.1F + n * 0.85F);
        const float length = step * (0.7F + 0.9F * flame.touch) * flicker(n + 1);
        draw_lick(
            canvas,
            std::array{near(start, 0.05F), near(start + length * 0.4F, 0.55F), near(start + length, 0.74F)},
            half_width * (0.12F + 0.14F * flame.touch), kYellowFlame, 0.9F);
    }
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
    const Colour outer = theme.blue_flame;
    const Colour inner =
        flame.yellow > 0.5F ? mix(kYellowFlame, kWhite, 0.55F) : mix(theme.blue_flame, kWhite, 0.55F);

    const float roughness = half_width * (0.05F + 0.35F * flame.softness);
    const float beat = 9 - 5 * flame.softness;
    const float offset = static_cast<float>(number) * 1.7F;
    const float aside = 0.55F * half_width * flame.touch;
    const auto swing = [&](float s) {
        return roughness * s * std::sin(time_s * beat + offset + s * 7) - aside * bend(s);
    };
    const auto width = [&](float share) {
        return [&, share](float s) { return half_width * share * body(s) * (0.5F + 0.5F * flame.strength); };
    };
    const float wall = flame.touch > 0 ? kWall * half_width : INFINITY;
    const Edges cloak = edges_along(walk, from, to, width(0.86F), swing, wall);
    strip(canvas, cloak.upper, cloak.lower, faded(outer, 0.50F), faded(outer, 0.50F));
    const Edges heart = edges_along(walk, from, from + (to - from) * 0.72F, width(0.55F), swing, wall);
    strip(canvas, heart.upper, heart.lower, faded(outer, 0.65F), faded(outer, 0.65F));
    if (flame.yellow > kYellowSeen) { // from the tip down: between blue and yellow there is no third colour
        const float begin = 1 - std::min(1.0F, flame.yellow);
        draw_tail(canvas, walk, from, to, begin, width(0.86F), swing, wall, faded(kYellowFlame, 0.75F));
        draw_tail(canvas, walk, from, to, begin, width(0.45F), swing, wall,
                  faded(mix(kYellowFlame, kWhite, 0.4F), 0.7F));
    }
    const float cone_end = from + (to - from) * (0.30F + 0.15F * flame.yellow);
    const Edges cone = edges_along(walk, from, cone_end, width(0.30F), swing, wall);
    strip(canvas, cone.upper, cone.lower, faded(inner, 0.95F), faded(inner, 0.95F));
    const Colour rim = flame.yellow > 0.5F ? kYellowFlame : outer;
    stroke(canvas, cloak.upper, Line::Detail, faded(rim, 0.9F));
    stroke(canvas, cloak.lower, Line::Detail, faded(rim, 0.9F));
    if (flame.touch > 0)
        draw_struck(canvas, walk, from, to, half_width, flame, time_s, offset);
}

void draw_rollout(const Canvas& canvas, ImVec2 mouth, float reach, float size, float time_s, int number,
                  bool wash) {
    const Colour dark = canvas.theme->chamber;
    const Colour bright = mix(kYellowFlame, kWhite, 0.45F);
    // The longer tongue lies behind; they curl up as they come out.
    for (const float share : {1.0F, 0.7F, 0.45F}) {
        const float far = reach * (0.45F + 0.55F * size) * share;
        const float phase = static_cast<float>(number) * 1.7F + share * 9;
        const float sway = 0.1F * std::sin(time_s * 5 + phase);
        const float up = 1.2F - 0.5F * share;
        const std::array<ImVec2, 4> way{mouth, mouth + ImVec2{-0.4F, -0.06F * up} * far,
                                        mouth + ImVec2{-0.74F, -0.26F * up + sway} * far,
                                        mouth + ImVec2{-0.95F + sway, -0.62F * up} * far};
        const PathWalker walk(way);
        const auto width = [&](float part) {
            return [&, part](float s) {
                return 0.2F * far * part * std::pow(1 - s, 0.85F) * (0.5F + std::min(0.5F, s * 3));
            };
        };
        const auto wander = [&](float s) { return 0.09F * far * s * std::sin(time_s * 6 + phase + s * 9); };
        if (wash) {
            const Edges smoke = edges_along(walk, 0, walk.length(), width(1.9F), wander);
            strip(canvas, smoke.upper, smoke.lower, dark, dark);
            stroke(canvas, smoke.upper, Line::Detail, dark);
            stroke(canvas, smoke.lower, Line::Detail, dark);
            continue;
        }
        const Edges cloak = edges_along(walk, 0, walk.length() * 0.97F, width(1), wander);
        strip(canvas, cloak.upper, cloak.lower, faded(kYellowFlame, 0.8F), faded(kYellowFlame, 0.8F));
        const Edges heart = edges_along(walk, 0, walk.length() * 0.55F, width(0.45F), wander);
        strip(canvas, heart.upper, heart.lower, faded(bright, 0.9F), faded(bright, 0.9F));
    }
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
        glow(canvas, centre, radius, flame.yellow > 0.5F ? kYellowFlame : canvas.theme->blue_flame,
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
