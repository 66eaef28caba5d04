// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace lightoff::files {

/// The data that an attempt was made with, each as canonical JSON text (Document::canonical), with
/// every override already applied.
struct Bundle {
    std::string scenario;
    std::string profile;
    std::string catalogue;
    std::string lamp_table;
    std::string school;
};

/// Known to the attempt file by this hash: the first 64 bits of BLAKE2b over the five texts in the
/// order above, each with its name and length before it, so that no text can pose as part of another.
/// Spaces, line ends and the order of keys don't count; every value does.
std::uint64_t bundle_hash(const Bundle& bundle);

} // namespace lightoff::files
