// SPDX-License-Identifier: MIT
#include "gui/cutaway/cutaway.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/cutaway/air_and_power.hpp"
#include "gui/cutaway/burning.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/gas_and_draft.hpp"
#include "gui/cutaway/shell.hpp"
#include "gui/cutaway/wear.hpp"

#include <algorithm>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr float kGap = 14;       // design pixels between the drawing and its words
constexpr float kMostDuct = 210; // units by which ducts may be drawn out upwards
constexpr float kLeastRoom = 8;  // pixels

void draw_thermal_switch(const Pen& pen, ImVec2 centre, bool closed, ImVec2 probe) {
    if (probe.x != centre.x) {
        pen.ink({centre, probe}, Line::Silhouette);
    }
    pen.disc(centre, 8, Line::Detail);
    pen.contact(centre + ImVec2{0, 2}, 5, closed);
}

std::vector<Label> labels_of(const CutawayScene& scene, float top) {
    const float rod_y = burner_y(scene.burner_count - 1, scene.burner_count);
    const float middle = burner_y(scene.burner_count / 2, scene.burner_count);
    return {
        {"Vent", {kVent.centre().x - 10, std::max(top + 30, 40.0F)}, Side::Left, false, "vent"},
        {"Collector box", {kCollector.min.x + 8, kCollector.min.y + 8}, Side::Left, false, "collector_port"},
        {"Inducer", {kInducer.x - 18, kInducer.y - 12}, Side::Left, true, "inducer_motor"},
        {"Hose", {145, 216.5F}, Side::Left, false, "pressure_hose"},
        {"Pressure switch", kPressureSwitch + ImVec2{-9, -7}, Side::Left, true, "pressure_switch"},
        {"Rollout switch", kRollout + ImVec2{-5, 4}, Side::Left, false, "rollout"},
        {"Burners", {kBurnerBack + 12, middle}, Side::Left, true, "burners"},
        {"Manifold", {kManifoldX - 3, 276}, Side::Left, false, "orifices"},
        {"Gas valve", {kGasValve.min.x + 6, kGasValve.min.y + 8}, Side::Left, true, "gas_valve"},
        {"Gas cock", kGasCock + ImVec2{-4, 5}, Side::Left, false, "gas_cock"},
        {"Igniter", {kIgniterFoot.x - 3, kIgniterFoot.y + 6}, Side::Left, true, "igniter"},
        {"Progress lamp", kLamp, Side::Left, true, "board"},
        {"Control board", {86, 456}, Side::Left, true, "board"},
        {"Door switch", kDoorSwitch + ImVec2{4, -5}, Side::Left, false, "door_switch"},
        {"Transformer", {kTransformer.min.x + 5, kTransformer.max.y - 8}, Side::Left, false, "transformer"},
        {"Supply air", {kSupply.max.x - 14, std::max(top + 30, 30.0F)}, Side::Right, true, "ducts"},
        {"Limit", kLimit + ImVec2{44, 0}, Side::Right, true, "limit"},
        {"Heat exchanger", {kHairpin.x + 108, kHairpin.y - 12}, Side::Right, true, "exchanger"},
        {"Flame rod", {193, rod_y - 2}, Side::Right, true, "flame_rod"},
        {"Return air", {kReturn.max.x - 8, 400}, Side::Right, false},
        {"Blower", {kBlower.x + 52, kBlower.y - 26}, Side::Right, true, "blower_wheel"},
        {"Filter", {kFilter.max.x - 3, 560}, Side::Right, true, "filter"},
    };
}

std::vector<Label> on_screen(std::vector<Label> labels, const Transform& place) {
    for (Label& label : labels) {
        label.anchor = place.to_screen(label.anchor);
    }
    return labels;
}

} // namespace

float width_for(const Canvas& canvas, float height, const CutawayScene& scene) {
    const std::vector<Label> labels = labels_of(scene, 0);
    return labels_width(canvas, labels, Side::Left) + labels_width(canvas, labels, Side::Right) +
           2 * canvas.px(kGap) + height * kDrawing.width() / kDrawing.height();
}

CutawayLayout lay_out(const Canvas& canvas, Rect area, const CutawayScene& scene, const CutawayView& view) {
    CutawayLayout layout;
    const float gap = canvas.px(kGap);
    std::vector<Label> labels = labels_of(scene, 0);
    Rect middle = area;
    const Rect left = middle.cut_left(labels_width(canvas, labels, Side::Left));
    const Rect right = middle.cut_right(labels_width(canvas, labels, Side::Right));
    middle.cut_left(gap);
    middle.cut_right(gap);
    if (std::min(middle.width(), middle.height()) < kLeastRoom)
        return layout; // no zoom would do
    layout.place = canvas::fit(kDrawing, middle);
    // Room left above and below draws the ducts out.
    const float spare = middle.height() / layout.place.zoom - kDrawing.height();
    const float top = -std::clamp(spare, 0.0F, kMostDuct);
    layout.place = canvas::fit({{kDrawing.min.x, top}, kDrawing.max}, middle);
    layout.window = middle;
    layout.place.zoom_about(middle.centre(), view.zoom, 0.05F, 60.0F);
    layout.place.pan(view.pan * canvas.scale);
    layout.drawing = layout.place.to_screen(Rect{{kDrawing.min.x, top}, kDrawing.max});
    labels = on_screen(labels_of(scene, top), layout.place);
    std::erase_if(labels, [&](const Label& label) { return !middle.shrunk(-gap).holds(label.anchor); });
    const float line = line_height(canvas, Type::Secondary) + canvas.px(3);
    for (const Side side : {Side::Left, Side::Right}) {
        const Rect column = side == Side::Left ? left : right;
        for (const PlacedLabel& placed : place_labels(labels, side, column, line)) {
            layout.labels.push_back(placed);
        }
    }
    return layout;
}

CutawayLayout draw_cutaway(const Canvas& canvas, Rect area, const CutawayScene& scene,
                           const CutawayView& view) {
    CutawayLayout layout = lay_out(canvas, area, scene, view);
    if (layout.window.width() <= 0)
        return layout;
    Pen pen{canvas, layout.place, layout.place.to_drawing(layout.drawing.min).y, scene};
    pen.canvas.zoom = std::clamp(layout.place.zoom / canvas.scale, 0.45F, 3.0F);

    if (view.zoom > 1.0F) {
        canvas.list->PushClipRect(layout.window.min, layout.window.max, true);
    }
    draw_ducts(pen);
    draw_air(pen);
    draw_warmth(pen);
    draw_cells(pen);
    draw_fire_box(pen);
    draw_flames(pen);
    draw_burners(pen);
    draw_igniter_and_rod(pen);
    draw_gas(pen);
    draw_gas_valve(pen);
    draw_draft(pen);
    if (scene.has_inducer) {
        draw_pressure_switch(pen);
    }
    draw_thermal_switch(pen, kRollout, scene.rollout_closed, kRollout);
    draw_thermal_switch(pen, kLimit, scene.limit_closed, kLimit + ImVec2{48, 0});
    draw_blower(pen);
    pen.capacitor(kBlowerCapacitor);
    if (scene.has_inducer) {
        pen.capacitor(kInducerCapacitor);
    }
    draw_coil(pen);
    draw_gas_meter(pen);
    draw_disconnect(pen);
    draw_filter(pen);
    draw_board(pen);
    draw_low_parts(pen);
    draw_rollouts(pen);
    draw_wear(pen.canvas, pen.place, scene);
    draw_traces(pen);
    draw_veils(pen);
    draw_shell(pen);
    draw_door(pen, kBurnerDoor, scene.burner_door_away);
    draw_door(pen, kBlowerDoor, scene.blower_door_away);
    if (view.zoom > 1.0F) {
        canvas.list->PopClipRect();
    }
    draw_labels(canvas, layout.labels);
    return layout;
}

} // namespace lightoff::cutaway
