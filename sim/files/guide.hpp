// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "files/reader.hpp"
#include "lesson/guide.hpp"

#include <optional>
#include <string>

namespace lightoff::files {

inline constexpr std::string_view kGuidesFolder = "guides";

/// Throws Error for a step that this furnace can't be guided by.
lesson::Guide read_guide(const Document& document, const bench::Site& site);

/// The guide of a call, if there is one in the data folder.
std::optional<lesson::Guide> find_guide(const std::string& call, const bench::Site& site);

} // namespace lightoff::files
