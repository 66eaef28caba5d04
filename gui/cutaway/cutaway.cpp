// SPDX-License-Identifier: MIT
#include "gui/cutaway/cutaway.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/fire.hpp"
#include "gui/cutaway/places.hpp"
#include "gui/cutaway/wear.hpp"
#include "gui/cutaway/wheels.hpp"

#include <cmath>

namespace lightoff::cutaway {
namespace {

using namespace canvas;

constexpr float kMarkSpeed = 46; // drawing units a second at the rated flow
constexpr float kGap = 14;       // design pixels between the drawing and its words
constexpr float kMostDuct = 210; // units by which ducts may be drawn out upwards
constexpr float kDoorWay = 30;   // units that a door comes off before it is out of sight
constexpr float kModuleWay = 130;
constexpr float kCableY = 583;  // of the cable into the cabinet
constexpr float kLeastRoom = 8; // pixels
constexpr float kVeil = 0.74F;
constexpr float kLeastRollout_w = 100; // of one burner: a flicker
constexpr float kFullRollout_w = 4000; // of one burner: drawn no larger
constexpr Colour kLampLight = hex(0xFFD27A);
constexpr Colour kWhite = hex(0xFFFFFF);

/// Pen in drawing units.
struct Pen {
    Canvas canvas;
    Transform place;
    float top = 0; // of the drawing in its units: ducts end here
    const CutawayScene& scene;

    const Theme& theme() const { return *canvas.theme; }
    ImVec2 at(ImVec2 p) const { return place.to_screen(p); }
    float px(float units) const { return units * place.zoom; }
    Rect box(Rect r) const { return place.to_screen(r); }
    std::vector<ImVec2> path(std::span<const ImVec2> points) const {
        std::vector<ImVec2> moved;
        for (const ImVec2 p : points) {
            moved.push_back(at(p));
        }
        return moved;
    }
    void line(std::initializer_list<ImVec2> points, Line weight, Colour colour) const {
        stroke(canvas, path({points.begin(), points.size()}), weight, colour);
    }
    void ink(std::initializer_list<ImVec2> points, Line weight = Line::Outline) const {
        line(points, weight, theme().ink);
    }
    void frame(Rect r, Line weight = Line::Outline) const { outline(canvas, box(r), weight, theme().ink); }
    void plate(Rect r, Line weight = Line::Outline) const {
        fill(canvas, box(r), theme().ground);
        frame(r, weight);
    }
    void disc(ImVec2 centre, float radius, Line weight = Line::Outline) const {
        canvas.list->AddCircleFilled(at(centre), px(radius), packed(theme().ground));
        canvas.list->AddCircle(at(centre), px(radius), packed(theme().ink), 0, line_width(canvas, weight));
    }
    void energy(std::initializer_list<ImVec2> points, Energy kind, double travel_s,
                float amount = 0.5F) const {
        const auto phase = static_cast<float>(std::fmod(travel_s * static_cast<double>(px(kMarkSpeed)), 1e5));
        const std::vector<ImVec2> way = path({points.begin(), points.size()});
        energy_path(canvas, way, kind, theme().ground, phase, amount);
        if (scene.still && kind != Energy::Air) // whose pattern has heads of its own
            chevrons(canvas, way, theme().of(kind));
    }
};

/// Two contacts and a blade that lies across them or stands off.
void draw_contact(const Pen& pen, ImVec2 centre, float half, bool closed) {
    const ImVec2 left = centre - ImVec2{half, 0};
    const ImVec2 right = centre + ImVec2{half, 0};
    const ImVec2 tip = closed ? right : centre + ImVec2{half * 0.75F, -half * 0.85F};
    pen.ink({left, tip}, Line::Outline);
    for (const ImVec2 dot : {left, right}) {
        pen.canvas.list->AddCircleFilled(pen.at(dot), pen.px(half * 0.24F), packed(pen.theme().ink));
    }
}

// ---- air ----

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

/// Warmth of the supply air: the denser the waves, the warmer.
void draw_warmth(const Pen& pen) {
    const CutawayScene& s = pen.scene;
    if (s.warmth < 0.04F || s.air < 0.02F) {
        return;
    }
    for (const float x : {269.5F, 336.5F}) {
        pen.energy({{x, 90}, {x, pen.top}}, Energy::Heat, s.travel.air_s, std::min(1.0F, s.warmth));
    }
}

// ---- the fire ----

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

/// Light belongs on the dark wash: on paper it would only bleach it.
template <class Draw>
void in_fire_box(const Pen& pen, Draw draw) {
    const Rect box = pen.box(kFireBox);
    pen.canvas.list->PushClipRect(box.min, box.max, true);
    draw();
    pen.canvas.list->PopClipRect();
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

/// What rolls out comes from the flames that want for air or miss their openings.
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

// ---- gas ----

void draw_pipe(const Pen& pen, ImVec2 from, ImVec2 to) {
    constexpr float kHalf = 4.5F;
    const ImVec2 across = from.y == to.y ? ImVec2{0, kHalf} : ImVec2{kHalf, 0};
    const std::vector<ImVec2> one = pen.path(std::array{from - across, to - across});
    const std::vector<ImVec2> other = pen.path(std::array{from + across, to + across});
    strip(pen.canvas, one, other, pen.theme().ground, pen.theme().ground);
    stroke(pen.canvas, one, Line::Detail, pen.theme().ink);
    stroke(pen.canvas, other, Line::Detail, pen.theme().ink);
}

/// Pipe, cock and manifold, and the gas in them.
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

/// In section: its disc lifts off its seat by the stroke; on top the coil with its two terminals.
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

// ---- draft ----

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

/// A can with two terminals.
void draw_capacitor(const Pen& pen, Rect can) {
    pen.plate(can, Line::Detail);
    const float third = can.width() / 3;
    for (const float x : {can.min.x + third, can.max.x - third}) {
        pen.ink({{x, can.min.y - 4}, {x, can.min.y}}, Line::Detail);
    }
}

/// On the wall beside the furnace, its lever up while on; its cable goes into the cabinet low down.
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

/// A slip on a string: somebody was here. What it says is for whoever looks closely.
void draw_traces(const Pen& pen) {
    for (const std::string_view part : pen.scene.traces) {
        const PartPlace* place = find_part_place(part);
        if (place == nullptr)
            continue;
        const ImVec2 knot{place->box.min.x + place->box.width() * 0.6F,
                          place->box.min.y + std::min(8.0F, place->box.height() / 2)};
        const auto from_knot = [&](float x, float y) { return knot + ImVec2{x, y}; };
        const std::vector<ImVec2> edge = pen.path(std::array{
            from_knot(1, 11), from_knot(6, 7), from_knot(12, 10), from_knot(15, 31), from_knot(-1, 34)});
        pen.canvas.list->AddConvexPolyFilled(edge.data(), static_cast<int>(edge.size()),
                                             packed(pen.theme().ground));
        stroke(pen.canvas, edge, Line::Detail, pen.theme().ink, true);
        pen.line({knot, from_knot(6, 11)}, Line::Detail, pen.theme().ink);
        for (const float y : {16.0F, 21.0F, 26.0F})
            pen.line({from_knot(2.5F, y + 1), from_knot(y < 24 ? 11.0F : 7.0F, y)}, Line::Rule,
                     pen.theme().pencil);
    }
}

/// Cooling coil on the supply, as an A seen from its side.
void draw_coil(const Pen& pen) {
    const Rect c = kCoil;
    const ImVec2 top{c.centre().x, c.min.y};
    for (const float side : {-1.0F, 1.0F}) {
        const ImVec2 foot{c.centre().x + side * c.width() / 2, c.max.y};
        pen.ink({top, foot}, Line::Detail);
        pen.ink({top + ImVec2{0, 9}, foot + ImVec2{-side * 22, 0}}, Line::Detail);
    }
}

void draw_gas_meter(const Pen& pen) {
    pen.plate(kGasMeter, Line::Detail);
    const ImVec2 dial = kGasMeter.centre() - ImVec2{0, 6};
    pen.disc(dial, 9, Line::Detail);
    pen.ink({dial, dial + ImVec2{0, -7}}, Line::Detail);
    pen.ink({{8, kGasMeter.min.y}, {8, kGasPipeY + 5}}, Line::Detail);
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
    draw_contact(pen, kPressureSwitch + ImVec2{0, 6}, 8.5F, s.pressure_switch_closed);
}

// ---- the rest ----

void draw_ducts(const Pen& pen) {
    const float t = pen.top;
    pen.ink({{kSupply.min.x, t}, {kSupply.min.x, kCabinet.min.y}}, Line::Outline);
    pen.ink({{kSupply.max.x, t}, {kSupply.max.x, kCabinet.min.y}}, Line::Outline);
    pen.ink({{kReturn.min.x, t}, {kReturn.min.x, kFilter.min.y}, {kCabinet.max.x, kFilter.min.y}},
            Line::Outline);
    pen.ink({{kReturn.max.x, t}, {kReturn.max.x, kReturn.max.y}, {kCabinet.max.x, kReturn.max.y}},
            Line::Outline);
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

/// In its dark window, which looks out through the door.
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
    draw_contact(pen, kDoorSwitch + ImVec2{8, 3}, 5, pen.scene.door_switch_closed);
}

void draw_thermal_switch(const Pen& pen, ImVec2 centre, bool closed, ImVec2 probe) {
    if (probe.x != centre.x) {
        pen.ink({centre, probe}, Line::Silhouette);
    }
    pen.disc(centre, 8, Line::Detail);
    draw_contact(pen, centre + ImVec2{0, 2}, 5, closed);
}

/// A door comes off to the left and is put out of sight; where it hung stays marked.
void draw_door(const Pen& pen, Rect door, float away) {
    const std::vector<ImVec2> corners = pen.path(
        std::array{door.min, ImVec2{door.max.x, door.min.y}, door.max, ImVec2{door.min.x, door.max.y}});
    if (away > 0)
        stroke(pen.canvas, corners, Line::Hidden, faded(pen.theme().pencil, away), true);
    if (away >= 1)
        return;
    const ImVec2 off{-kDoorWay * away, 0};
    const Rect moved{door.min + off, door.max + off};
    fill(pen.canvas, pen.box(moved), faded(pen.theme().panel, 1 - away));
    outline(pen.canvas, pen.box(moved), Line::Outline, faded(pen.theme().ink, 1 - away));
}

/// What a door hides: known to be there, not seen. The lamp's window is in the door.
void draw_veils(const Pen& pen) {
    const CutawayScene& scene = pen.scene;
    if (!scene.as_seen)
        return;
    const auto veil = [&](Rect compartment, float away) {
        if (away < 1)
            fill(pen.canvas, pen.box(compartment), faded(pen.theme().ground, kVeil * (1 - away)));
    };
    veil(kBurnerCompartment, scene.burner_door_away);
    veil(kBlowerCompartment, scene.blower_door_away);
    if (scene.blower_door_away < 1)
        draw_lamp(pen);
}

void draw_shell(const Pen& pen) {
    const Rect c = kCabinet;
    pen.ink({c.min, {kSupply.min.x, c.min.y}}, Line::Silhouette);
    pen.ink({{kSupply.max.x, c.min.y}, {c.max.x, c.min.y}, {c.max.x, kFilter.min.y}}, Line::Silhouette);
    pen.ink({{c.max.x, kFilter.max.y + 4}, c.max, {c.min.x, c.max.y}, {c.min.x, c.max.y - 6}},
            Line::Silhouette);
    pen.ink({c.min, {c.min.x, c.min.y + 6}}, Line::Silhouette);
    pen.ink({{c.min.x, kDeck - 3}, {c.min.x, kDeck + 3}}, Line::Silhouette);
    // Deck, with the blower's outlet open, and tube sheet.
    pen.ink({{c.min.x, kDeck}, {kBlower.x + 34, kDeck}}, Line::Outline);
    pen.ink({{kBlower.x + 82, kDeck}, {c.max.x, kDeck}}, Line::Outline);
    pen.ink({{kSheet, c.min.y}, {kSheet, kCollector.min.y}}, Line::Outline);
    pen.ink({{kSheet, kCollector.max.y}, {kSheet, kFireBox.min.y}}, Line::Outline);
    pen.ink({{kSheet, kFireBox.max.y}, {kSheet, kDeck}}, Line::Outline);
    pen.frame(kFireBox, Line::Detail);
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
        {"Manifold", {kManifoldX - 3, 298}, Side::Left, false, "orifices"},
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
    draw_capacitor(pen, kBlowerCapacitor);
    if (scene.has_inducer) {
        draw_capacitor(pen, kInducerCapacitor);
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
