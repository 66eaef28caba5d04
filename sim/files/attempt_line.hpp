// SPDX-License-Identifier: MIT
#pragma once
#include "files/hash.hpp"
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

/// A line of an attempt file, without its line feed: an object whose last member is the chain hash,
///     {"n":1,"tick":200,"by":"student","action":{"verb":"wait"},"chain":"0f1e..."}
/// over the chain hash of the line before and all bytes before `,"chain"`.
namespace lightoff::files {

/// Longest texts, in characters, and last tick that a file may hold; the writer keeps to what the reader
/// takes.
inline constexpr std::size_t kLongestScenario = 200;
inline constexpr std::size_t kLongestActor = 40;
inline constexpr std::size_t kLongestReason = 200;
inline constexpr std::int64_t kLastTick = std::int64_t{1} << 40; // 1,700 years

/// What stands before the first line's hash.
Digest first_chain();

/// `content` is the object's text up to and without the closing brace; `chain` moves on to the new hash.
std::string sealed_line(std::string_view content, Digest& chain);

/// `text` up to the end of the first seal in it; all of it if there is none. Of lines joined by a lost line
/// feed that is the first of them.
std::string_view up_to_seal(std::string_view text);

/// Moves `chain` on if the line carries the hash that belongs there; false if not.
bool follows_chain(std::string_view line, Digest& chain);

} // namespace lightoff::files
