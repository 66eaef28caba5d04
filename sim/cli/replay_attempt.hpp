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

struct PlayOptions {
    std::string scenario;
    std::string script;
    std::string attempt;
    std::string seed = "0";
};

/// Does what a script says, one action a line, and writes it down as an attempt.
int play_script(Output& out, const PlayOptions& options);

} // namespace lightoff::cli
