// SPDX-License-Identifier: MIT
#pragma once
#include "cli/playthrough.hpp"
#include "files/csv.hpp"
#include "files/disk.hpp"

#include <string>

namespace lightoff::cli {

/// A run as a table for a spreadsheet: time, steps of the board, lamp, readouts in trade units, then
/// everything that the rooms pass each other, in SI. Written row by row. Throws files::Error.
class Trace {
public:
    /// Opens the file and writes its header.
    Trace(const std::string& path, Playthrough& run);
    void row(Playthrough& run);

private:
    files::OutputFile file_;
    files::Csv table_;
};

} // namespace lightoff::cli
