// SPDX-License-Identifier: MIT
#include "gui/diagram/keyboard.hpp"

#include "gui/diagram/interest.hpp"
#include "gui/platform/input_queue.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace lightoff::diagram {
namespace {

using namespace canvas;
using view::Wanted;

/// The spot that the keyboard begins on: where the red lead is, else the common, else the one in the middle.
int first_cursor(const Sheet& sheet) {
    const instruments::MultimeterSetting& meter = sheet.known.percept.instruments.multimeter;
    if (meter.red != meter.black)
        if (const int spot = sheet.ladder.spot_of_node(meter.red); spot >= 0)
            return spot;
    if (sheet.ladder.common_spot >= 0)
        return sheet.ladder.common_spot;
    return nearest_spot(sheet.spots, sheet.area.centre(), 1e9F).value_or(-1);
}

std::optional<Direction> arrow_pressed() {
    using platform::Key;
    constexpr std::array<std::pair<Key, Direction>, 4> kArrows{{{Key::Left, Direction::left},
                                                                {Key::Right, Direction::right},
                                                                {Key::Up, Direction::up},
                                                                {Key::Down, Direction::down}}};
    for (const auto& [key, direction] : kArrows)
        if (platform::key_pressed(key, true))
            return direction;
    return std::nullopt;
}

ImVec2 along(Direction direction) {
    switch (direction) {
    case Direction::left:
        return {1, 0};
    case Direction::right:
        return {-1, 0};
    case Direction::up:
        return {0, 1};
    case Direction::down:
        break;
    }
    return {0, -1};
}

void step(const Sheet& sheet, Direction direction, DiagramView& view, Wanted& wanted) {
    const Stride stride = ImGui::GetIO().KeyShift ? Stride::ends : Stride::terminals;
    const std::optional<int> next = next_spot_along(sheet.ladder, view.cursor, direction, stride);
    if (!next)
        return;
    view.cursor = *next; // the sheet follows it
    wanted.hover = thing_of(sheet, {Hit::Kind::spot, *next});
    if (view.walking) {
        wanted.lead = Wanted::Lead::red;
        wanted.lead_point = sheet.ladder.spot(*next).node;
    }
}

/// Begins at a point, or ends.
void toggle_walk(const Sheet& sheet, DiagramView& view) {
    view.walking = !view.walking;
    view.cursor = view.walking ? first_cursor(sheet) : -1;
}

} // namespace

void take_keys(const Sheet& sheet, DiagramView& view, view::Wanted& wanted) {
    using platform::Key;
    using platform::key_pressed;
    if (const std::optional<Direction> arrow = arrow_pressed()) {
        if (view.cursor >= 0)
            return step(sheet, *arrow, view, wanted);
        view.pan(along(*arrow) * sheet.canvas.px(60));
    }
    for (const ImWchar c : ImGui::GetIO().InputQueueCharacters)
        if (c == '+' || c == '=' || c == '-')
            view.zoom_by(sheet.area, sheet.ladder, sheet.area.centre(), c == '-' ? 0.8F : 1.25F);
    if (key_pressed(Key::Home))
        view.toggle_whole(sheet.area, sheet.ladder, letters_of(sheet.canvas), place_of_interest(sheet, view));
    if (key_pressed(Key::Escape)) {
        view.cursor = -1;
        view.walking = false;
    }
    if (key_pressed(Key::K) && !view.shows_all)
        toggle_walk(sheet, view);
    if (key_pressed(Key::Enter) || key_pressed(Key::KeypadEnter)) {
        if (view.cursor >= 0)
            return pick(sheet, {Hit::Kind::spot, view.cursor}, view, wanted);
        view.cursor = first_cursor(sheet);
    }
}

} // namespace lightoff::diagram
