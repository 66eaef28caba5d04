// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>

namespace lightoff::cli {

struct ReplayOptions {
    std::string attempt;
    std::string scenario; ///< empty: the one that the attempt names
    std::string dump;     ///< file; empty: none
    std::string compare;  ///< file; empty: none
};

/// Runs an attempt again and says whether it comes out the same at every mark. With a dump from another
/// machine it names the first number that differs.
int replay_attempt(Output& out, const ReplayOptions& options);

} // namespace lightoff::cli
