// SPDX-License-Identifier: MIT
#pragma once
#include "figures/figures.hpp"

#include <filesystem>

namespace lightoff::figures {

/// A file's text; empty when there is none.
std::string text_of(const std::filesystem::path& path);

/// Sentences on figures that stand otherwise in `folder`, and on files there that nobody draws.
std::vector<std::string> stale(const std::vector<Drawing>& figures, const std::filesystem::path& folder);

/// Sentences on what a page of docs names and is not there: files in code marks that begin with "sim/",
/// "gui/", "tests/", "scenarios/" or "docs/", links and pictures, and test cases written `file.cpp`: "name of
/// the case". And on figures that the page does not show.
std::vector<std::string> missing_from_page(const std::filesystem::path& source, const std::string& page,
                                           const std::vector<Drawing>& figures);

} // namespace lightoff::figures
