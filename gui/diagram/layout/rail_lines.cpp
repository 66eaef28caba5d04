// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/rail_lines.hpp"

#include <tuple>

namespace lightoff::diagram {
namespace {

RailLine line_rail(const Circuits& circuits, const Supply& supply, float top, float end,
                   const Positions& positions) {
    RailLine rail{"L", {}, {0, top}, circuits.rail_vertex(Rail::line)};
    if (!supply.empty()) {
        const ImVec2 from = last_before_rail(circuits.line, positions);
        rail.path = {from, {from.x, supply.bus()}, {0, supply.bus()}};
    }
    rail.path.push_back({0, end});
    return rail;
}

RailLine neutral_rail(const Circuits& circuits, float width, float top, float end,
                      const Positions& positions) {
    RailLine rail{"N", {}, {width, top}, circuits.rail_vertex(Rail::neutral)};
    if (!circuits.neutral.links.empty()) {
        const ImVec2 from = last_before_rail(circuits.neutral, positions);
        rail.path = {from, {width, from.y}};
    }
    rail.path.push_back({width, end});
    return rail;
}

RailLine upright(const char* name, float x, float top, float end, int vertex) {
    return {name, {{x, top}, {x, end}}, {x, top}, vertex};
}

} // namespace

std::vector<RailLine> rail_lines(const Circuits& circuits, const Supply& supply, const Stack& stack,
                                 const Positions& positions, float width) {
    std::vector<RailLine> rails;
    if (circuits.rail_vertex(Rail::line) >= 0) {
        const float top = supply.empty() ? kTop : supply.bus();
        rails.push_back(line_rail(circuits, supply, top, stack.high_end, positions));
        rails.push_back(neutral_rail(circuits, width, top, stack.high_end, positions));
    }
    if (stack.has_low)
        for (const auto& [name, rail, x] : {std::tuple{"R", Rail::feed, 0.0F}, {"C", Rail::common, width}})
            rails.push_back(upright(name, x, stack.low_start, lowest_on(circuits, stack, rail),
                                    circuits.rail_vertex(rail)));
    return rails;
}

ImVec2 last_before_rail(const Run& run, const Positions& positions) {
    return positions[run.vertices[run.vertices.size() - 2]].at;
}

} // namespace lightoff::diagram
