// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <string_view>
#include <vector>

/// Just enough reading of C++ to know what a file includes and which names it uses.
namespace structure {

/// The text with comments replaced by a space.
std::string without_comments(std::string_view text);

/// Every include as written, delimiters too: `"draft/path.hpp"` or `<array>`.
std::vector<std::string> includes_of(std::string_view text);

/// Every name outside comments and literals, qualified as written: `std::exp`, `x`.
std::vector<std::string> names_in(std::string_view text);

} // namespace structure
