// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <string_view>

/// Hashes of files: BLAKE2b (RFC 7693) of 16 bytes, by libsodium.
namespace lightoff::files {

using Digest = std::array<std::uint8_t, 16>;

/// Digest of `first` followed by `second`.
Digest digest_of(std::string_view first, std::string_view second = {});

std::string hex(const Digest& digest); ///< 32 lower-case digits
std::string hex(std::uint64_t number); ///< 16 lower-case digits

/// The number of exactly 16 lower-case hexadecimal digits; false if `text` is anything else.
bool parse_hex(std::string_view text, std::uint64_t& number);

} // namespace lightoff::files
