// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>
#include <vector>

namespace lightoff::cli {

/// Does the sum `name` with "key=value" texts and writes one JSON object: what was given (defaults too),
/// results, formula, source. Throws UsageError.
int calc(Output& out, const std::string& name, const std::vector<std::string>& given);

/// Lists the sums: a page for people, or JSON.
int list_sums(Output& out, bool as_json);

} // namespace lightoff::cli
