// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <string_view>

/// Names of the wiring as they are lettered on a drawing.
namespace lightoff::diagram {

/// The part that a node, terminal or element belongs to: what stands before the first dot.
std::string_view owner_of(std::string_view name);
/// What stands behind it; all of it if there is no dot.
std::string_view rest_of(std::string_view name);
/// "line_in" as "line in".
std::string spaced(std::string_view name);

} // namespace lightoff::diagram
