// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::cli {

/// What the program's exit status says.
enum ExitCode : int {
    kDone = 0,
    kNegative = 1,     ///< it ran, and the answer is no: a replay differs, an action is refused
    kUnusable = 2,     ///< bad usage, a file that can't be used, output that can't be written
    kInterrupted = 130 ///< stopped by Ctrl-C: 128 + SIGINT, as shells count
};

} // namespace lightoff::cli
