// SPDX-License-Identifier: MIT
#include "gui/work/furnace_pane.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/canvas/tab_order.hpp"
#include "gui/cutaway/cabinet.hpp"
#include "gui/cutaway/places.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/view/things.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <imgui_internal.h>
#include <string>
#include <utility>
#include <vector>

namespace lightoff::work {
namespace {

using namespace canvas;
using bench::Verb;
using bench::Word;
using instruments::Spot;

constexpr float kLeastTarget = 24; // pixels
constexpr float kMostZoom = 6;
constexpr float kAside = 0.5F; ///< of the way between middles, beside the gap between two things

/// Grown to that side about its centre; on whole pixels, so that it is no hair too small.
Rect at_least(Rect box, float side) {
    const ImVec2 size{std::max(side, std::ceil(box.width())), std::max(side, std::ceil(box.height()))};
    const ImVec2 corner = box.centre() - size * 0.5F;
    return rect_at({std::round(corner.x), std::round(corner.y)}, size);
}

/// Pixels from a box to a point; 0 inside.
float distance(Rect box, ImVec2 point) {
    return std::hypot(std::max({box.min.x - point.x, 0.0F, point.x - box.max.x}),
                      std::max({box.min.y - point.y, 0.0F, point.y - box.max.y}));
}

bool is_off(const bench::Worked& worked, int part) {
    const auto index = static_cast<std::size_t>(part);
    return (worked.parts_off[index / 64] >> (index % 64) & 1U) != 0;
}

/// One frame of the pane.
class Pane {
public:
    Pane(const Canvas& canvas, const cutaway::CutawayLayout& layout, const view::Known& known,
         const std::optional<view::Thing>& focus, FurnacePane& pane, view::Wanted& wanted)
        : canvas_(canvas), layout_(layout), known_(known), focus_(focus), pane_(pane), wanted_(wanted) {}

    /// Parts that lie beside the furnace: faded, in dashes. The blower module is on its way for a moment.
    void parts_off(float module_away) {
        for (std::size_t i = 0; i < known_.site->catalogue.parts.size(); ++i) {
            const cutaway::PartPlace* place = cutaway::find_part_place(known_.site->catalogue.parts[i].id);
            if (place == nullptr || !is_off(known_.percept.worked, static_cast<int>(i)))
                continue;
            const Rect box = layout_.place.to_screen(place->box);
            const bool on_its_way = place->part == "blower_module" && module_away < 1;
            fill(canvas_, box, faded(canvas_.theme->ground, on_its_way ? 0.0F : 0.85F));
            outline(canvas_, box, Line::Hidden, canvas_.theme->ink);
        }
    }

    void parts() {
        for (const cutaway::PartPlace& place : cutaway::part_places()) {
            const int part = known_.site->catalogue.find_part(place.part);
            if (part >= 0)
                target(layout_.place.to_screen(place.box), {Word::part, part});
        }
        target(layout_.place.to_screen(cutaway::kBurnerDoor), control(Verb::burner_door));
        target(layout_.place.to_screen(cutaway::kBlowerDoor), control(Verb::blower_door));
    }

    /// The words beside the drawing mean what their leaders end on.
    void labels() {
        for (const cutaway::PlacedLabel& placed : layout_.labels) {
            const int part = known_.site->catalogue.find_part(placed.label.part);
            if (part < 0)
                continue;
            const Rect box = cutaway::box_of(canvas_, placed);
            const view::Thing thing{Word::part, part};
            ImGui::PushID(placed.label.words.data());
            if (press_area("words", box))
                wanted_.focus = thing;
            if (ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible))
                segment(canvas_, {box.min.x, box.max.y}, box.max, Line::Detail, canvas_.theme->ink);
            ImGui::PopID();
        }
    }

    void spots() {
        for (const cutaway::SpotPlace& place : cutaway::spot_places()) {
            const ImVec2 at = layout_.place.to_screen(place.at);
            if (!layout_.window.holds(at))
                continue;
            canvas_.list->AddCircleFilled(at, canvas_.px(6), packed(faded(canvas_.theme->ground, 0.85F)));
            canvas_.list->AddCircle(at, canvas_.px(6), packed(canvas_.theme->ink), 0,
                                    line_width(canvas_, Line::Outline));
            const ImVec2 ring{canvas_.px(6), canvas_.px(6)};
            target({at - ring, at + ring}, {kind_of(place.spot), static_cast<std::int32_t>(place.spot)});
        }
    }

    /// What lies nearest to the pointer is meant, not what happened to be drawn first: the zones of small
    /// things are wider than they, and overlap.
    void take_pointer() {
        if (!under_pointer_)
            return;
        const ImVec2 pointer = ImGui::GetIO().MousePos;
        const Zone* meant = nullptr;
        for (const Zone& zone : zones_)
            if (zone.reach.holds(pointer) && (meant == nullptr || is_nearer(zone, *meant, pointer)))
                meant = &zone;
        if (meant == nullptr)
            return;
        hovered_ = meant->thing;
        hovered_box_ = meant->reach;
        wanted_.hover = meant->thing;
        if (pressed_)
            wanted_.focus = meant->thing;
        if (focus_ != meant->thing)
            outline(canvas_, meant->reach, Line::Detail, canvas_.theme->ink);
    }

    [[nodiscard]] bool has_the_keyboard() const { return keyboard_; }
    /// Arrows go from thing to thing; Tab comes in where they were left.
    void take_arrows() {
        const auto here = std::find_if(zones_.begin(), zones_.end(),
                                       [&](const Zone& zone) { return zone.thing == pane_.walked; });
        if (here == zones_.end()) {
            pane_.walked.reset();
            if (!zones_.empty())
                pane_.walked = zones_.front().thing;
            return;
        }
        static const std::array<std::pair<ImGuiKey, ImVec2>, 4> kArrows{{{ImGuiKey_LeftArrow, {-1, 0}},
                                                                         {ImGuiKey_RightArrow, {1, 0}},
                                                                         {ImGuiKey_UpArrow, {0, -1}},
                                                                         {ImGuiKey_DownArrow, {0, 1}}}};
        if (!keyboard_)
            return;
        for (const auto& [key, way] : kArrows) {
            if (!ImGui::IsKeyPressed(ImGui::GetKeyIndex(key)))
                continue;
            ImGui::NavMoveRequestCancel(); // the library would go by the zones, which overlap
            const Zone* next = nullptr;
            float least = 1e9F;
            for (const Zone& zone : zones_) {
                ImVec2 off = zone.own.centre() - here->own.centre();
                if (std::hypot(off.x, off.y) < 1) // one in the other: side by side, in their order
                    off = {&zone == &*here ? 0.0F : &zone > &*here ? 1.0F : -1.0F, 0};
                const float along = off.x * way.x + off.y * way.y;
                const float across = std::abs(off.x * way.y) + std::abs(off.y * way.x);
                const float gap = distance(zone.own, here->own.centre()); // a long thing is near all along
                if (along > 0.5F && gap + kAside * (along + across) < least) {
                    least = gap + kAside * (along + across);
                    next = &zone;
                }
            }
            if (next != nullptr) {
                pane_.walked = next->thing;
                pane_.take_keyboard = true;
            }
        }
    }

    /// Name of what the pointer or the keyboard is on, beside it.
    void name_hovered() const {
        if (!hovered_)
            return;
        std::string words = view::title_of(*known_.site, *hovered_);
        if (const std::string worn = view::worn_words(known_.percept, *hovered_); !worn.empty())
            words += ": " + worn;
        const ImVec2 size = text_size(canvas_, words, Type::Secondary);
        ImVec2 at{hovered_box_.centre().x - size.x / 2, hovered_box_.min.y - size.y - canvas_.px(6)};
        at.x = std::clamp(at.x, layout_.window.min.x,
                          std::max(layout_.window.min.x, layout_.window.max.x - size.x));
        at.y = std::max(at.y, layout_.window.min.y);
        const Rect card{at - ImVec2{canvas_.px(6), canvas_.px(2)},
                        at + size + ImVec2{canvas_.px(6), canvas_.px(2)}};
        if (canvas_.probe != nullptr)
            canvas_.probe->set_layer(1); // it lies over what is beneath for as long as it is hovered
        fill(canvas_, card, canvas_.theme->ink);
        text(canvas_, at, words, Type::Secondary, canvas_.theme->ground);
        if (canvas_.probe != nullptr)
            canvas_.probe->set_layer(0);
    }

private:
    static view::Thing control(Verb verb) { return {Word::on_off, static_cast<std::int32_t>(verb)}; }
    /// What a spot takes first: the word by which it is known.
    static Word kind_of(Spot spot) {
        const std::uint8_t takes = instruments::spot_row(spot).takes;
        if ((takes & instruments::kTakesPressure) != 0)
            return Word::pressure_spot;
        if ((takes & instruments::kTakesTemperature) != 0)
            return Word::temperature_spot;
        if ((takes & instruments::kTakesFlueGas) != 0)
            return Word::flue_spot;
        if ((takes & instruments::kTakesSniffing) != 0)
            return Word::sniff_spot;
        return (takes & instruments::kTakesSolution) != 0 ? Word::solution_spot : Word::tachometer_spot;
    }

    /// A thing's own box, and the zone in which it can be meant.
    struct Zone {
        view::Thing thing;
        Rect own, reach;
    };
    static bool is_small(const Zone& zone) {
        return zone.own.width() < kLeastTarget || zone.own.height() < kLeastTarget;
    }
    static bool is_nearer(const Zone& a, const Zone& b, ImVec2 pointer) {
        if (is_small(a) != is_small(b)) // a large thing can be pressed elsewhere
            return is_small(a);
        const float to_a = distance(a.own, pointer);
        const float to_b = distance(b.own, pointer);
        if (to_a != to_b)
            return to_a < to_b;
        // Inside of both: the smaller one lies in front.
        return a.own.width() * a.own.height() < b.own.width() * b.own.height();
    }

    void target(Rect own, const view::Thing& thing) {
        const Rect box = at_least(own, kLeastTarget);
        if (box.centre().x < layout_.window.min.x - canvas_.px(20) ||
            !layout_.window.shrunk(-canvas_.px(20)).holds(box.centre()))
            return;
        ImGui::PushID(static_cast<int>(thing.kind) * 4096 + thing.value);
        const bool clicked = press_area("thing", box);
        if (pane_.walked == thing) {
            tab_stop();
            if (pane_.take_keyboard)
                canvas::take_keyboard();
            pane_.take_keyboard = false;
        }
        const bool pressed = clicked || enter_pressed();
        const bool keyboard = has_keyboard();
        const bool pointed = !keyboard && ImGui::IsItemHovered(); // the library takes one for the other
        if (keyboard) {
            keyboard_ = true;
            if (!pane_.take_keyboard) // else it is on its way to another
                pane_.walked = thing;
        }
        zones_.push_back({thing, own, box});
        under_pointer_ = under_pointer_ || pointed;
        pressed_ = pressed_ || (pressed && pointed);
        if (pressed && !pointed)
            wanted_.focus = thing;
        if (keyboard) {
            hovered_ = thing;
            hovered_box_ = box;
            wanted_.hover = thing;
        }
        ImGui::PopID();
        if (focus_ == thing || keyboard)
            outline(canvas_, box.shrunk(-canvas_.px(2)), Line::Outline, canvas_.theme->ink);
        if (canvas_.probe != nullptr)
            canvas_.probe->add_target(box, view::title_of(*known_.site, thing));
    }

    Canvas canvas_;
    const cutaway::CutawayLayout& layout_;
    const view::Known& known_;
    const std::optional<view::Thing>& focus_;
    FurnacePane& pane_;
    view::Wanted& wanted_;
    std::vector<Zone> zones_;
    bool keyboard_ = false;                        ///< is on one of them
    bool under_pointer_ = false, pressed_ = false; ///< a zone is; the nearest is meant
    std::optional<view::Thing> hovered_;
    Rect hovered_box_;
};

/// Wheel and drag on the bare drawing.
void move_drawing(const Canvas& canvas, const cutaway::CutawayLayout& layout, cutaway::CutawayView& view) {
    if (!ImGui::IsWindowHovered(ImGuiHoveredFlags_AllowWhenBlockedByActiveItem))
        return;
    const ImGuiIO& io = ImGui::GetIO();
    if (io.MouseWheel != 0) {
        const float factor =
            std::clamp(view.zoom * std::pow(1.2F, io.MouseWheel), 1.0F, kMostZoom) / view.zoom;
        const ImVec2 off = io.MousePos - layout.window.centre() - view.pan * canvas.scale;
        view.pan = view.pan - off * ((factor - 1) / canvas.scale);
        view.zoom *= factor;
    }
    if (ImGui::IsMouseDragging(ImGuiMouseButton_Right) || ImGui::IsMouseDragging(ImGuiMouseButton_Middle))
        view.pan = view.pan + io.MouseDelta * (1 / canvas.scale);
    if (view.zoom <= 1.0F)
        view.pan = {0, 0};
}

} // namespace

void draw_furnace_pane(const Canvas& canvas, Rect area, const view::Known& known,
                       const cutaway::CutawayScene& scene, const std::optional<view::Thing>& focus,
                       FurnacePane& pane, view::Wanted& wanted) {
    area = {{std::ceil(area.min.x), std::ceil(area.min.y)}, {std::floor(area.max.x), std::floor(area.max.y)}};
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("furnace", area.size(), false,
                      kPlainWindow | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse |
                          ImGuiWindowFlags_NoBackground);
    // Escape makes the library leave a child window before we see the key: it closes a tag, no more.
    pane.take_keyboard =
        pane.take_keyboard || (pane.has_keyboard && platform::key_pressed(platform::Key::Escape));
    const Canvas inside = canvas.here();
    const cutaway::CutawayLayout layout = cutaway::draw_cutaway(inside, area, scene, pane.view);
    if (layout.window.width() <= 0) {
        ImGui::EndChild();
        return;
    }
    Pane shown(inside, layout, known, focus, pane, wanted);
    shown.parts_off(scene.blower_module_away);
    if (pane.show_spots)
        shown.spots();
    shown.parts();
    shown.take_pointer();
    shown.take_arrows();
    pane.has_keyboard = shown.has_the_keyboard();
    shown.labels();
    shown.name_hovered();
    move_drawing(inside, layout, pane.view);
    ImGui::EndChild();
}

} // namespace lightoff::work
