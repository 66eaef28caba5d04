// SPDX-License-Identifier: MIT
#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>

/// What a source file of sim/ or gui/ may include and name.
namespace structure {

/// Whether a path below the repository names a header that exists.
using Exists = std::function<bool(std::string_view path)>;

/// Every breach of a rule in one file, each a sentence; `path` is relative to the repository
/// ("sim/draft/path.cpp").
std::vector<std::string> breaches(std::string_view path, std::string_view text, const Exists& exists);

} // namespace structure
