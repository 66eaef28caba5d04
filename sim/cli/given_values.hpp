// SPDX-License-Identifier: MIT
#pragma once
#include "cli/sums.hpp"
#include "files/unit_suffix.hpp"

#include <string>
#include <vector>

namespace lightoff::cli {

/// One value as it was typed, or as it stands by default.
struct GivenText {
    std::string key; ///< with its unit
    double written = 0.0;
    std::string word; ///< instead of a number, where the sum takes a word
};

struct GivenValues {
    Values values;
    std::vector<GivenText> texts; ///< in the order of the sum's table
};

/// Reads "key=value" texts for `sum`. Throws UsageError for a key that the sum does not take (naming the
/// nearest), that lacks its unit, is there twice or missing, and for a value that is no number or out of
/// range.
GivenValues read_given(const Sum& sum, const std::vector<std::string>& texts);

} // namespace lightoff::cli
