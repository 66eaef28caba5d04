// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/ladder_builder.hpp"
#include "gui/diagram/layout/lengths.hpp"
#include "gui/diagram/layout/sizes.hpp"

#include <array>
#include <string>
#include <vector>

/// The parts that the supply passes on its way to the rails: in columns from left to right, with ground,
/// neutral and line as rows.
namespace lightoff::diagram {

struct Supply {
    enum Row : std::size_t { ground, neutral, line };
    static constexpr std::size_t kRows = 3;

    std::array<Run, kRows> runs;      ///< ground without its bond to neutral
    std::array<float, kRows> y{};     ///< of the rows
    std::vector<std::string> columns; ///< parts

    [[nodiscard]] bool empty() const { return runs[line].links.empty(); }
    /// The row below them, from which the line's rail goes down.
    [[nodiscard]] float bus() const { return y[line] + kBusPitch; }
    [[nodiscard]] Depth depth() const { return empty() ? Depth{kTop, 0} : Depth{bus(), kRows + 1}; }
};

Supply place_supply(const Circuits& circuits, const Lengths& lengths, float width, Positions& positions);

void draw_supply(const furnace::Model& model, const Circuits& circuits, const Supply& supply,
                 const Positions& positions, LadderBuilder& out);

} // namespace lightoff::diagram
