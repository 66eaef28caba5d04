// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>

namespace lightoff::cli {

struct PlayOptions {
    std::string scenario;
    std::string script;  ///< empty: lines come from standard input
    std::string attempt; ///< empty: nothing is written down
    std::string seed;    ///< empty: 0, or the attempt's
};

/// A call worked in the terminal: by a script, by lines of standard input, or by hand. An attempt that is
/// there and has no end is continued.
int play(Output& out, const PlayOptions& options);

} // namespace lightoff::cli
