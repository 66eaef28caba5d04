// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/view/things.hpp"
#include "gui/work/key_map.hpp"

#include <optional>
#include <string>

namespace lightoff::work {

/// The paper tag of the thing in focus: eight slots, the same keys everywhere.
struct Tag {
    std::optional<view::Thing> thing;
    std::optional<view::Slot> open; ///< the slot whose choices are spread out
    std::string refusal;            ///< why the last thing asked of it can't be done
    std::string chain;              ///< a line that would take that reason away: "burner-door off"

    void focus(const view::Thing& new_thing) { *this = {new_thing, std::nullopt, {}, {}}; }
    void close() { *this = {}; }
};

/// Height that it wants at a width, in pixels.
float tag_height(const canvas::Canvas& canvas, float width, const view::Known& known, const Tag& tag);

void draw_tag(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known, const KeyMap& keys,
              Tag& tag, view::Wanted& wanted);

/// Its keys: one for each slot, digits for what is spread out, Escape. True if one of them was pressed.
bool handle_tag_keys(const view::Known& known, const KeyMap& keys, Tag& tag, view::Wanted& wanted);

} // namespace lightoff::work
