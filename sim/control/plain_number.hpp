// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <charconv>
#include <string>

namespace lightoff::control {

/// A number for people, at most six decimals, no zeros at the end, the same in every locale.
inline std::string plain_number(double value) {
    std::array<char, 400> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, 6);
    std::string text(buffer.data(), end.ptr);
    if (text.find('.') == std::string::npos)
        return text; // not finite
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text.pop_back();
    return text;
}

} // namespace lightoff::control
