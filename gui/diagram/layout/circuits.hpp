// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/untaken.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// The netlist taken apart for a ladder: which nodes are rails, which runs of parts lie between them, in the
/// order in which current meets them. No geometry yet.
namespace lightoff::diagram {

/// Everything that hangs together between two rails: the main run, then branches in parallel to pieces of it.
struct Circuit {
    bool low_voltage = false;
    Rail left = Rail::none;
    Rail right = Rail::none;
    std::vector<Run> runs;
    std::vector<int> taps; ///< vertices at which the board reads a voltage, drawn as a mark only
    int winding = -1;      ///< link that is a winding of a transformer
    int first_wire = -1;   ///< lowest of its elements that are wires, which are written down in an order that
                           ///< reads well; -1: none
    bool is_secondary = false;
};

struct Circuits {
    Graph graph;
    Rails rails;
    Run line, neutral, ground;     ///< from the supply to the rails of these names
    std::vector<Circuit> circuits; ///< supply voltage first, in the order to be drawn

    [[nodiscard]] const Vertex& vertex(int v) const { return graph.vertex(v); }
    [[nodiscard]] const Link& link(int l) const { return graph.link(l); }
    [[nodiscard]] int rail_vertex(Rail rail) const { return rails.vertex(rail); }
    [[nodiscard]] bool is_rail(int vertex) const { return rails.has(vertex); }
    /// The control board: the part that the common rail is in. Empty if there is none.
    [[nodiscard]] std::string board() const;
};

Circuits read_circuits(const furnace::Model& model);

enum class Side : std::uint8_t { left, right };

/// The first or last vertices of a run that belong to the part that its rail is in (or, where a stub begins
/// at no rail, to the board), from outside in: the last is where the wiring leaves the part. Empty if the run
/// never leaves it.
std::vector<int> edge_of(const Circuits& circuits, const Run& run, Side side);

} // namespace lightoff::diagram
