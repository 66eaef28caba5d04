// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/graph.hpp"

#include <array>

namespace lightoff::diagram {

/// L and N of the supply, R and C of the secondary, and the cabinet's metal.
enum class Rail : std::uint8_t { line, neutral, feed, common, ground, none };
inline constexpr std::size_t kRails = 5;

/// Which vertices are rails.
struct Rails {
    std::array<int, kRails> vertices{-1, -1, -1, -1, -1};

    int& operator[](Rail rail) { return vertices[static_cast<std::size_t>(rail)]; }
    /// -1: there is none.
    [[nodiscard]] int vertex(Rail rail) const;
    [[nodiscard]] bool has(int vertex) const;
    /// Rail::none: the vertex is no rail.
    [[nodiscard]] Rail of(int vertex) const;
};

Rails find_rails(const furnace::Model& model, const Graph& graph);

/// The source of the supply; null if there is none.
const Link* find_source(const furnace::Model& model, const Graph& graph);

} // namespace lightoff::diagram
