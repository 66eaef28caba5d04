// SPDX-License-Identifier: MIT
#include "gui/work/tag.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/tab_order.hpp"
#include "gui/cutaway/places.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/sheet/column.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace lightoff::work {
namespace {

using namespace canvas;
using bench::Verb;
using bench::Word;
using platform::Key;
using platform::key_pressed;
using view::Slot;

constexpr std::size_t kColumns = 4;
constexpr float kRow = 46; // design pixels
constexpr float kLeastChoice = 280;
constexpr int kMoreRows = 2; ///< for choices that are spread out

Slot slot_at(std::size_t i) {
    return static_cast<Slot>(i);
}

/// The door that a thing lies behind, if it is on: the act that takes it off.
std::string door_in_the_way(const view::Known& known, const view::Thing& thing) {
    if (thing.kind != Word::part)
        return {};
    using Where = furnace::Place::Where;
    const Where where = known.site->catalogue.parts[static_cast<std::size_t>(thing.value)].where;
    if (where == Where::burner_compartment && known.percept.left_as.burner_door_on)
        return "burner-door off";
    if (where == Where::blower_compartment && known.percept.left_as.blower_door_on)
        return "blower-door off";
    return {};
}

/// What a part's tag offers, with the taps and places for probes that lie on it.
std::array<view::SlotFill, view::kSlots> offers_of(const view::Known& known, const view::Thing& thing) {
    auto slots = view::slots_of(known, thing);
    if (thing.kind != Word::part)
        return slots;
    const cutaway::PartPlace* place =
        cutaway::find_part_place(known.site->catalogue.parts[static_cast<std::size_t>(thing.value)].id);
    if (place == nullptr)
        return slots;
    auto& measure = slots[static_cast<std::size_t>(Slot::measure)];
    std::vector<view::SlotChoice> at_spots;
    for (const cutaway::SpotPlace& spot : cutaway::spot_places()) {
        if (!place->box.holds(spot.at))
            continue;
        const auto there = view::slots_of(known, {Word::pressure_spot, static_cast<std::int32_t>(spot.spot)});
        for (view::SlotChoice choice : there[static_cast<std::size_t>(Slot::measure)].choices) {
            choice.words = choice.line.substr(0, choice.line.find(' ')) + ": " +
                           std::string(instruments::spot_row(spot.spot).title);
            at_spots.push_back(choice);
        }
    }
    measure.choices.insert(measure.choices.begin(), at_spots.begin(), at_spots.end());
    if (!measure.choices.empty())
        measure.why_empty.clear();
    return slots;
}

void choose(const view::Known& known, const view::SlotChoice& choice, Tag& tag, view::Wanted& wanted) {
    if (choice.lead != view::Wanted::Lead::none) {
        wanted.lead = choice.lead;
        wanted.lead_point = std::stoi(choice.line);
        tag.open.reset();
        return;
    }
    tag.refusal = choice.why_not;
    tag.chain = choice.allowed ? std::string() : door_in_the_way(known, *tag.thing);
    if (!choice.allowed)
        return;
    wanted.lines.push_back(choice.line);
    tag.open.reset();
}

void press(const view::Known& known, Slot slot, const view::SlotFill& fill, Tag& tag, view::Wanted& wanted) {
    tag.refusal.clear();
    tag.chain.clear();
    if (fill.choices.empty())
        tag.refusal = fill.why_empty;
    else if (fill.choices.size() == 1)
        choose(known, fill.choices.front(), tag, wanted);
    else
        tag.open = tag.open == slot ? std::optional<Slot>() : slot;
}

void take_chain(Tag& tag, view::Wanted& wanted) {
    wanted.lines.push_back(tag.chain);
    tag.refusal.clear();
    tag.chain.clear();
}

std::string time_of(const view::SlotChoice& choice) {
    if (choice.seconds < 0.5)
        return {};
    const auto seconds = static_cast<int>(std::lround(choice.seconds));
    return seconds < 60 ? std::to_string(seconds) + " s"
                        : std::to_string(seconds / 60) + " min" +
                              (seconds % 60 != 0 ? " " + std::to_string(seconds % 60) + " s" : "");
}

/// A tag of card with a cut corner and an eyelet.
void draw_card(const Canvas& canvas, Rect box) {
    const Theme& theme = *canvas.theme;
    const float cut = canvas.px(16);
    const std::array<ImVec2, 5> edge{ImVec2{box.min.x + cut, box.min.y}, ImVec2{box.max.x, box.min.y},
                                     box.max, ImVec2{box.min.x, box.max.y},
                                     ImVec2{box.min.x, box.min.y + cut}};
    canvas.list->AddConvexPolyFilled(edge.data(), static_cast<int>(edge.size()), packed(theme.panel));
    stroke(canvas, edge, Line::Detail, theme.ink, true);
    const ImVec2 eyelet{box.min.x + canvas.px(15), box.min.y + canvas.px(18)};
    canvas.list->AddCircleFilled(eyelet, canvas.px(4), packed(theme.ground));
    canvas.list->AddCircle(eyelet, canvas.px(4), packed(theme.ink), 0, line_width(canvas, Line::Detail));
}

/// A slot: its letter and name over what it would do. Everything is pressable; what can't be done says why.
bool slot_button(const Canvas& canvas, Rect box, std::size_t i, const view::SlotFill& fill,
                 const std::string& key) {
    const Theme& theme = *canvas.theme;
    const std::string name(view::name_of(slot_at(i)));
    const bool pressed = press_area(name.c_str(), box) || enter_pressed();
    tab_stop();
    const bool reversed = ImGui::IsItemActive();
    if (reversed || ImGui::IsItemHovered())
        canvas::fill(canvas, box, reversed ? theme.ink : theme.ground);
    outline(canvas, box, fill.choices.empty() ? Line::Hidden : Line::Rule, theme.pencil);
    if (has_keyboard())
        outline(canvas, box.shrunk(-canvas.px(2)), Line::Outline, theme.ink);
    Rect inner = box.shrunk(canvas.px(4));
    inner.min.x += canvas.px(4);
    Rect upper = inner.cut_top(line_height(canvas, Type::Body));
    text_in(canvas, upper.cut_right(text_size(canvas, key, Type::Minimum).x + canvas.px(2)), key,
            Type::Minimum, reversed ? theme.panel : theme.pencil, Align::End);
    text_in(canvas, upper, name, Type::Body, reversed ? theme.ground : theme.ink);
    const bool says_it = fill.choices.size() == 1 &&
                         text_size(canvas, fill.choices.front().words, Type::Minimum).x <= inner.width();
    const std::string below = fill.choices.empty()       ? "—"
                              : says_it                  ? fill.choices.front().words
                              : fill.choices.size() == 1 ? "1 way"
                                                         : std::to_string(fill.choices.size()) + " ways";
    text_in(canvas, inner, below, Type::Minimum, reversed ? theme.panel : theme.pencil);
    if (canvas.probe != nullptr)
        canvas.probe->add_target(box, name);
    return pressed;
}

void draw_slots(const Canvas& canvas, Rect area, const view::Known& known,
                const std::array<view::SlotFill, view::kSlots>& slots, const KeyMap& keys, Tag& tag,
                view::Wanted& wanted) {
    const float gap = canvas.px(6);
    const float width = std::floor((area.width() - gap * (kColumns - 1)) / kColumns);
    for (std::size_t i = 0; i < view::kSlots; ++i) {
        const ImVec2 at{area.min.x + static_cast<float>(i % kColumns) * (width + gap),
                        area.min.y + static_cast<float>(i / kColumns) * (canvas.px(kRow) + gap)};
        if (slot_button(canvas, rect_at(at, {width, canvas.px(kRow)}), i, slots[i],
                        keys.name(command_of(slot_at(i)))))
            press(known, slot_at(i), slots[i], tag, wanted);
    }
}

/// Where a line is too short for the words: each breaks into as many as it needs.
void draw_long_choices(const Canvas& canvas, Rect area, const view::Known& known, const view::SlotFill& fill,
                       Tag& tag, view::Wanted& wanted) {
    sheet::Column column(canvas, area, "choices");
    for (std::size_t i = 0; i < fill.choices.size(); ++i) {
        const view::SlotChoice& choice = fill.choices[i];
        const std::string number = i < 9 ? std::to_string(i + 1) + "  " : std::string();
        const std::string time = time_of(choice);
        const std::string words = number + choice.words + (time.empty() ? "" : "  ·  " + time);
        if (column.button(words + "##" + std::to_string(i)))
            choose(known, choice, tag, wanted);
    }
}

void draw_choices(const Canvas& canvas, Rect area, const view::Known& known, const view::SlotFill& fill,
                  Tag& tag, view::Wanted& wanted) {
    const float height = control_height(canvas);
    const float gap = canvas.px(4);
    float widest = canvas.px(kLeastChoice);
    float widest_words = 0;
    for (const view::SlotChoice& choice : fill.choices) {
        widest = std::max(widest, button_width(canvas, choice.words, time_of(choice) + "  9") + gap);
        widest_words = std::max(widest_words, button_width(canvas, choice.words) + gap);
    }
    if (widest_words > area.width() - ImGui::GetStyle().ScrollbarSize)
        return draw_long_choices(canvas, area, known, fill, tag, wanted);
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("choices", area.size(), false, ImGuiWindowFlags_NoBackground);
    const Canvas inside = canvas.here();
    const auto columns =
        static_cast<std::size_t>(std::max(1.0F, (area.width() - ImGui::GetStyle().ScrollbarSize) / widest));
    const float width =
        std::floor((area.width() - ImGui::GetStyle().ScrollbarSize) / static_cast<float>(columns) - gap);
    const ImVec2 from = ImGui::GetCursorScreenPos();
    for (std::size_t i = 0; i < fill.choices.size(); ++i) {
        const ImVec2 at{from.x + static_cast<float>(i % columns) * (width + gap),
                        from.y + static_cast<float>(i / columns) * (height + gap)};
        const view::SlotChoice& choice = fill.choices[i];
        std::string key = time_of(choice);
        if (i < 9)
            key += (key.empty() ? "" : "  ") + std::to_string(i + 1);
        if (button_width(canvas, choice.words, key) > width)
            key.clear(); // the words come first
        ImGui::PushID(static_cast<int>(i));
        const Rect box = rect_at(at, {width, height});
        if (button(in_view(inside, box, area), box, choice.words, false, key))
            choose(known, choice, tag, wanted);
        ImGui::PopID();
    }
    ImGui::EndChild();
}

std::string chain_words(const Tag& tag) {
    return "First: " + tag.chain;
}

/// What would take the reason of a refusal away, as one press.
void draw_chain(const Canvas& canvas, Rect box, Tag& tag, view::Wanted& wanted) {
    if (button(canvas, box, chain_words(tag), false, "Enter"))
        take_chain(tag, wanted);
}

float close_width(const Canvas& canvas) {
    return button_width(canvas, "Close", "Esc") + canvas.px(8);
}

/// Whether the chain finds room between the thing's name and the button that closes; else it has a row.
bool chain_beside(const Canvas& canvas, float width, const view::Known& known, const Tag& tag) {
    const float title = text_size(canvas, view::title_of(*known.site, *tag.thing), Type::Heading).x;
    return canvas.px(16 + 22 + 8) + title + close_width(canvas) +
               button_width(canvas, chain_words(tag), "Enter") <=
           width;
}

} // namespace

float tag_height(const Canvas& canvas, float width, const view::Known& known, const Tag& tag) {
    float more = tag.open ? kMoreRows * control_height(canvas) : 0;
    if (!tag.chain.empty() && !chain_beside(canvas, width, known, tag))
        more += control_height(canvas) + canvas.px(6);
    return more + canvas.px(16) + control_height(canvas) + 2 * canvas.px(kRow) + canvas.px(12);
}

void draw_tag(const Canvas& canvas, Rect area, const view::Known& known, const KeyMap& keys, Tag& tag,
              view::Wanted& wanted) {
    draw_card(canvas, area);
    const auto slots = offers_of(known, *tag.thing);
    Rect inner = area.shrunk(canvas.px(8));
    Rect head = inner.cut_top(control_height(canvas));
    if (button(canvas, head.cut_right(button_width(canvas, "Close", "Esc")), "Close", false, "Esc"))
        return tag.close();
    head.cut_right(canvas.px(8));
    inner.cut_top(canvas.px(6));
    if (!tag.chain.empty()) {
        const float width = button_width(canvas, chain_words(tag), "Enter");
        Rect row = head;
        if (!chain_beside(canvas, area.width(), known, tag)) {
            row = inner.cut_top(control_height(canvas));
            inner.cut_top(canvas.px(6));
        }
        const Rect box = row.cut_right(width);
        if (row.min.y == head.min.y)
            head.max.x = box.min.x - canvas.px(8);
        draw_chain(canvas, box, tag, wanted);
    }
    head.cut_left(canvas.px(22));
    const std::string title = view::title_of(*known.site, *tag.thing);
    const Type type = largest_type(canvas, title, head.width());
    text_in(canvas, head, title, type, canvas.theme->ink);
    if (const std::string worn = view::worn_words(known.percept, *tag.thing); !worn.empty()) {
        head.cut_left(text_size(canvas, title, type).x + canvas.px(14));
        if (text_size(canvas, worn, Type::Secondary).x <= head.width())
            text_in(canvas, head, worn, Type::Secondary, canvas.theme->ink);
    }
    if (tag.open)
        draw_choices(canvas, inner, known, slots[static_cast<std::size_t>(*tag.open)], tag, wanted);
    else
        draw_slots(canvas, inner, known, slots, keys, tag, wanted);
}

bool handle_tag_keys(const view::Known& known, const KeyMap& keys, Tag& tag, view::Wanted& wanted) {
    if (!tag.thing)
        return false;
    if (key_pressed(Key::Escape)) {
        if (tag.open)
            tag.open.reset();
        else
            tag.close();
        return true;
    }
    if (key_pressed(Key::Enter) && !tag.chain.empty()) {
        take_chain(tag, wanted);
        return true;
    }
    const auto slots = offers_of(known, *tag.thing);
    if (tag.open) {
        const view::SlotFill& fill = slots[static_cast<std::size_t>(*tag.open)];
        for (std::size_t i = 0; i < std::min<std::size_t>(9, fill.choices.size()); ++i)
            if (key_pressed(static_cast<Key>(static_cast<int>(Key::Digit1) + static_cast<int>(i)))) {
                choose(known, fill.choices[i], tag, wanted);
                return true;
            }
    }
    for (std::size_t i = 0; i < view::kSlots; ++i)
        if (keys.pressed(command_of(slot_at(i)))) {
            press(known, slot_at(i), slots[i], tag, wanted);
            return true;
        }
    return false;
}

} // namespace lightoff::work
