// SPDX-License-Identifier: MIT
#pragma once
#include "units/fields.hpp"

#include <charconv>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What can be asked of any struct that has a field list. For tests, replay and error messages: these
/// build strings and allocate, so stepping code does not call them.
namespace lightoff::units {

/// A scalar as text: the shortest that reads back to the same bits ("0.1", "-0", "inf", "nan"); bool and
/// enumerations as whole numbers.
template <class T>
std::string text_of(T value) {
    if constexpr (std::is_same_v<T, bool> || (std::is_integral_v<T> && sizeof(T) == 1))
        return text_of(static_cast<int>(value));
    else if constexpr (std::is_enum_v<T>)
        return text_of(static_cast<std::underlying_type_t<T>>(value));
    else {
        std::array<char, 64> buffer{};
        const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
        return {buffer.data(), end.ptr};
    }
}

/// One field that is not the same on both sides, by its bits (so -0 differs from 0, and a NaN equals itself).
struct FieldDifference {
    std::string path;
    std::string unit;
    std::string left;
    std::string right;
};

namespace detail {

/// Path, unit and text of the scalar number `index` below `root`.
template <class Root>
FieldDifference describe_field(const Root& root, std::size_t index) {
    FieldDifference found;
    std::size_t at = 0;
    for_each_field(root, [&](const std::string& path, std::string_view unit, const auto& value) {
        if (at == index)
            found = {path, std::string(unit), text_of(value), {}};
        ++at;
    });
    return found;
}

} // namespace detail

/// The first field, in declaration order, that differs between `left` and `right`.
template <class Root>
std::optional<FieldDifference> diff_fields(const Root& left, const Root& right) {
    std::vector<std::uint64_t> words;
    for_each_value(left, [&](const auto& value) { words.push_back(bits_of(value)); });
    std::size_t at = 0;
    std::optional<std::size_t> differing;
    for_each_value(right, [&](const auto& value) {
        if (!differing && words[at] != bits_of(value))
            differing = at;
        ++at;
    });
    if (!differing)
        return std::nullopt;
    FieldDifference found = detail::describe_field(left, *differing);
    found.right = detail::describe_field(right, *differing).left;
    return found;
}

/// Path of the first field that is an infinity or not a number.
template <class Root>
std::optional<std::string> first_nonfinite(const Root& root) {
    std::size_t at = 0;
    std::optional<std::size_t> bad;
    for_each_value(root, [&](const auto& value) {
        if constexpr (std::is_floating_point_v<std::remove_cvref_t<decltype(value)>>)
            if (!bad && !(value - value == 0))
                bad = at;
        ++at;
    });
    if (!bad)
        return std::nullopt;
    return detail::describe_field(root, *bad).path;
}

/// Bytes of all scalars in the field list. Equal to sizeof(Root) when the list names every member once and
/// the struct has no padding: test this for every struct of the World.
template <class Root>
std::size_t visited_bytes(const Root& root) {
    std::size_t bytes = 0;
    for_each_value(root, [&](const auto& value) { bytes += sizeof(value); });
    return bytes;
}

} // namespace lightoff::units
