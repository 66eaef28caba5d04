// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>
#include <vector>

namespace lightoff::cli {

struct GradeOptions {
    std::vector<std::string> attempts;
    std::string csv;  ///< gradebook; empty: none
    std::string html; ///< report of the one attempt; empty: none
    std::string pdf;  ///< the same
    bool json = false;
};

/// Throws UsageError for a report of several attempts. Marks attempts: every line of the account, caps,
/// safety. An attempt that can't be used is told of and passed over; then the exit status says so.
int grade_attempts(Output& out, const GradeOptions& options);

} // namespace lightoff::cli
