// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/model.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

/// The netlist taken apart for a ladder: which nodes are rails, which runs of parts lie between them, in the
/// order in which current meets them. No geometry yet.
namespace lightoff::diagram {

/// Something that gets one position: a node, or the pin of a terminal that shares its node with others (a
/// track of a board has many pins).
struct Vertex {
    int node = 0;
    int terminal = -1; ///< Wiring::terminals; -1: a splice, a track, bare metal
    bool lug = false;  ///< the wire's end, not the pin
    std::string owner; ///< part
};

enum class LinkKind : std::uint8_t { track, joint, wire, part };

struct Link {
    LinkKind kind = LinkKind::part;
    int element = -1; ///< of the netlist; a track has none
    int a = 0, b = 0; ///< vertices
    std::string owner;
};

/// L and N of the supply, R and C of the secondary, and the cabinet's metal.
enum class Rail : std::uint8_t { line, neutral, feed, common, ground, none };
inline constexpr std::size_t kRails = 5;

/// A chain from left to right: vertices.size() == links.size() + 1. Ends on a rail, on a vertex of an earlier
/// run of its circuit, or nowhere.
struct Run {
    std::vector<int> vertices;
    std::vector<int> links;
    Rail left = Rail::none;
    Rail right = Rail::none;
    bool stub = false; ///< one end leads nowhere
};

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
    std::vector<Vertex> vertices;
    std::vector<Link> links;
    std::vector<int> pin_vertex, lug_vertex;          ///< by terminal
    std::array<int, kRails> rail{-1, -1, -1, -1, -1}; ///< vertex
    Run line, neutral, ground;                        ///< from the supply to the rails of these names
    std::vector<Circuit> circuits;                    ///< supply voltage first, in the order to be drawn
    std::vector<int> earthed;                         ///< vertices tied to earth

    [[nodiscard]] int rail_vertex(Rail r) const {
        return r == Rail::none ? -1 : rail[static_cast<std::size_t>(r)];
    }
    [[nodiscard]] bool is_rail(int vertex) const;
    [[nodiscard]] const Vertex& vertex(int v) const { return vertices[static_cast<std::size_t>(v)]; }
    [[nodiscard]] const Link& link(int l) const { return links[static_cast<std::size_t>(l)]; }
    /// The control board: the part that the common rail is in. Empty if there is none.
    [[nodiscard]] std::string board() const;
};

Circuits read_circuits(const furnace::Model& model);

enum class Side : std::uint8_t { left, right };

/// The first or last vertices of a run that belong to the part that its rail is in (or, where a stub begins
/// at no rail, to the board), from outside in: the last is where the wiring leaves the part. Empty if the run
/// never leaves it.
std::vector<int> edge_of(const Circuits& circuits, const Run& run, Side side);

/// Whether a link is the board's own high resistance by which it reads a voltage.
bool is_sensing(const furnace::Model& model, const Link& link);

} // namespace lightoff::diagram
