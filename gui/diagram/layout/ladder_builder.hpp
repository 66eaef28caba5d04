// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/ladder.hpp"
#include "gui/diagram/layout/circuits.hpp"
#include "gui/diagram/layout/positions.hpp"

#include <utility>

namespace lightoff::diagram {

/// Puts spots, wires, symbols and lines into a Ladder, each with what the model says of it. Knows no layout.
class LadderBuilder {
public:
    LadderBuilder(const furnace::Model& model, const Circuits& circuits);

    /// Whether a vertex is a test point: a pin, a lug, bare metal; not a splice, not the track of terminals.
    [[nodiscard]] bool is_test_point(int vertex) const;
    /// The spot of a vertex; does nothing if it is no test point or has one.
    void add_spot(int vertex, const Position& position);
    /// -1: it has none.
    [[nodiscard]] int spot_of(int vertex) const;

    /// From the vertex at which the path begins to the other end of the link.
    void add_wire(const Link& link, int start, std::vector<ImVec2> path, ImVec2 ferrule);
    [[nodiscard]] bool has_wire(int element) const;
    void add_symbol(const Link& link, ImVec2 from, ImVec2 to, bool low_voltage);
    /// A track or a joint.
    void add_track(const Link& link, std::vector<ImVec2> path);
    /// A plain line of a vertex.
    void add_line(int vertex, ImVec2 from, ImVec2 to);
    /// It is fed by the transformer's secondary.
    void note_low_voltage(int vertex);
    void add_mark(Mark::Kind kind, ImVec2 at);
    /// Spots in the order in which they are walked.
    void add_walk(std::vector<int> spots);

    /// The ladder, once every terminal has its spots.
    [[nodiscard]] Ladder finish();

private:
    [[nodiscard]] bool is_track(int node) const;
    void tie_wires_to_spots();
    void note_wired(int spot);
    void point_outward();

    const furnace::Model& model_;
    const Circuits& circuits_;
    Ladder out_;
    std::vector<int> spot_of_;                   ///< by vertex
    std::vector<std::pair<int, int>> wire_ends_; ///< vertices, by Ladder::wires
};

} // namespace lightoff::diagram
