// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>

namespace lightoff::cli {

struct RunOptions {
    std::string scenario;
    std::string for_s; ///< empty: long enough for a call
    std::string seed = "0";
    std::string trace; ///< file; empty: none
    std::string trace_every_s = "0.5";
    bool json = false;
};

/// Runs a scenario by itself, tells the sequence as it happens and the readings at the end.
int run(Output& out, const RunOptions& options);

struct HashOptions {
    std::string scenario;
    std::string for_s;
    std::string seed = "0";
};

/// Prints the hash of the World after that time: one number for a whole run.
int hash(Output& out, const HashOptions& options);

/// Default length of a run: 15 minutes, or until the student arrives if that is later.
std::uint64_t run_ticks(const std::string& for_s, std::uint64_t arrive_after_ticks);

} // namespace lightoff::cli
