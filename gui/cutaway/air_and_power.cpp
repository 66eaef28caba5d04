// SPDX-License-Identifier: MIT
#include "gui/cutaway/air_and_power.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/wheels.hpp"

#include <algorithm>
#include <array>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr float kModuleWay = 130; // units that the blower module comes out before it is out of sight
constexpr float kCableY = 583;    // of the cable into the cabinet
constexpr Colour kLampLight = hex(0xFFD27A);
constexpr Colour kWhite = hex(0xFFFFFF);

} // namespace

void draw_ducts(const Pen& pen) {
    const float t = pen.top;
    pen.ink({{kSupply.min.x, t}, {kSupply.min.x, kCabinet.min.y}}, Line::Outline);
    pen.ink({{kSupply.max.x, t}, {kSupply.max.x, kCabinet.min.y}}, Line::Outline);
    pen.ink({{kReturn.min.x, t}, {kReturn.min.x, kFilter.min.y}, {kCabinet.max.x, kFilter.min.y}},
            Line::Outline);
    pen.ink({{kReturn.max.x, t}, {kReturn.max.x, kReturn.max.y}, {kCabinet.max.x, kReturn.max.y}},
            Line::Outline);
}

void draw_air(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    if (s.air < 0.01F) {
        return;
    }
    const double t = s.travel.air_s;
    const float mid = kReturn.centre().x;
    // Two rows of arrows need room beside each other.
    const bool narrow = pen.px(22) < 9 * line_width(pen.canvas, Line::Outline);
    if (s.blower_door_on) {
        for (const float off : narrow ? std::vector<float>{0} : std::vector<float>{-11, 11}) {
            pen.energy({{mid + off, pen.top}, {mid + off, 502 + off * 3}, {mid - 28, 502 + off * 3}},
                       Energy::Air, t);
        }
    }
    for (const float y : {469.0F, 502.0F, 535.0F}) {
        pen.energy({{408, y}, {352, y}}, Energy::Air, t);
    }
    for (const float x : {236.0F, 303.0F, 370.0F}) {
        pen.energy({{x, 371}, {x, pen.top}}, Energy::Air, t);
    }
}

void draw_warmth(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    if (s.warmth < 0.04F || s.air < 0.02F) {
        return;
    }
    for (const float x : {269.5F, 336.5F}) {
        pen.energy({{x, 90}, {x, pen.top}}, Energy::Heat, s.travel.air_s, std::min(1.0F, s.warmth));
    }
}

void draw_coil(const Pen& pen) {
    const Rect c = kCoil;
    const ImVec2 top{c.centre().x, c.min.y};
    for (const float side : {-1.0F, 1.0F}) {
        const ImVec2 foot{c.centre().x + side * c.width() / 2, c.max.y};
        pen.ink({top, foot}, Line::Detail);
        pen.ink({top + ImVec2{0, 9}, foot + ImVec2{-side * 22, 0}}, Line::Detail);
    }
}

void draw_filter(const Pen& pen) {
    if (!pen.scene.filter_in) {
        stroke(pen.canvas,
               pen.path(std::array{kFilter.min, ImVec2{kFilter.max.x, kFilter.min.y}, kFilter.max,
                                   ImVec2{kFilter.min.x, kFilter.max.y}}),
               Line::Hidden, pen.theme().pencil, true);
        return;
    }
    pen.plate(kFilter, Line::Detail);
    std::vector<ImVec2> pleats;
    bool left = true;
    for (float y = kFilter.min.y + 3; y < kFilter.max.y; y += 6, left = !left) {
        pleats.push_back(pen.at({left ? kFilter.min.x + 2.5F : kFilter.max.x - 2.5F, y}));
    }
    stroke(pen.canvas, pleats, Line::Detail, pen.theme().pencil);
}

void draw_blower(const Pen& pen) {
    // Once it is out its place is shown; only on its way it moves.
    const float away = pen.scene.blower_module_away;
    const ImVec2 centre = kBlower - ImVec2{away < 1 ? kModuleWay * away : 0, 0};
    draw_scroll(pen.canvas, pen.at(centre), pen.px(kBlowerRadius + 5), 0.24F, pen.at({0, kDeck}).y, false);
    draw_wheel(pen.canvas, pen.at(centre), pen.px(kBlowerRadius), 26, pen.scene.blower);
}

void draw_lamp(const Pen& pen) {
    const Theme& theme = pen.theme();
    pen.canvas.list->AddCircleFilled(pen.at(kLamp), pen.px(10.5F), packed(theme.chamber));
    if (pen.scene.lamp_on) {
        glow(pen.canvas, pen.at(kLamp), pen.px(17), kLampLight, 0.75F);
    }
    pen.canvas.list->AddCircleFilled(
        pen.at(kLamp), pen.px(4.8F),
        packed(pen.scene.lamp_on ? mix(kLampLight, kWhite, 0.5F) : mix(theme.chamber, kWhite, 0.30F)));
    pen.canvas.list->AddCircle(pen.at(kLamp), pen.px(10.5F), packed(theme.ink), 0,
                               line_width(pen.canvas, Line::Detail));
}

void draw_board(const Pen& pen) {
    const Theme& theme = pen.theme();
    fill(pen.canvas, pen.box(kBoard), theme.panel);
    pen.frame(kBoard, Line::Outline);
    // Low-voltage screws, relays, fuse: outlines only.
    for (int i = 0; i < 5; ++i) {
        const float x = kBoard.min.x + 10 + 12.0F * static_cast<float>(i);
        pen.plate({{x, kBoard.max.y - 12}, {x + 6, kBoard.max.y - 5}}, Line::Detail);
    }
    for (const Rect relay :
         {Rect{{126, 434}, {146, 451}}, Rect{{126, 456}, {146, 473}}, Rect{{100, 444}, {118, 473}}}) {
        pen.plate(relay, Line::Detail);
    }
    pen.ink({{110, 410}, {144, 410}}, Line::Detail);
    pen.ink({{110, 417}, {134, 417}}, Line::Detail);
    pen.plate(kBoardFuse, Line::Detail);
    draw_lamp(pen);
}

void draw_low_parts(const Pen& pen) {
    pen.plate(kTransformer, Line::Outline);
    const ImVec2 m = kTransformer.centre();
    for (const float side : {-1.0F, 1.0F}) {
        for (int i = 0; i < 4; ++i) {
            const float y = m.y - 12 + 8 * static_cast<float>(i);
            pen.ink({{m.x + side * 5, y - 3}, {m.x + side * 12, y}, {m.x + side * 5, y + 3}}, Line::Detail);
        }
    }
    pen.ink({{m.x, kTransformer.min.y + 4}, {m.x, kTransformer.max.y - 4}}, Line::Detail);
    pen.plate(kJunctionBox, Line::Detail);
    pen.ink({{kJunctionBox.min.x + 6, 533}, {kJunctionBox.max.x - 6, 533}}, Line::Detail);
    for (int i = 0; i < 3; ++i) { // earth
        const float half = 8 - 2.5F * static_cast<float>(i);
        const float y = 574 + 4 * static_cast<float>(i);
        pen.ink({{152 - half, y}, {152 + half, y}}, Line::Detail);
    }
    pen.ink({{152, 564}, {152, 574}}, Line::Detail);
    pen.plate({kDoorSwitch - ImVec2{0, 10}, kDoorSwitch + ImVec2{16, 10}}, Line::Detail);
    const float out = pen.scene.door_switch_closed ? 0.0F : 7.0F;
    pen.ink({kDoorSwitch, kDoorSwitch - ImVec2{9 + out, 0}}, Line::Silhouette);
    pen.contact(kDoorSwitch + ImVec2{8, 3}, 5, pen.scene.door_switch_closed);
}

void draw_disconnect(const Pen& pen) {
    const Rect box = kDisconnect;
    const float x = box.centre().x;
    pen.ink({{x, box.max.y}, {x, kCableY}, {kCabinet.min.x + 8, kCableY}}, Line::Detail);
    pen.plate(box);
    const ImVec2 pivot = kToggle.centre();
    const float side = pen.scene.disconnect_on ? -1.0F : 1.0F;
    pen.frame(kToggle, Line::Detail);
    pen.ink({pivot, pivot + ImVec2{0, 9 * side}}, Line::Silhouette);
}

} // namespace lightoff::cutaway
