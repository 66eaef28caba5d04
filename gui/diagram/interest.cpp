// SPDX-License-Identifier: MIT
#include "gui/diagram/interest.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/picking.hpp"

namespace lightoff::diagram {
namespace {

using canvas::operator+;
using canvas::operator*;

std::optional<ImVec2> place_of_node(const Ladder& ladder, int node) {
    const int spot = ladder.spot_of_node(node);
    return spot >= 0 ? std::optional(ladder.spot(spot).at) : std::nullopt;
}

std::optional<ImVec2> place_of(const Sheet& sheet, const view::Thing& thing) {
    if (thing.kind == bench::Word::point)
        return place_of_node(sheet.ladder, thing.value);
    if (thing.kind == bench::Word::wire) {
        for (const Wire& wire : sheet.ladder.wires)
            if (wire.element == thing.value)
                return wire.ferrule;
    } else if (thing.kind == bench::Word::part) {
        for (const Symbol& symbol : sheet.ladder.symbols)
            if (part_of(sheet, symbol) == thing.value)
                return (symbol.from + symbol.to) * 0.5F;
    }
    return std::nullopt;
}

std::optional<ImVec2> place_of_leads(const Sheet& sheet) {
    const instruments::MultimeterSetting& meter = sheet.known.percept.instruments.multimeter;
    return meter.red != meter.black ? place_of_node(sheet.ladder, meter.red) : std::nullopt;
}

} // namespace

std::optional<ImVec2> place_of_interest(const Sheet& sheet, const DiagramView& view) {
    if (view.cursor >= 0)
        return sheet.ladder.spot(view.cursor).at;
    if (view.focus)
        if (const std::optional<ImVec2> at = place_of(sheet, *view.focus))
            return at;
    return place_of_leads(sheet);
}

float letters_of(const canvas::Canvas& canvas) {
    return canvas::line_height(canvas, canvas::Type::Minimum) * (1 - 2 * kEmptyOfLine);
}

} // namespace lightoff::diagram
