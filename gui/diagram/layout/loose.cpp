// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/loose.hpp"

#include "gui/diagram/layout/sizes.hpp"

namespace lightoff::diagram {

Depth draw_loose(const Circuits& circuits, float width, Depth depth, Positions& positions,
                 LadderBuilder& out) {
    float x = width; // full: the first one begins a row
    for (int v = 0; v < static_cast<int>(circuits.graph.vertices.size()); ++v) {
        if (!out.is_test_point(v) || out.spot_of(v) >= 0)
            continue;
        if (x > width - kToRail) {
            depth.y += kPitch;
            ++depth.row;
            x = kToRail;
        }
        positions[v] = {{x, depth.y}, depth.row, true};
        out.add_spot(v, positions[v]);
        x += circuits.vertex(v).lug ? 3 * kPitch : kPitch;
    }
    for (const Link& link : circuits.graph.links)
        if (link.kind == LinkKind::wire && !out.has_wire(link.element)) {
            const ImVec2 a = positions[link.a].at, b = positions[link.b].at;
            out.add_wire(link, link.a, {a, b}, {(a.x + b.x) / 2, (a.y + b.y) / 2});
        }
    return depth;
}

} // namespace lightoff::diagram
