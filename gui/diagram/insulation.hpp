// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/colour.hpp"

#include <string>
#include <string_view>

/// The colour of a wire's insulation, by its name in the netlist.
namespace lightoff::diagram {

/// The trade's letters for it: "BK", "W", "R"; the word itself where the trade has none, nothing for a screw.
std::string ferrule_letters(std::string_view name);
/// As material; grey where the name is not known.
canvas::Colour insulation_colour(std::string_view name);

} // namespace lightoff::diagram
