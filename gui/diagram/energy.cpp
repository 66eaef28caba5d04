// SPDX-License-Identifier: MIT
#include "gui/diagram/energy.hpp"

#include "gui/canvas/strokes.hpp"

namespace lightoff::diagram {
namespace {

using namespace canvas;

Carried at(const std::vector<Carried>& carried, int node) {
    const auto i = static_cast<std::size_t>(node);
    return node >= 0 && i < carried.size() ? carried[i] : Carried::nothing;
}

void draw_path(const Sheet& sheet, const std::vector<ImVec2>& path, Carried from, Carried to) {
    if (from == Carried::nothing || from != to)
        return;
    const Energy energy = from == Carried::volts_120 ? Energy::Volts120 : Energy::Volts24;
    energy_path(sheet.canvas, path, energy, sheet.canvas.theme->ground);
}

} // namespace

void draw_energy(const Sheet& sheet, const std::vector<Carried>& carried) {
    for (const Track& track : sheet.ladder.tracks)
        if (track.joint < 0 || !sheet.is_parted(track.joint))
            draw_path(sheet, sheet.pixels(track.path), at(carried, track.from_node),
                      at(carried, track.to_node));
    for (const Wire& wire : sheet.ladder.wires)
        draw_path(sheet, sheet.path_of(wire), at(carried, wire.from_node), at(carried, wire.to_node));
    for (const RailLine& rail : sheet.ladder.rails)
        draw_path(sheet, sheet.pixels(rail.path), at(carried, rail.node), at(carried, rail.node));
}

} // namespace lightoff::diagram
