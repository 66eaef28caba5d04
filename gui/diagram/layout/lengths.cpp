// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/lengths.hpp"

#include "gui/diagram/layout/sizes.hpp"
#include "gui/diagram/layout/symbol_names.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

using electrical::ElementKind;

constexpr float kNamedLength = 92; ///< of a relay's contact or a fuse on a rail, so that its name has room

float length_at_left_rail(const furnace::Model& model, const Link& link) {
    if (link.kind == LinkKind::part)
        if (const SymbolKind kind = kind_of(model, link);
            kind == SymbolKind::relay_contact || kind == SymbolKind::fuse)
            return kNamedLength;
    return std::max(least_length(model, link), kToRail);
}

} // namespace

float least_length(const furnace::Model& model, const Link& link) {
    switch (link.kind) {
    case LinkKind::track:
        return 13;
    case LinkKind::joint:
        return 9;
    case LinkKind::wire:
        return 36;
    case LinkKind::part:
        break;
    }
    switch (model.wiring.netlist.elements[static_cast<std::size_t>(link.element)].kind) {
    case ElementKind::capacitor:
        return 28;
    case ElementKind::winding:
    case ElementKind::igniter:
        return 38;
    default:
        return 34;
    }
}

Lengths::Lengths(const furnace::Model& model, const Circuits& circuits) : circuits_(circuits) {
    for (const Link& link : circuits.graph.links) {
        least_.push_back(least_length(model, link));
        at_left_rail_.push_back(length_at_left_rail(model, link));
    }
}

float Lengths::of(int link) const {
    return least_[static_cast<std::size_t>(link)];
}

float Lengths::in(const Run& run, std::size_t i) const {
    const int link = run.links[i];
    if (i == 0 && circuits_.is_rail(run.vertices.front()))
        return at_left_rail_[static_cast<std::size_t>(link)];
    const bool at_right_rail = i + 1 == run.links.size() && circuits_.is_rail(run.vertices.back());
    return at_right_rail ? std::max(of(link), kToRail) : of(link);
}

float Lengths::of(const Run& run) const {
    float sum = 0;
    for (const int link : run.links)
        sum += of(link);
    return sum;
}

} // namespace lightoff::diagram
