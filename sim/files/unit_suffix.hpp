// SPDX-License-Identifier: MIT
#pragma once
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The units that a key of a data file may end in: `manifold_pressure_inwc` is 3.5 inches of water.
/// The only list of them; docs/data-formats.md prints it and a test holds the two together.
namespace lightoff::files {

struct Unit {
    std::string_view suffix;   ///< "inwc"; empty for a pure number
    std::string_view quantity; ///< "pressure": units of one quantity may stand for one another
    std::string_view name;     ///< "inch of water column"
    double scale;              ///< SI value = scale * written value + offset
    double offset;
};

constexpr double to_si(const Unit& unit, double written) {
    return unit.scale * written + unit.offset;
}
constexpr double from_si(const Unit& unit, double si) {
    return (si - unit.offset) / unit.scale;
}

std::span<const Unit> units_table();

/// The unit of that suffix; throws std::invalid_argument if there is none.
const Unit& unit_of(std::string_view suffix);

/// Units of the same quantity, in the table's order.
std::vector<Unit> units_like(const Unit& unit);

/// `name` with the suffix: "diameter" in inches is "diameter_in".
std::string key_in(std::string_view name, const Unit& unit);

} // namespace lightoff::files
