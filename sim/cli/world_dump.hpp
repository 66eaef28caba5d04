// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"

#include <optional>
#include <string>

/// Every number of a World as text, to find out on another machine where two runs part. JSON Lines, one World
/// in each:
///     {"tick":200,"world_hash":"0f1e2d3c4b5a6978","world":{"tick":200,"seed":0,"state.draft.inducer.speed":331.5,
///     ...}}
namespace lightoff::cli {

/// One line with its line feed. Numbers are the shortest that read back to the same bits.
std::string dump_line(const bench::World& world);

/// Reads a dump line by line. Throws files::Error, naming the line, for what is no such dump: a field
/// missing, unknown, of the wrong kind; a hash that does not belong to the fields.
class DumpReader {
public:
    explicit DumpReader(const std::string& path);
    /// The next World, or none at the end.
    std::optional<bench::World> next();

private:
    std::string path_;
    std::string text_;
    std::size_t at_ = 0;
    std::size_t line_ = 0;
};

} // namespace lightoff::cli
