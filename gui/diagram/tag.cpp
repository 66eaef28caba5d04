// SPDX-License-Identifier: MIT
#include "gui/diagram/tag.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/diagram/line_work.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr float kLoupeGap = 14; // design pixels: points closer than this open the loupe
constexpr float kLoupeZoom = 2.6F;

std::string where_in_words(furnace::Place::Where where) {
    switch (where) {
    case furnace::Place::Where::burner_compartment:
        return "burner compartment";
    case furnace::Place::Where::blower_compartment:
        return "blower compartment";
    case furnace::Place::Where::living_room:
        return "living room";
    case furnace::Place::Where::outside:
        break;
    }
    return "outside the furnace";
}

std::vector<std::string> words_for(const Sheet& sheet, Hit hit) {
    switch (hit.kind) {
    case Hit::Kind::spot: {
        const Spot& spot = sheet.ladder.spot(hit.index);
        const std::string which = spot.terminal < 0    ? "bare metal"
                                  : !spot.lug          ? "terminal"
                                  : sheet.is_off(spot) ? "end of its wire, off the terminal"
                                                       : "end of its wire";
        return {spot.full_name, which + ", " + where_in_words(spot.where)};
    }
    case Hit::Kind::wire: {
        const Wire& wire = sheet.ladder.wire(hit.index);
        return {"wire " + wire.name, wire.letters.empty() ? std::string("through its screw") : wire.colour};
    }
    case Hit::Kind::symbol: {
        const Symbol& symbol = sheet.ladder.symbol(hit.index);
        const int part = part_of(sheet, symbol);
        const std::string name = symbol.name.empty() ? std::string("switch of the control") : symbol.name;
        if (part < 0)
            return {name};
        return {sheet.known.site->catalogue.parts[static_cast<std::size_t>(part)].title, name};
    }
    case Hit::Kind::nothing:
        break;
    }
    return {};
}

/// Whether another spot is so close that the pointer could mean either.
bool is_crowded(const Sheet& sheet, int spot) {
    for (std::size_t i = 0; i < sheet.spots.size(); ++i) {
        const ImVec2 d = sheet.spots[i] - sheet.spot(spot);
        if (static_cast<int>(i) != spot && std::hypot(d.x, d.y) < sheet.canvas.px(kLoupeGap))
            return true;
    }
    return false;
}

Type type_of_line(std::size_t i) {
    return i == 0 ? Type::Body : Type::Secondary;
}

ImVec2 size_of(const Canvas& canvas, const std::vector<std::string>& words) {
    ImVec2 size{0, 0};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const ImVec2 line = text_size(canvas, words[i], type_of_line(i));
        size = {std::max(size.x, line.x), size.y + line.y};
    }
    return size;
}

/// Below and right of the pointer, or on its other side where the sheet ends.
ImVec2 corner_beside(const Sheet& sheet, ImVec2 pointer, ImVec2 size) {
    const float gap = sheet.canvas.px(18);
    ImVec2 corner = pointer + ImVec2{gap, gap};
    if (corner.x + size.x > sheet.area.max.x)
        corner.x = pointer.x - gap - size.x;
    if (corner.y + size.y > sheet.area.max.y)
        corner.y = pointer.y - gap - size.y;
    return {std::max(corner.x, sheet.area.min.x), std::max(corner.y, sheet.area.min.y)};
}

/// A piece of the sheet round a spot, enlarged, the spot ringed.
void draw_loupe(const Sheet& sheet, Rect box, int spot) {
    const Canvas& canvas = sheet.canvas;
    canvas.list->PushClipRect(box.min, box.max, true);
    const float wanted = kLoupeZoom * canvas.scale;
    Transform place;
    place.zoom = std::max(wanted, sheet.place.zoom * 1.6F);
    place.offset = box.centre() - sheet.ladder.spot(spot).at * place.zoom;
    Canvas close = canvas;
    close.zoom = std::max(1.0F, place.zoom / canvas.scale);
    close.probe = nullptr;
    const Sheet loupe(close, box, sheet.ladder, sheet.known, place);
    draw_lines(loupe);
    draw_spots(loupe, -1);
    canvas.list->AddCircle(loupe.spot(spot), canvas.px(15), packed(canvas.theme->ink), 0, canvas.px(2));
    canvas.list->PopClipRect();
}

} // namespace

void draw_tag(const Sheet& sheet, Hit hit, ImVec2 pointer) {
    const std::vector<std::string> words = words_for(sheet, hit);
    if (words.empty())
        return;
    const Canvas& canvas = sheet.canvas;
    const float pad = canvas.px(8);
    const bool loupe = hit.kind == Hit::Kind::spot && is_crowded(sheet, hit.index);
    const float glass = loupe ? canvas.px(76) : 0;
    const ImVec2 words_size = size_of(canvas, words);
    const ImVec2 size{std::max(loupe ? canvas.px(150) : 0, words_size.x + 2 * pad),
                      glass + 2 * pad + words_size.y};
    const ImVec2 corner = corner_beside(sheet, pointer, size);
    if (canvas.probe != nullptr)
        canvas.probe->set_layer(1);
    const Rect box = rect_at(corner, size);
    fill(canvas, box, canvas.theme->panel);
    outline(canvas, box, Line::Detail, canvas.theme->ink);
    ImVec2 pen = corner + ImVec2{pad, pad};
    for (std::size_t i = 0; i < words.size(); ++i)
        pen.y =
            text(canvas, pen, words[i], type_of_line(i), i == 0 ? canvas.theme->ink : canvas.theme->pencil)
                .max.y;
    if (loupe) {
        const Rect glass_box{{box.min.x + 2, pen.y}, {box.max.x - 2, box.max.y - 2}};
        draw_loupe(sheet, glass_box, hit.index);
        if (canvas.probe != nullptr)
            canvas.probe->add_box(glass_box, "the loupe");
    }
    if (canvas.probe != nullptr)
        canvas.probe->set_layer(0);
}

} // namespace lightoff::diagram
