// SPDX-License-Identifier: MIT
#include "gui/cutaway/gas_and_draft.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/fire.hpp"
#include "gui/cutaway/wear.hpp"
#include "gui/cutaway/wheels.hpp"

#include <algorithm>
#include <array>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

void draw_pipe(const Pen& pen, ImVec2 from, ImVec2 to) {
    constexpr float kHalf = 4.5F;
    const ImVec2 across = from.y == to.y ? ImVec2{0, kHalf} : ImVec2{kHalf, 0};
    const std::vector<ImVec2> one = pen.path(std::array{from - across, to - across});
    const std::vector<ImVec2> other = pen.path(std::array{from + across, to + across});
    strip(pen.canvas, one, other, pen.theme().ground, pen.theme().ground);
    stroke(pen.canvas, one, Line::Detail, pen.theme().ink);
    stroke(pen.canvas, other, Line::Detail, pen.theme().ink);
}

/// Without an inducer the box opens into a hood, and the vent draws by itself.
void draw_draft_hood(const Pen& pen) {
    pen.ink({{kVent.min.x, pen.top}, {kVent.min.x, 112}, {58, 150}}, Line::Outline);
    pen.ink({{kVent.max.x, pen.top}, {kVent.max.x, 108}, {kCollector.min.x, 112}}, Line::Outline);
    pen.ink({{98, 178}, {kCollector.min.x, 178}}, Line::Outline);
    if (pen.scene.flue > 0.02F) {
        pen.energy({{kVent.centre().x, kInducer.y - 26}, {kVent.centre().x, pen.top}}, Energy::Air,
                   pen.scene.travel.flue_s);
    }
}

} // namespace

void draw_gas(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    const float last = burner_y(s.burner_count - 1, s.burner_count);
    draw_pipe(pen, {0, kGasPipeY}, {kGasValve.min.x, kGasPipeY});
    draw_pipe(pen, {kGasValve.max.x, kGasPipeY}, {kManifoldX + 4.5F, kGasPipeY});
    draw_pipe(pen, {kManifoldX, kGasPipeY + 4.5F}, {kManifoldX, last - 8});
    pen.ink({{kManifoldX - 4.5F, last - 8}, {kManifoldX + 4.5F, last - 8}}, Line::Detail);
    // Gas stands in the pipe up to the first thing that is shut.
    const float until = s.gas_cock_open ? kGasValve.min.x : kGasCock.x - 8;
    if (!s.as_seen) {
        pen.energy({{0, kGasPipeY}, {until, kGasPipeY}}, Energy::Gas, s.travel.gas_s);
    }
    if (s.gas > 0.01F) {
        pen.energy({{kGasValve.max.x, kGasPipeY}, {kManifoldX, kGasPipeY}, {kManifoldX, last}}, Energy::Gas,
                   s.travel.gas_s);
    }
    pen.disc(kGasCock, 8.5F);
    const ImVec2 lever = s.gas_cock_open ? ImVec2{12, 0} : ImVec2{0, 12};
    pen.ink({kGasCock - lever, kGasCock + lever}, Line::Silhouette);
}

void draw_gas_valve(const Pen& pen) {
    pen.plate(kGasValve);
    const ImVec2 middle = kGasValve.centre();
    const float top = kGasValve.min.y;
    pen.plate({{middle.x - 11, top - 11}, {middle.x + 11, top}}, Line::Detail);
    for (const float x : {-6.0F, 0.0F, 6.0F}) {
        pen.ink({{middle.x + x - 2, top - 2}, {middle.x + x + 2, top - 9}}, Line::Hidden);
    }
    for (const float x : {-5.0F, 5.0F}) {
        pen.ink({{middle.x + x, top - 16}, {middle.x + x, top - 11}}, Line::Outline);
    }
    const float lift = 7 * pen.scene.gas_valve;
    pen.ink({{middle.x - 13, middle.y + 8}, {middle.x - 4, middle.y + 8}}, Line::Detail);
    pen.ink({{middle.x + 4, middle.y + 8}, {middle.x + 13, middle.y + 8}}, Line::Detail);
    pen.ink({{middle.x - 7, middle.y + 6 - lift}, {middle.x + 7, middle.y + 6 - lift}}, Line::Silhouette);
    pen.ink({{middle.x, middle.y + 6 - lift}, {middle.x, top}}, Line::Detail);
}

void draw_draft(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    fill(pen.canvas, pen.box(kCollector), pen.theme().chamber);
    fill(pen.canvas, pen.box(kCollector), gas_tint(pen.theme(), s.collector_k));
    pen.frame(kCollector);
    // Vent.
    const Rect vent{{kVent.min.x, pen.top}, kVent.max};
    fill(pen.canvas, pen.box({{vent.min.x, vent.min.y}, {vent.max.x, kInducer.y - 4}}), pen.theme().ground);
    if (!s.has_inducer) {
        draw_draft_hood(pen);
        return;
    }
    draw_scroll(pen.canvas, pen.at(kInducer), pen.px(kInducerRadius + 3), 0.22F, pen.at({0, pen.top}).y,
                true);
    draw_wheel(pen.canvas, pen.at(kInducer), pen.px(kInducerRadius - 3), 14, s.inducer);
    // Neck from the box to the housing.
    pen.ink({{kInducer.x + kInducerRadius + 2, 150}, {kCollector.min.x, 146}}, Line::Detail);
    pen.ink({{kInducer.x + kInducerRadius + 2, 168}, {kCollector.min.x, 172}}, Line::Detail);
    if (s.flue > 0.02F) {
        pen.energy({{kVent.centre().x, kInducer.y - 26}, {kVent.centre().x, pen.top}}, Energy::Air,
                   s.travel.flue_s);
    }
}

void draw_pressure_switch(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    // Hose from the box's port.
    const std::vector<ImVec2> hose = pen.path(hose_line());
    const ImVec2 d = hose_line().back();
    const float width = pen.px(5.5F);
    pen.canvas.list->AddPolyline(hose.data(), static_cast<int>(hose.size()), packed(pen.theme().ink), 0,
                                 width);
    pen.canvas.list->AddPolyline(hose.data(), static_cast<int>(hose.size()), packed(pen.theme().ground), 0,
                                 width - 2 * line_width(pen.canvas, Line::Hidden));
    const float r = kPressureSwitchRadius;
    pen.plate({{d.x - 6, d.y - 4}, {d.x + 1, d.y + 4}}, Line::Detail);
    pen.disc(kPressureSwitch, r);
    // The diaphragm bulges with the suction on it.
    const float bulge = 5 * std::min(1.3F, s.suction);
    std::vector<ImVec2> skin;
    for (int i = 0; i <= 12; ++i) {
        const float t = static_cast<float>(i) / 6 - 1;
        skin.push_back(pen.at(kPressureSwitch + ImVec2{t * r, -5 - bulge * (1 - t * t)}));
    }
    stroke(pen.canvas, skin, Line::Detail, pen.theme().pencil);
    pen.contact(kPressureSwitch + ImVec2{0, 6}, 8.5F, s.pressure_switch_closed);
}

void draw_gas_meter(const Pen& pen) {
    pen.plate(kGasMeter, Line::Detail);
    const ImVec2 dial = kGasMeter.centre() - ImVec2{0, 6};
    pen.disc(dial, 9, Line::Detail);
    pen.ink({dial, dial + ImVec2{0, -7}}, Line::Detail);
    pen.ink({{8, kGasMeter.min.y}, {8, kGasPipeY + 5}}, Line::Detail);
}

} // namespace lightoff::cutaway
