// SPDX-License-Identifier: MIT
#include "gui/work/strip.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/work/folding.hpp"
#include "units/convert.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace lightoff::work {
namespace {

using namespace canvas;
using bench::Verb;
using bench::Word;

constexpr std::array<std::string_view, 6> kParts{
    "thermostat", "thermostat_batteries", "anticipator", "service_drop", "breaker", "disconnect"};

constexpr std::size_t kGroups = 3;
constexpr float kMostColumn = 300; ///< design pixels

/// Draws cards from the top down.
class Strip {
public:
    Strip(const Canvas& canvas, Rect area, const view::Known& known, view::Wanted& wanted, Rect seen)
        : canvas_(canvas), probe_(canvas.probe), rest_(area), known_(known), wanted_(wanted), seen_(seen) {}

    void head(std::string_view words) {
        text_in(canvas_, take(line_height(canvas_, Type::Secondary)), words, Type::Secondary,
                canvas_.theme->pencil);
        gap(2);
    }

    /// A thing and its state; pressing it does `line`. Its name beside it takes the eye to its tag.
    void toggle(std::string_view name, std::string_view state, const std::string& line,
                const view::Thing& thing, bool as_usual) {
        Rect row = take(control_height(canvas_));
        const std::string words = std::string(state) + "##" + std::string(name);
        const float width = std::max(canvas_.px(58), button_width(canvas_, state));
        if (button(canvas_, row.cut_right(width), words, !as_usual))
            wanted_.lines.push_back(line);
        row.cut_right(canvas_.px(6));
        link(row, name, thing);
        gap(4);
    }

    void buttons(std::initializer_list<std::pair<std::string, std::string>> words_and_lines) {
        Rect row = take(control_height(canvas_));
        const float width = row.width() / static_cast<float>(words_and_lines.size());
        for (const auto& [words, line] : words_and_lines) {
            if (button(canvas_, row.cut_left(width + line_width(canvas_, Line::Rule)), words))
                wanted_.lines.push_back(line);
            row.min.x -= line_width(canvas_, Line::Rule);
        }
        gap(4);
    }

    /// Words that can be pressed: the thing's tag opens.
    void link(Rect box, std::string_view words, const view::Thing& thing) {
        const std::string id = std::string(words) + "##link";
        if (press_area(id.c_str(), box))
            wanted_.focus = thing;
        const bool hovered = ImGui::IsItemHovered();
        const bool keyboard = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
        const Type type =
            text_size(canvas_, words, Type::Body).x <= box.width() ? Type::Body : Type::Secondary;
        const Rect ink = text_in(canvas_, box, words, type, canvas_.theme->ink);
        if (hovered || keyboard)
            segment(canvas_, {ink.min.x, ink.max.y}, ink.max, keyboard ? Line::Outline : Line::Rule,
                    canvas_.theme->ink);
        if (canvas_.probe != nullptr)
            canvas_.probe->add_target(box, words);
    }

    void words(std::string_view words, Type type, Colour colour) {
        const float height = text_size(canvas_, words, type, rest_.width()).y;
        const Rect piece = take(height);
        paragraph(canvas_, piece.min, piece.width(), words, type, colour);
        gap(4);
    }

    void gap(float design_px) { rest_.cut_top(canvas_.px(design_px)); }
    [[nodiscard]] float top() const { return rest_.min.y; }
    [[nodiscard]] view::Thing part(std::string_view id) const {
        return {Word::part, known_.site->catalogue.find_part(id)};
    }

private:
    /// The next piece; what is not all in view is not told to the probe.
    Rect take(float height) {
        const Rect piece = rest_.cut_top(height);
        canvas_.probe = probe_;
        canvas_ = in_view(canvas_, piece, seen_);
        return piece;
    }

    Canvas canvas_;
    LayoutProbe* probe_;
    Rect rest_;
    const view::Known& known_;
    view::Wanted& wanted_;
    Rect seen_;
};

std::string degrees(double kelvin, view::Units units) {
    const double value = units == view::Units::trade ? units::k_to_fahrenheit(kelvin) : kelvin - 273.15;
    return figure(std::round(value * 2) / 2, units == view::Units::trade ? 0 : 1) +
           (units == view::Units::trade ? " °F" : " °C");
}

void thermostat(Strip& strip, const Canvas& canvas, const view::Known& known) {
    const bench::LeftAs& left = known.percept.left_as;
    const bool heat = left.thermostat_mode == control::ThermostatMode::heat;
    const bool fan = left.thermostat_fan == control::FanSwitch::on;
    strip.head("In the living room");
    strip.toggle("Thermostat", heat ? "Heat" : "Off", heat ? "thermostat-mode off" : "thermostat-mode heat",
                 strip.part("thermostat"), heat);
    const auto set = [&](int degrees_f) {
        const auto f = static_cast<int>(std::lround(units::k_to_fahrenheit(left.set_point_k))) + degrees_f;
        return "thermostat-set " + std::to_string(f) + "F";
    };
    strip.words("Set to " + degrees(left.set_point_k, known.units) + ", fan " + (fan ? "on" : "auto"),
                Type::Secondary, canvas.theme->ink);
    strip.buttons({{"−5", set(-5)}, {"−1", set(-1)}, {"+1", set(1)}, {"+5", set(5)}});
    strip.buttons({{fan ? "Fan to auto" : "Fan to on", fan ? "thermostat-fan auto" : "thermostat-fan on"}});
}

std::string to(const char* verb, bool on) {
    return std::string(verb) + (on ? " on" : " off");
}

void supply(Strip& strip, const Canvas& canvas, const view::Known& known) {
    const bench::LeftAs& left = known.percept.left_as;
    strip.head("Power and gas");
    strip.toggle("Breaker", left.breaker_on ? "On" : "Off", to("breaker", !left.breaker_on),
                 strip.part("breaker"), left.breaker_on);
    strip.toggle("Disconnect", left.disconnect_on ? "On" : "Off", to("disconnect", !left.disconnect_on),
                 strip.part("disconnect"), left.disconnect_on);
    if (known.proved_dead_tick) {
        const std::string when = visit::clock_text(*known.proved_dead_tick - known.arrived_tick);
        strip.words("Proved dead " + when, Type::Secondary, canvas.theme->ink);
    }
    strip.toggle("Gas cock", left.gas_cock_open ? "Open" : "Shut", to("gas-cock", !left.gas_cock_open),
                 strip.part("gas_cock"), left.gas_cock_open);
}

void doors(Strip& strip, const view::Known& known) {
    const bench::LeftAs& left = known.percept.left_as;
    const bool taped = known.percept.worked.door_switch_taped;
    strip.head("Doors");
    strip.toggle("Burner door", left.burner_door_on ? "On" : "Off", to("burner-door", !left.burner_door_on),
                 {Word::on_off, static_cast<std::int32_t>(Verb::burner_door)}, left.burner_door_on);
    strip.toggle("Blower door", left.blower_door_on ? "On" : "Off", to("blower-door", !left.blower_door_on),
                 {Word::on_off, static_cast<std::int32_t>(Verb::blower_door)}, left.blower_door_on);
    if (!left.blower_door_on || taped)
        strip.toggle("Door switch",
                     taped                   ? "Taped"
                     : left.door_switch_held ? "Held"
                                             : "Free",
                     taped ? "tape off" : to("door-switch", !left.door_switch_held),
                     strip.part("door_switch"), !taped && !left.door_switch_held);
    strip.toggle("Filter", left.filter_in ? "In" : "Out", to("filter", !left.filter_in), strip.part("filter"),
                 left.filter_in);
}

} // namespace

bool is_on_strip(std::string_view part) {
    return std::find(kParts.begin(), kParts.end(), part) != kParts.end();
}

void draw_strip(const Canvas& outer, Rect area, const view::Known& known, view::Wanted& wanted) {
    area = {{std::floor(area.min.x), std::floor(area.min.y)}, {std::ceil(area.max.x), std::ceil(area.max.y)}};
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("strip", area.size(), false, ImGuiWindowFlags_NoBackground);
    const ImVec2 from = ImGui::GetCursorScreenPos();
    const float bar = ImGui::GetScrollMaxY() > 0 ? ImGui::GetStyle().ScrollbarSize : 0;
    const Canvas canvas = outer.here();
    // One below the other; beside each other where it has a wide place.
    const float gap = canvas.px(kBetween * 2);
    const float least = canvas.px(kStripWide);
    const auto fitting = static_cast<std::size_t>((area.width() - bar + gap) / (least + gap));
    const std::size_t columns = std::clamp<std::size_t>(fitting, 1, kGroups);
    const float width = columns == 1
                            ? std::min(area.width() - bar, canvas.px(kMostColumn))
                            : std::floor((area.width() - bar + gap) / static_cast<float>(columns) - gap);
    float bottom = from.y;
    std::optional<Strip> strip;
    const auto begin_group = [&](std::size_t group) {
        const std::size_t column = columns == kGroups ? group : columns == 2 ? group / 2 : 0;
        const bool on_top = group == 0 || columns == kGroups || (columns == 2 && group == 2);
        if (!on_top)
            return strip->gap(6);
        bottom = strip ? std::max(bottom, strip->top()) : bottom;
        const float x = from.x + static_cast<float>(column) * (width + gap);
        strip.emplace(canvas, rect_at({x, from.y}, {width, 1e5F}), known, wanted, area);
    };
    begin_group(0);
    thermostat(*strip, canvas, known);
    begin_group(1);
    supply(*strip, canvas, known);
    begin_group(2);
    doors(*strip, known);
    const bool off = known.percept.worked.appliances_off;
    strip->toggle("Other gas", off ? "Off" : "On", to("appliances", off),
                  {Word::on_off, static_cast<std::int32_t>(Verb::appliances)}, !off);
    strip->buttons({{"Shut off and tag", "shut-off"}});
    ImGui::SetCursorScreenPos({from.x, std::max(bottom, strip->top())});
    ImGui::Dummy({1, 1});
    ImGui::EndChild();
}

} // namespace lightoff::work
