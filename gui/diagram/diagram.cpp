// SPDX-License-Identifier: MIT
#include "gui/diagram/diagram.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/diagram/energy.hpp"
#include "gui/diagram/handiwork.hpp"
#include "gui/diagram/interest.hpp"
#include "gui/diagram/keyboard.hpp"
#include "gui/diagram/line_work.hpp"
#include "gui/diagram/pointer.hpp"
#include "gui/diagram/stamps.hpp"
#include "gui/diagram/tag.hpp"
#include "gui/diagram/words.hpp"
#include "gui/platform/input_queue.hpp"

#include <algorithm>
#include <initializer_list>
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
    if (!bears_letters(sheet.place, letters_of(canvas)))
        placer.keep_off_lines();
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
    placer.draw_halos();
    mend_beside_halos(sheet, placer);
    placer.draw_letters();
    if (hover.kind != Hit::Kind::nothing)
        draw_tag(sheet, hover, ImGui::GetIO().MousePos);
    else if (view.cursor >= 0)
        draw_tag(sheet, {Hit::Kind::spot, view.cursor}, sheet.spot(view.cursor));
    canvas.list->PopClipRect();
}

void draw_hint(const Canvas& canvas, Rect box, const Sheet& sheet, const DiagramView& view) {
    const auto put = [&](std::initializer_list<std::string_view> words, Colour colour) {
        const std::string_view fitting = longest_that_fits(canvas, words, Type::Minimum, box.width());
        if (text_size(canvas, fitting, Type::Minimum).x < box.width())
            text_in(canvas, box, fitting, Type::Minimum, colour);
    };
    const Theme& theme = *canvas.theme;
    if (view.walking)
        return put({"Walking the wire: arrows take the red lead along, Escape ends",
                    "Walking: arrows take red along, Escape ends", "Walking"},
                   theme.ink);
    if (!view.shows_whole(sheet.area, sheet.ladder))
        return put({"Part of the sheet: drag or arrows move it, the wheel zooms, Fit shows all",
                    "Part of the sheet: drag or arrows move it, Fit shows all",
                    "Part of the sheet: drag it, or Fit", "Part of the sheet", "Part"},
                   theme.pencil);
    if (!bears_letters(view.place, letters_of(canvas)))
        return put({"Too small for all of its names: Fit again shows a part of it that can be read",
                    "Too small for all names: Fit again shows a part", "Fit again: larger"},
                   theme.pencil);
    put({view.shows_all ? kHintForAll : kHint}, theme.pencil);
}

void draw_strip(const Canvas& canvas, Rect strip, const Sheet& sheet, DiagramView& view) {
    const float edge = line_width(canvas, Line::Outline); // or the pane's edge takes half of the frames
    strip.cut_right(edge);
    strip.cut_bottom(edge);
    const auto take = [&](std::string_view words) {
        const Rect box = strip.cut_right(button_width(canvas, words));
        strip.cut_right(canvas.px(6));
        return button(canvas, box, words);
    };
    if (take("Fit"))
        view.toggle_whole(sheet.area, sheet.ladder, letters_of(canvas), place_of_interest(sheet, view));
    if (take("+"))
        view.zoom_by(sheet.area, sheet.ladder, sheet.area.centre(), 1.25F);
    if (take("\u2212"))
        view.zoom_by(sheet.area, sheet.ladder, sheet.area.centre(), 0.8F);
    draw_hint(canvas, strip, sheet, view);
}

/// Lays it into the area, and brings into sight where hands or eyes have gone.
void lead_sheet(const Canvas& canvas, Rect area, const Ladder& ladder, const view::Known& known,
                DiagramView& view) {
    const Sheet sheet(canvas, area, ladder, known, view.place);
    const std::optional<ImVec2> at = place_of_interest(sheet, view);
    view.keep_fitted(area, ladder, letters_of(canvas), at);
    const bool is_new = at && (!view.followed || at->x != view.followed->x || at->y != view.followed->y);
    view.followed = at;
    if (is_new)
        view.show(area, ladder, *at, canvas.px(30));
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
    canvas::Canvas canvas = outer.here();
    lead_sheet(canvas, rest, ladder, known, view);
    canvas.zoom = zoom_of_lines(canvas, view);
    const Hit hover = take_input(Sheet(canvas, rest, ladder, known, view.place), view, wanted);
    lead_sheet(canvas, rest, ladder, known, view);
    canvas.zoom = zoom_of_lines(canvas, view);
    const Sheet sheet(canvas, rest, ladder, known, view.place);
    draw_sheet(sheet, view, hover);
    draw_strip(outer.here(), strip, sheet, view);
    ImGui::EndChild();
}

} // namespace lightoff::diagram
