// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/work/key_map.hpp"

#include <optional>
#include <string>

namespace lightoff::desk {

/// What the page of keys keeps from frame to frame.
struct KeysView {
    std::optional<work::Command> waits; ///< the next key is to be this command's
    std::string refusal;                ///< why the last one asked for can't be
};

/// Whether a key that was pressed belongs to this page and to nothing else: it is to be a command's, or
/// breaks that off.
bool take_key(work::KeyMap& keys, KeysView& view);

/// Which key does what, each to be pressed and given another.
void draw_keys(const canvas::Canvas& canvas, canvas::Rect area, work::KeyMap& keys, KeysView& view);

} // namespace lightoff::desk
