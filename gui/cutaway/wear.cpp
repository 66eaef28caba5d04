// SPDX-License-Identifier: MIT
#include "gui/cutaway/wear.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/path_walker.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/cutaway/cabinet.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <string_view>

namespace lightoff::cutaway {
namespace {

using namespace canvas;
using faults::Wear;

constexpr Colour kWhite = hex(0xFFFFFF);

/// Where a part's wear is drawn; some lie on the dark wash.
struct WornPlace {
    std::string_view part;
    Wear wear;
    Rect box;
    bool on_dark = false;
};

const std::array kPlaces{
    WornPlace{"junction_box", Wear::burnt, {{138, 522}, {160, 544}}},
    WornPlace{"transformer", Wear::burnt, {{88, 538}, {106, 556}}},
    WornPlace{"thermostat_cable", Wear::corrosion, {{93, 486}, {108, 502}}},
    WornPlace{"valve_wires", Wear::corrosion, {{70, 288}, {98, 303}}},
    WornPlace{"collector_port", Wear::rust, {{164, 200}, {182, 212}}, true},
    WornPlace{"burner_openings", Wear::rust, {{182, 262}, {202, 336}}, true},
    WornPlace{"igniter_plug", Wear::burnt, {{174, 352}, {190, 364}}},
    WornPlace{"burner_ground", Wear::rust, {{130, 354}, {167, 364}}},
    WornPlace{"flame_rod", Wear::coat, {{170, 240}, {182, 262}}, true},
    WornPlace{"filter", Wear::dirt, {{413, 426}, {425, 578}}},
};

/// A number 0..1 that looks like chance, the same for the same place.
float scattered(std::uint32_t n) {
    n ^= n >> 16U;
    n *= 0x7feb352dU;
    n ^= n >> 15U;
    n *= 0x846ca68bU;
    n ^= n >> 16U;
    return static_cast<float>(n & 0xFFFFU) / 65536.0F;
}

class Brush {
public:
    Brush(const Canvas& canvas, const Transform& place) : canvas_(canvas), place_(place) {}

    [[nodiscard]] float px(float units) const { return units * place_.zoom; }
    [[nodiscard]] ImVec2 at(ImVec2 p) const { return place_.to_screen(p); }
    [[nodiscard]] Colour ink(bool on_dark) const {
        return on_dark ? mix(canvas_.theme->chamber, kWhite, 0.72F) : canvas_.theme->ink;
    }

    void mark(Rect box, Wear wear, int step, bool on_dark) const {
        switch (wear) {
        case Wear::dirt:
        case Wear::coat:
            dots(box, step, ink(on_dark), 1.15F);
            break;
        case Wear::soot:
            dots(box, step, ink(on_dark), 0.8F);
            break;
        case Wear::rust:
            flakes(box, step, ink(on_dark));
            break;
        case Wear::burnt:
            scorch(box, step);
            break;
        case Wear::corrosion:
            crust(box, step);
            break;
        case Wear::water:
            break; // in the hose alone
        }
    }

    /// So many dots for each step that the fifth all but covers the ground.
    void dots(Rect box, int step, Colour colour, float radius) const {
        scatter(box, step, [&](ImVec2 p, float) {
            canvas_.list->AddCircleFilled(at(p), std::max(1.0F, px(radius)), packed(colour), 8);
        });
    }
    void flakes(Rect box, int step, Colour colour) const {
        scatter(box, step, [&](ImVec2 p, float chance) {
            const float angle = kTurn * chance;
            const ImVec2 half{1.8F * std::cos(angle), 1.8F * std::sin(angle)};
            canvas_.list->AddLine(at(p - half), at(p + half), packed(colour), std::max(1.0F, px(0.9F)));
        });
    }
    /// Of a crust that blooms: rings, the more and the larger the worse.
    void crust(Rect box, int step) const {
        const float radius = std::max(1.2F, px(1.1F + 0.15F * static_cast<float>(step)));
        scatter(box, step, [&](ImVec2 p, float) {
            canvas_.list->AddCircle(at(p), radius, packed(ink(false)), 10, std::max(1.0F, px(0.7F)));
        });
    }
    /// Browned by heat: hatched, the closer the worse, charred in the middle from the third step on.
    void scorch(Rect box, int step) const {
        const Rect on_screen = place_.to_screen(box);
        hatch(canvas_, on_screen, ink(false),
              (9 - 1.3F * static_cast<float>(step)) * px(1) / canvas_.scale * 0.6F);
        if (step >= 3)
            canvas_.list->AddCircleFilled(on_screen.centre(), px(1.1F * static_cast<float>(step)),
                                          packed(ink(false)));
    }

    /// The same around something that stays: a toggle on its cover.
    void scorch_round(Rect box, Rect hole, int step) const {
        const Rect out = place_.to_screen(box);
        const Rect in = place_.to_screen(hole);
        const float gap = (9 - 1.3F * static_cast<float>(step)) * px(1) / canvas_.scale * 0.6F;
        for (const Rect side : {Rect{out.min, {out.max.x, in.min.y}}, Rect{{out.min.x, in.max.y}, out.max},
                                Rect{{out.min.x, in.min.y}, {in.min.x, in.max.y}},
                                Rect{{in.max.x, in.min.y}, {out.max.x, in.max.y}}})
            hatch(canvas_, side, ink(false), gap);
        if (step >= 3)
            canvas_.list->AddRect(in.min, in.max, packed(ink(false)), 0, 0,
                                  px(0.5F * static_cast<float>(step)));
    }

    /// Dirt that goes round with a wheel's blades: the cups fill from the rim inwards.
    void on_wheel(ImVec2 centre, float radius, float angle_rad, int step, Colour colour) const {
        const int count = 36 * step;
        const float depth = 0.05F * static_cast<float>(step);
        for (int i = 0; i < count; ++i) {
            const auto n = static_cast<std::uint32_t>(i) * 2U;
            const float angle =
                angle_rad + kTurn * (static_cast<float>(i) + scattered(n)) / static_cast<float>(count);
            const float r = radius * (0.95F - depth * scattered(n + 1));
            canvas_.list->AddCircleFilled(at(centre + ImVec2{std::cos(angle), std::sin(angle)} * r),
                                          std::max(1.0F, px(1.2F)), packed(colour), 8);
        }
    }
    /// Rust on a wheel's blades: strokes that go round with it, from their edges inwards.
    void rust_on_wheel(ImVec2 centre, float radius, float angle_rad, int step) const {
        const int count = 16 * step;
        const float depth = 0.1F + 0.05F * static_cast<float>(step);
        for (int i = 0; i < count; ++i) {
            const auto n = static_cast<std::uint32_t>(i) * 3U;
            const float angle =
                angle_rad + kTurn * (static_cast<float>(i) + scattered(n)) / static_cast<float>(count);
            const float r = radius * (0.97F - depth * scattered(n + 1));
            const float slant = kTurn * scattered(n + 2);
            const ImVec2 middle = centre + ImVec2{std::cos(angle), std::sin(angle)} * r;
            const ImVec2 half{2.2F * std::cos(slant), 2.2F * std::sin(slant)};
            canvas_.list->AddLine(at(middle - half), at(middle + half), packed(ink(false)),
                                  std::max(1.0F, px(1.1F)));
        }
    }
    void on_disc(ImVec2 centre, float radius, int step, Colour colour) const {
        scatter({centre - ImVec2{radius, radius}, centre + ImVec2{radius, radius}}, step,
                [&](ImVec2 p, float) {
                    const ImVec2 off = p - centre;
                    if (off.x * off.x + off.y * off.y < radius * radius)
                        canvas_.list->AddCircleFilled(at(p), std::max(1.0F, px(1.1F)), packed(colour), 8);
                });
    }
    /// Water stands in the low bend of the hose: a filled stretch with the surface at both its ends.
    void in_hose(int step) const {
        std::vector<ImVec2> line;
        for (const ImVec2 p : hose_line())
            line.push_back(at(p));
        const PathWalker walk(line);
        const float middle = walk.length() * 0.34F; // the lowest point
        const float half = px(2.5F + 3.5F * static_cast<float>(step));
        std::vector<ImVec2> stretch;
        walk.piece(std::max(0.0F, middle - half), std::min(walk.length(), middle + half), stretch);
        canvas_.list->AddPolyline(stretch.data(), static_cast<int>(stretch.size()), packed(ink(false)), 0,
                                  px(3.4F));
        for (const float end : {middle - half, middle + half}) {
            const auto [point, along] = walk.at(end);
            const ImVec2 across{-along.y * px(5), along.x * px(5)};
            canvas_.list->AddLine(point - across, point + across, packed(ink(false)), std::max(1.0F, px(1)));
        }
    }

private:
    /// Places by chance on a grid; a step takes a fifth of them.
    template <class Put>
    void scatter(Rect box, int step, Put put) const {
        constexpr float kCell = 3.6F; // drawing units
        std::uint32_t n = 0;
        for (float y = box.min.y + kCell / 2; y < box.max.y; y += kCell)
            for (float x = box.min.x + kCell / 2; x < box.max.x; x += kCell, n += 4) {
                if (scattered(n) * static_cast<float>(faults::kWearSteps) >= static_cast<float>(step))
                    continue;
                const ImVec2 off{scattered(n + 1) - 0.5F, scattered(n + 2) - 0.5F};
                put(ImVec2{x, y} + off * (kCell * 0.8F), scattered(n + 3));
            }
    }

    const Canvas& canvas_;
    const Transform& place_;
};

/// Lint in the air openings behind, rust in the slots in front of every burner.
void draw_on_burners(const Brush& brush, const CutawayScene& scene, const WearMark& mark) {
    for (std::size_t i = 0; i < scene.burner_count; ++i) {
        const float y = burner_y(i, scene.burner_count);
        const Rect box = mark.wear == Wear::dirt ? Rect{{kBurnerBack - 2, y - 8}, {kBurnerBack + 11, y + 8}}
                                                 : Rect{{kBurnerMouth - 15, y - 7}, {kBurnerMouth, y + 7}};
        brush.mark(box, mark.wear, mark.step, false);
    }
}

/// On the walls of the cells, as far as a mirror shows them.
void draw_in_cells(const Brush& brush, const CutawayScene& scene, const WearMark& mark) {
    for (std::size_t i = 0; i < scene.burner_count; ++i) {
        const float half = cell_half(scene.burner_count);
        const float r = hairpin_radius(i, scene.burner_count);
        for (const float y : {kHairpin.y - r, kHairpin.y + r})
            brush.mark({{kSheet, y - half}, {kHairpin.x, y + half}}, mark.wear, mark.step, true);
    }
}

void draw_mark(const Brush& brush, const CutawayScene& scene, const WearMark& mark) {
    if (mark.part == "blower_wheel")
        return brush.on_wheel(kBlower, kBlowerRadius, scene.blower.angle_rad, mark.step, brush.ink(false));
    if (mark.part == "inducer_wheel")
        return brush.rust_on_wheel(kInducer, kInducerRadius - 3, scene.inducer.angle_rad, mark.step);
    if (mark.part == "blower_motor")
        return brush.on_disc(kBlower, 19, mark.step, brush.ink(false));
    if (mark.part == "inducer_motor")
        return brush.on_disc(kInducer, 13, mark.step, brush.ink(false));
    if (mark.part == "disconnect")
        return brush.scorch_round(kDisconnect.shrunk(2), kToggle, mark.step);
    if (mark.part == "burners")
        return draw_on_burners(brush, scene, mark);
    if (mark.part == "exchanger")
        return draw_in_cells(brush, scene, mark);
    if (mark.part == "pressure_hose")
        return brush.in_hose(mark.step);
    for (const WornPlace& place : kPlaces)
        if (place.part == mark.part && place.wear == mark.wear)
            brush.mark(place.box, mark.wear, mark.step, place.on_dark);
}

} // namespace

std::vector<ImVec2> hose_line() {
    const ImVec2 a{172, kCollector.max.y};
    const ImVec2 b{172, 224};
    const ImVec2 c{124, 206};
    const ImVec2 d = kPressureSwitch + ImVec2{kPressureSwitchRadius + 4, -4};
    std::vector<ImVec2> line;
    for (int i = 0; i <= 24; ++i) {
        const float t = static_cast<float>(i) / 24;
        const float u = 1 - t;
        line.push_back(a * (u * u * u) + b * (3 * u * u * t) + c * (3 * u * t * t) + d * (t * t * t));
    }
    return line;
}

void draw_wear(const Canvas& canvas, const Transform& place, const CutawayScene& scene) {
    const Brush brush(canvas, place);
    for (const WearMark& mark : scene.wear)
        draw_mark(brush, scene, mark);
}

} // namespace lightoff::cutaway
