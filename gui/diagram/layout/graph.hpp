// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/model.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// The netlist as places and what joins them.
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

    [[nodiscard]] int other_end(int vertex) const { return a == vertex ? b : a; }
};

struct Graph {
    std::vector<Vertex> vertices;
    std::vector<Link> links;
    std::vector<std::vector<int>> links_at; ///< by vertex
    std::vector<int> earthed;               ///< vertices tied to earth

    [[nodiscard]] const Vertex& vertex(int v) const { return vertices[static_cast<std::size_t>(v)]; }
    [[nodiscard]] const Link& link(int l) const { return links[static_cast<std::size_t>(l)]; }
    [[nodiscard]] const std::vector<int>& at(int v) const { return links_at[static_cast<std::size_t>(v)]; }
};

Graph read_graph(const furnace::Model& model);

/// Whether a link is an element of that kind.
bool is_part(const furnace::Model& model, const Link& link, electrical::ElementKind kind);
/// Whether a link is the board's own high resistance by which it reads a voltage.
bool is_sensing(const furnace::Model& model, const Link& link);
bool is_transformer_winding(const furnace::Model& model, const Link& link);
bool is_start_winding(const furnace::Model& model, const Link& link);
/// Whether the supply comes through: wires, fuses and switches that no control works.
bool passes_supply(const furnace::Model& model, const Link& link);

} // namespace lightoff::diagram
