// SPDX-License-Identifier: MIT
#include "bench/difference.hpp"

#include "units/field_checks.hpp"

#include <string_view>

namespace lightoff::bench {
namespace {

/// Where a part's name ends: state, condition and inputs are cut behind their second name.
std::size_t end_of_part(std::string_view path) {
    const std::size_t first = path.find('.');
    if (first == std::string_view::npos)
        return path.size();
    const std::string_view top = path.substr(0, first);
    if (top != "state" && top != "condition")
        return first;
    const std::size_t second = path.find('.', first + 1);
    return second == std::string_view::npos ? first : second;
}

std::string with_unit(const std::string& value, const std::string& unit) {
    return unit.empty() ? value : value + " " + unit;
}

} // namespace

std::optional<WorldDifference> first_difference(const World& left, const World& right) {
    const auto found = units::diff_fields(left, right);
    if (!found)
        return std::nullopt;
    const std::size_t end = end_of_part(found->path);
    WorldDifference difference;
    difference.tick = left.tick;
    difference.part = found->path.substr(0, end);
    difference.field = end < found->path.size() ? found->path.substr(end + 1) : "";
    difference.unit = found->unit;
    difference.left = found->left;
    difference.right = found->right;
    return difference;
}

std::string describe(const WorldDifference& d) {
    const std::string what = d.field.empty() ? d.part : d.part + ": " + d.field;
    return "tick " + std::to_string(d.tick) + ", " + what + " is " + with_unit(d.left, d.unit) +
           " in one and " + with_unit(d.right, d.unit) + " in the other";
}

} // namespace lightoff::bench
