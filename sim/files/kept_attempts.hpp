// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// The attempts that a user keeps, one file each, and the marks that were found for them.
namespace lightoff::files {

struct KeptAttempt {
    std::string path;
    std::string name; ///< "plugged-hose-2"
    std::string call; ///< name of its scenario
    bool ended = false;
    std::size_t actions = 0;
    std::string problem;                ///< why it can't be used; empty if it can
    std::optional<double> mark, safety; ///< as last graded
};

/// All in a folder, by name; none if there is no such folder. What can't be read is there with its problem.
std::vector<KeptAttempt> kept_attempts(const std::string& folder, std::int64_t physics_version);

/// A path in the folder that no file has yet: "FOLDER/plugged-hose-3.jsonl".
std::string new_attempt_path(const std::string& folder, const std::string& call);

/// Writes down the mark of an attempt, in marks.json beside it. Throws Error.
void keep_mark(const std::string& folder, const std::string& name, double mark, double safety);

} // namespace lightoff::files
