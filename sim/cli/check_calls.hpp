// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>
#include <vector>

namespace lightoff::cli {

struct CheckOptions {
    std::vector<std::string> scenarios;
    bool json = false;
};

/// Whether calls are fit to be given: they load, the household lives through what it complains of, measuring
/// leads to the cause. Tells the cheapest proof and what it can't tell from the cause. The exit status is
/// negative if one is not fit; a file that can't be used is told of, and the others are still checked.
int check_calls(Output& out, const CheckOptions& options);

} // namespace lightoff::cli
