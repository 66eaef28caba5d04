// SPDX-License-Identifier: MIT
#include "gui/cutaway/burning.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/fire.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr float kLeastRollout_w = 100; // of one burner: a flicker
constexpr float kFullRollout_w = 4000; // of one burner: drawn no larger
constexpr Colour kWhite = hex(0xFFFFFF);

/// Light belongs on the dark wash: on paper it would only bleach it.
template <class Draw>
void in_fire_box(const Pen& pen, Draw draw) {
    const Rect box = pen.box(kFireBox);
    pen.canvas.list->PushClipRect(box.min, box.max, true);
    draw();
    pen.canvas.list->PopClipRect();
}

} // namespace

void draw_cells(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    const float half = pen.px(cell_half(s.burner_count));
    const double drift_px = s.travel.flue_s * static_cast<double>(pen.px(kMarkSpeed) * 1.6F);
    for (std::size_t i = 0; i < s.burner_count; ++i) {
        const std::vector<ImVec2> way = pen.path(cell_path(i, s.burner_count));
        std::vector<ImVec2> upper;
        std::vector<ImVec2> lower;
        for (std::size_t k = 0; k < way.size(); ++k) {
            const ImVec2 before = way[k > 0 ? k - 1 : 0];
            const ImVec2 after = way[k + 1 < way.size() ? k + 1 : k];
            const ImVec2 along = after - before;
            const float length = std::sqrt(along.x * along.x + along.y * along.y);
            const ImVec2 across{-along.y / length * half, along.x / length * half};
            upper.push_back(way[k] - across);
            lower.push_back(way[k] + across);
        }
        strip(pen.canvas, upper, lower, pen.theme().chamber, pen.theme().chamber);
        const bool lit = s.burner[i].strength > 0.05F;
        draw_flue_gas(pen.canvas, way, half, lit ? std::max(s.exchanger_k, 1250.0F) : s.exchanger_k,
                      s.collector_k, static_cast<float>(drift_px), s.flue > 0.02F && !s.still);
        if (s.still && s.flue > 0.02F)
            chevrons(pen.canvas, way, mix(pen.theme().chamber, kWhite, 0.62F));
        stroke(pen.canvas, upper, Line::Detail, pen.theme().ink);
        stroke(pen.canvas, lower, Line::Detail, pen.theme().ink);
    }
}

void draw_fire_box(const Pen& pen) {
    fill(pen.canvas, pen.box(kFireBox), pen.theme().chamber);
}

void draw_flames(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    in_fire_box(pen, [&] {
        for (std::size_t i = 0; i < s.burner_count; ++i) {
            const ImVec2 mouth{kBurnerMouth + 14, burner_y(i, s.burner_count)};
            draw_flame_light(pen.canvas, pen.at(mouth), pen.px(34), s.burner[i]);
        }
        draw_igniter_light(pen.canvas, pen.at(kIgniterFoot), pen.px(kIgniterHeight), s.igniter_k);
    });
    const float half = pen.px(cell_half(s.burner_count));
    for (std::size_t i = 0; i < s.burner_count; ++i) {
        draw_flame(pen.canvas, pen.path(cell_path(i, s.burner_count)), pen.px(kFlameLength), half,
                   s.burner[i], s.time_s, static_cast<int>(i));
    }
}

void draw_burners(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    const float half = std::min(7.0F, cell_half(s.burner_count) * 0.8F);
    for (std::size_t i = 0; i < s.burner_count; ++i) {
        const float y = burner_y(i, s.burner_count);
        // Bell, throat, mouth.
        const std::array<ImVec2, 4> upper{
            ImVec2{kBurnerBack, y - half}, ImVec2{kBurnerBack + 10, y - half * 0.5F},
            ImVec2{kBurnerBack + 20, y - half * 0.55F}, ImVec2{kBurnerMouth, y - half}};
        std::array<ImVec2, 4> lower = upper;
        for (ImVec2& p : lower) {
            p.y = 2 * y - p.y;
        }
        const std::vector<ImVec2> one = pen.path(upper);
        const std::vector<ImVec2> other = pen.path(lower);
        strip(pen.canvas, one, other, pen.theme().panel, pen.theme().panel);
        stroke(pen.canvas, one, Line::Detail, pen.theme().ink);
        stroke(pen.canvas, other, Line::Detail, pen.theme().ink);
        pen.ink({{kBurnerMouth, y - half}, {kBurnerMouth, y + half}}, Line::Detail);
        // Orifice.
        pen.ink({{kManifoldX + 5, y - 2.5F}, {kBurnerBack - 1, y - 1}}, Line::Detail);
        pen.ink({{kManifoldX + 5, y + 2.5F}, {kBurnerBack - 1, y + 1}}, Line::Detail);
    }
}

void draw_rollouts(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    if (s.flame_outside_w <= 0)
        return;
    const auto share = [&](std::size_t i) {
        return s.burner[i].strength * (s.burner[i].softness + s.burner[i].touch);
    };
    float whole = 0;
    for (std::size_t i = 0; i < s.burner_count; ++i)
        whole += share(i);
    for (const bool wash : {true, false})
        for (std::size_t i = 0; i < s.burner_count; ++i) {
            const float w = whole > 0 ? s.flame_outside_w * share(i) / whole : 0;
            if (w > kLeastRollout_w)
                draw_rollout(pen.canvas, pen.at({kBurnerMouth + 2, burner_y(i, s.burner_count) - 3}),
                             pen.px(76), std::min(1.0F, w / kFullRollout_w), s.time_s, static_cast<int>(i),
                             wash);
        }
}

void draw_igniter_and_rod(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    draw_igniter(pen.canvas, pen.at(kIgniterFoot), pen.px(kIgniterHeight), s.igniter_k);
    pen.plate({{kIgniterFoot.x - 7, kIgniterFoot.y}, {kIgniterFoot.x + 7, kIgniterFoot.y + 11}},
              Line::Detail);
    const float y = burner_y(s.burner_count - 1, s.burner_count);
    const Colour steel = mix(pen.theme().chamber, kWhite, 0.75F);
    pen.line({{173, kFireBox.min.y}, {173, y - 12}, {193, y - 2}}, Line::Outline, steel);
    pen.plate({{168, kFireBox.min.y - 13}, {178, kFireBox.min.y}}, Line::Detail);
}

} // namespace lightoff::cutaway
