// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace lightoff::files {

constexpr bool is_utf8_continuation(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// Bytes of the character at the start of `text` (1 to 4), or 0 if no valid one stands there
/// (The Unicode Standard, table 3-7: no overlong forms, no surrogates, nothing above U+10FFFF).
std::size_t utf8_length(std::string_view text);

/// Offset of the first byte that is not UTF-8, or npos.
std::size_t find_bad_utf8(std::string_view text);

/// Offset of the first control character other than tab, line feed and carriage return, or npos.
std::size_t find_control_character(std::string_view text);

/// Number of characters in UTF-8 text.
std::size_t character_count(std::string_view text);

/// "line:column" of a byte offset, both from 1, columns in characters.
std::string line_and_column(std::string_view text, std::size_t offset);

} // namespace lightoff::files
