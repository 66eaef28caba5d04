// SPDX-License-Identifier: MIT
#include "gui/diagram/picking.hpp"

#include "gui/diagram/names.hpp"
#include "gui/diagram/symbols.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr float kWireReach = 8; // design pixels

float distance(ImVec2 a, ImVec2 b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

float distance_to(const std::vector<ImVec2>& path, ImVec2 p) {
    float least = 1e9F;
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
        const ImVec2 a = path[i], d = path[i + 1] - a;
        const float square = d.x * d.x + d.y * d.y;
        const float t =
            square > 0 ? std::clamp(((p.x - a.x) * d.x + (p.y - a.y) * d.y) / square, 0.0F, 1.0F) : 0.0F;
        least = std::min(least, distance(p, a + d * t));
    }
    return least;
}

Hit symbol_at(const Sheet& sheet, ImVec2 pointer) {
    for (std::size_t i = 0; i < sheet.ladder.symbols.size(); ++i)
        if (body_of(sheet.place, sheet.ladder.symbols[i]).holds(pointer))
            return {Hit::Kind::symbol, static_cast<int>(i)};
    return {};
}

/// The nearest wire within reach.
Hit wire_at(const Sheet& sheet, ImVec2 pointer) {
    Hit best;
    float least = std::max(8.0F, sheet.canvas.px(kWireReach));
    for (std::size_t i = 0; i < sheet.ladder.wires.size(); ++i) {
        const float far = distance_to(sheet.path_of(sheet.ladder.wires[i]), pointer);
        if (far < least) {
            least = far;
            best = {Hit::Kind::wire, static_cast<int>(i)};
        }
    }
    return best;
}

} // namespace

Hit hit_at(const Sheet& sheet, ImVec2 pointer, bool points_only) {
    const canvas::Canvas& canvas = sheet.canvas;
    const std::optional<int> spot = nearest_spot(sheet.spots, pointer, canvas.px(kReach_px));
    const Hit point = spot ? Hit{Hit::Kind::spot, *spot} : Hit{};
    const float zone = std::max(12.0F, canvas.px(kCatchZone_px / 2));
    if (points_only || (spot && distance(sheet.spot(*spot), pointer) <= zone))
        return point;
    if (const Hit symbol = symbol_at(sheet, pointer); symbol.kind != Hit::Kind::nothing)
        return symbol;
    const Hit wire = wire_at(sheet, pointer);
    return wire.kind != Hit::Kind::nothing ? wire : point;
}

std::optional<int> nearest_spot(std::span<const ImVec2> places, ImVec2 pointer, float reach_px) {
    std::optional<int> best;
    float least = reach_px;
    for (std::size_t i = 0; i < places.size(); ++i)
        if (const float far = distance(places[i], pointer); far <= least) {
            least = far;
            best = static_cast<int>(i);
        }
    return best;
}

int part_of(const Sheet& sheet, const Symbol& symbol) {
    const std::string& element =
        sheet.known.site->model.wiring.netlist.element_names[static_cast<std::size_t>(symbol.element)];
    const auto& parts = sheet.known.site->catalogue.parts;
    for (const std::string_view name : {std::string_view(element), owner_of(element)})
        for (std::size_t i = 0; i < parts.size(); ++i)
            if (parts[i].id == name ||
                std::find(parts[i].has.begin(), parts[i].has.end(), name) != parts[i].has.end())
                return static_cast<int>(i);
    return -1;
}

std::optional<view::Thing> thing_of(const Sheet& sheet, Hit hit) {
    switch (hit.kind) {
    case Hit::Kind::spot:
        return view::Thing{bench::Word::point, sheet.ladder.spot(hit.index).node};
    case Hit::Kind::wire:
        return view::Thing{bench::Word::wire, sheet.ladder.wire(hit.index).element};
    case Hit::Kind::symbol:
        if (const int part = part_of(sheet, sheet.ladder.symbol(hit.index)); part >= 0)
            return view::Thing{bench::Word::part, part};
        break;
    case Hit::Kind::nothing:
        break;
    }
    return std::nullopt;
}

void pick(const Sheet& sheet, Hit hit, DiagramView& view, view::Wanted& wanted) {
    if (hit.kind == Hit::Kind::spot && view.lead_in_hand != view::Wanted::Lead::none) {
        wanted.lead = view.lead_in_hand;
        wanted.lead_point = sheet.ladder.spot(hit.index).node;
        return;
    }
    wanted.focus = thing_of(sheet, hit);
    view.cursor = hit.kind == Hit::Kind::spot ? hit.index : -1;
}

} // namespace lightoff::diagram
