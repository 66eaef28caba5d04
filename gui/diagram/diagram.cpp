// SPDX-License-Identifier: MIT
#include "gui/diagram/diagram.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/diagram/energy.hpp"
#include "gui/diagram/handiwork.hpp"
#include "gui/diagram/keyboard.hpp"
#include "gui/diagram/line_work.hpp"
#include "gui/diagram/pointer.hpp"
#include "gui/diagram/stamps.hpp"
#include "gui/diagram/tag.hpp"
#include "gui/diagram/words.hpp"
#include "gui/platform/input_queue.hpp"

#include <algorithm>
#include <string_view>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr std::string_view kHintForAll = "Drag or arrows move the sheet, the wheel zooms";
constexpr std::string_view kHint = "K walks the wire, Home fits the sheet";

float zoom_of_lines(const Canvas& canvas, const DiagramView& view) {
    return std::max(0.4F, view.place.zoom / canvas.scale);
}

Hit take_input(const Sheet& sheet, DiagramView& view, view::Wanted& wanted) {
    const Hit hover = take_pointer(sheet, view, wanted);
    // Escape makes the library leave a child window before we see the key.
    const bool escaped = view.has_keyboard && platform::key_pressed(platform::Key::Escape);
    if (escaped && view.cursor >= 0)
        view.take_keyboard = true;
    view.has_keyboard = ImGui::IsWindowFocused();
    if ((view.has_keyboard || escaped) && !ImGui::GetIO().WantTextInput)
        take_keys(sheet, view, wanted);
    return hover;
}

void draw_sheet(const Sheet& sheet, const DiagramView& view, Hit hover) {
    const Canvas& canvas = sheet.canvas;
    canvas.list->PushClipRect(sheet.area.min, sheet.area.max, true);
    draw_blocks(sheet);
    draw_lines(sheet);
    draw_energy(sheet, view.carried);
    draw_stamps(sheet);
    draw_spots(sheet, view.cursor);
    draw_leads(sheet);
    LabelPlacer placer(canvas, sheet.area);
    reserve_leads(sheet, placer);
    reserve_line_work(sheet, placer);
    letter_rails(sheet, placer);
    letter_stamps(sheet, placer);
    draw_handiwork(sheet, placer);
    letter_lifted(sheet, placer);
    letter_blocks(sheet, placer, true);
    letter_symbols(sheet, placer);
    letter_blocks(sheet, placer, false);
    letter_spots(sheet, placer, true);
    letter_wires(sheet, placer);
    letter_spots(sheet, placer, false);
    if (hover.kind != Hit::Kind::nothing)
        draw_tag(sheet, hover, ImGui::GetIO().MousePos);
    else if (view.cursor >= 0)
        draw_tag(sheet, {Hit::Kind::spot, view.cursor}, sheet.spot(view.cursor));
    canvas.list->PopClipRect();
}

void draw_strip(const Canvas& canvas, Rect strip, Rect sheet_area, const Ladder& ladder, DiagramView& view) {
    const float edge = line_width(canvas, Line::Outline); // or the pane's edge takes half of the frames
    strip.cut_right(edge);
    strip.cut_bottom(edge);
    const auto take = [&](std::string_view words, std::string_view key) {
        Rect box = strip.cut_right(button_width(canvas, words, key));
        strip.cut_right(canvas.px(6));
        return button(canvas, box, words, false, key);
    };
    if (take("Fit", ""))
        view.fit_to(sheet_area, ladder);
    if (take("+", ""))
        view.zoom_by(sheet_area, ladder, sheet_area.centre(), 1.25F);
    if (take("\u2212", ""))
        view.zoom_by(sheet_area, ladder, sheet_area.centre(), 0.8F);
    const std::string_view words = view.shows_all ? kHintForAll
                                   : view.walking
                                       ? "Walking the wire: arrows take the red lead along, Escape ends"
                                       : kHint;
    if (text_size(canvas, words, Type::Minimum).x < strip.width())
        text_in(canvas, strip, words, Type::Minimum, view.walking ? canvas.theme->ink : canvas.theme->pencil);
}

} // namespace

void draw_diagram(const canvas::Canvas& outer, canvas::Rect area, const Ladder& ladder,
                  const view::Known& known, DiagramView& view, view::Wanted& wanted) {
    ImGui::SetCursorScreenPos(area.min);
    if (view.take_keyboard) {
        ImGui::SetNextWindowFocus();
        view.take_keyboard = false;
    }
    ImGui::BeginChild("diagram", area.size(), false,
                      canvas::kPlainWindow | ImGuiWindowFlags_NoScrollbar |
                          ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoNavInputs |
                          ImGuiWindowFlags_NoBackground);
    canvas::Rect rest = area;
    const canvas::Rect strip = rest.cut_bottom(canvas::control_height(outer));
    rest.cut_bottom(outer.px(4));
    view.keep_fitted(rest, ladder);
    canvas::Canvas canvas = outer.here();
    canvas.zoom = zoom_of_lines(canvas, view);
    const Hit hover = take_input(Sheet(canvas, rest, ladder, known, view.place), view, wanted);
    canvas.zoom = zoom_of_lines(canvas, view);
    draw_sheet(Sheet(canvas, rest, ladder, known, view.place), view, hover);
    draw_strip(outer.here(), strip, rest, ladder, view);
    ImGui::EndChild();
}

} // namespace lightoff::diagram
