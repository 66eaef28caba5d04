// SPDX-License-Identifier: MIT
#pragma once
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

/// JSON text (RFC 8259) to values, stricter than the library: duplicate keys, deep nesting, numbers
/// that a double can't hold, bytes that are not UTF-8 and stray control characters are refused.
namespace lightoff::files {

using Json = nlohmann::json;

inline constexpr std::size_t kDeepestNesting = 64;

/// Throws Error at the first byte that is not UTF-8 or is a control character.
void check_text(std::string_view text, const std::string& file);

/// `file` is only named in errors.
Json parse_json(std::string_view text, const std::string& file);

/// Keys sorted, no spaces, shortest numbers: equal values give equal text on every machine.
std::string canonical_text(const Json& value);

/// A value as an error shows it: -0.08, "some text", an object, an array of 3.
std::string describe(const Json& value);

} // namespace lightoff::files
