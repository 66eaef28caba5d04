// SPDX-License-Identifier: MIT
#include "gui/desk/keys_page.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/sheet/column.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::desk {
namespace {

using namespace canvas;
using platform::Key;
using platform::key_pressed;
using work::Command;

constexpr float kColumn = 430;              ///< design pixels that a command, its key and the gap behind take
constexpr float kBefore = 10, kBehind = 24; ///< design pixels before and behind a key
constexpr std::string_view kWaits = "press a key";

bool shifts_others(Key key) {
    return key >= Key::ControlLeft;
}

/// Widest of all that a key's button may show.
float key_column(const Canvas& canvas) {
    return button_width(canvas, kWaits);
}

/// Of the longest command and its key.
float least_column(const Canvas& canvas) {
    float title = 0;
    for (std::size_t i = 0; i < work::kCommands; ++i)
        title = std::max(title, text_size(canvas, work::title_of(static_cast<Command>(i)), Type::Body).x);
    return std::ceil(title) + canvas.px(kBefore) + key_column(canvas) + canvas.px(kBehind);
}

void draw_row(const Canvas& canvas, Rect row, Command command, work::KeyMap& keys, KeysView& view) {
    const bool waits = view.waits == command;
    const Rect box = row.cut_right(key_column(canvas));
    row.cut_right(canvas.px(kBefore));
    text_in(canvas, row, work::title_of(command), Type::Body, canvas.theme->ink);
    const std::string words =
        (waits ? std::string(kWaits) : keys.name(command)) + "##" + std::to_string(static_cast<int>(command));
    if (button(canvas, box, words, waits)) {
        view.waits = waits ? std::optional<Command>() : command;
        view.refusal.clear();
    }
}

} // namespace

bool take_key(work::KeyMap& keys, KeysView& view) {
    if (!view.waits)
        return false;
    if (key_pressed(Key::Escape)) {
        view.waits.reset();
        return true;
    }
    for (std::size_t i = 0; i < platform::kKeyCount; ++i) {
        const auto key = static_cast<Key>(i);
        if (shifts_others(key) || !key_pressed(key))
            continue;
        view.refusal = keys.set(*view.waits, key);
        view.waits.reset();
        return true;
    }
    return false;
}

void draw_keys(const Canvas& canvas, Rect area, work::KeyMap& keys, KeysView& view) {
    sheet::Column column(canvas, area, "keys");
    const auto fitting = static_cast<std::size_t>(std::max(1.0F, column.width() / canvas.px(kColumn)));
    const bool two = 2 * least_column(canvas) <= column.width();
    const std::size_t columns = std::clamp<std::size_t>(fitting, two ? 2 : 1, 3);
    const std::size_t rows = (work::kCommands + columns - 1) / columns;
    const float height = control_height(canvas);
    const float gap = canvas.px(6);
    const float width = std::min(column.width() / static_cast<float>(columns), canvas.px(kColumn));
    const Rect table = column.take(static_cast<float>(rows) * (height + gap));
    for (std::size_t i = 0; i < work::kCommands; ++i) {
        const ImVec2 at{table.min.x + static_cast<float>(i / rows) * width,
                        table.min.y + static_cast<float>(i % rows) * (height + gap)};
        const Rect row = rect_at(at, {width - canvas.px(kBehind), height});
        draw_row(column.canvas_for(row), row, static_cast<Command>(i), keys, view);
    }
    column.gap(6);
    const Rect all = column.take(height);
    if (button(column.canvas_for(all), rect_at(all.min, {button_width(canvas, "All as usual"), height}),
               "All as usual")) {
        keys = work::KeyMap();
        view = {};
    }
    column.gap(8);
    if (!view.refusal.empty())
        column.alarm(view.refusal);
    else
        column.note(view.waits ? "The next key is taken; Esc leaves it as it is."
                               : "Esc, Enter, Tab, arrows and digits stay as they are.");
}

} // namespace lightoff::desk
