// SPDX-License-Identifier: MIT
#pragma once
#include "files/disk.hpp"
#include "files/hash.hpp"
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The file of an attempt: what a student did and when, one JSON object in each line (JSON Lines,
/// docs/data-formats.md). Nothing is in it that a replay can compute.
///
/// Each line ends in a hash over the hash of the line before and the line's own bytes, so that no byte
/// can change unnoticed. The hash has no secret in it: the file proves that these actions earn this
/// grade, not who did them, and whoever takes the trouble can compute it anew.
namespace lightoff::files {

inline constexpr std::string_view kAttemptFormat = "lightoff-attempt-1";
inline constexpr std::size_t kLargestAttempt = 64U << 20U; ///< bytes; a school day has about one million

struct AttemptHeader {
    std::string scenario;             ///< its name, to find it by; the bundle's hash is what counts
    std::int64_t physics_version = 0; ///< 0 or more
    std::uint64_t bundle_hash = 0;
    std::uint64_t seed = 0;
    friend bool operator==(const AttemptHeader&, const AttemptHeader&) = default;
};

/// One action.
struct AttemptEntry {
    std::int64_t n = 0;      ///< 1 for the first
    std::int64_t tick = 0;   ///< when it began; never falls from line to line
    std::string by;          ///< who acted: "student", "instructor" ...
    std::string action_json; ///< a JSON object, canonical; what it means is not this room's business
    friend bool operator==(const AttemptEntry&, const AttemptEntry&) = default;
};

/// The World's hash at a tick, every 10 s.
struct AttemptMark {
    std::int64_t tick = 0;
    std::uint64_t world_hash = 0;
    std::int64_t entries_before = 0; ///< entries in the lines above it (not in the file)
    friend bool operator==(const AttemptMark&, const AttemptMark&) = default;
};

/// The last line. A file without it is of an abandoned attempt.
struct AttemptEnd {
    std::string reason;
    std::int64_t count = 0; ///< of the entries
    friend bool operator==(const AttemptEnd&, const AttemptEnd&) = default;
};

struct Attempt {
    AttemptHeader header;
    std::vector<AttemptEntry> entries;
    std::vector<AttemptMark> marks;
    std::optional<AttemptEnd> end;
    std::size_t whole_bytes = 0;      ///< length of the lines that are whole
    std::size_t unfinished_bytes = 0; ///< of a last line that was cut, left out here
    std::int64_t last_tick = 0;
    Digest chain{}; ///< after the last whole line

    [[nodiscard]] bool abandoned() const { return !end.has_value(); }
};

/// `file` is only named in errors. Throws Error, naming the line, for a line that was edited, moved,
/// left out or that means nothing; for another format or physics version by its name. A last line
/// without line feed was cut when the program died and is dropped, whatever is in it.
Attempt parse_attempt(std::string_view text, const std::string& file, std::int64_t physics_version);
Attempt read_attempt(const std::string& path, std::int64_t physics_version);

/// Throws Error if the attempt was made with other data than a bundle of this hash.
void check_bundle(const Attempt& attempt, const std::string& file, std::uint64_t bundle_hash);

/// Writes an attempt, line by line as it happens. If a line can't be written whole (a full disk), Error is
/// thrown, the file ends in the line before, and the call may be repeated.
class AttemptWriter {
public:
    /// Begins a new file; throws Error if there is one of that name.
    AttemptWriter(const std::string& path, const AttemptHeader& header);
    /// Goes on with an abandoned attempt: cuts a last line that is not whole, appends behind it. Throws
    /// Error if it has ended. `so_far` receives what is in the file.
    static AttemptWriter resume(const std::string& path, std::int64_t physics_version, Attempt& so_far);

    /// Throws std::invalid_argument if the tick falls or `action_json` is no JSON object.
    void entry(std::int64_t tick, std::string_view by, std::string_view action_json);
    void mark(std::int64_t tick, std::uint64_t world_hash);
    /// Nothing may follow it.
    void end(std::string_view reason);
    [[nodiscard]] std::int64_t entries() const { return entries_; }

private:
    explicit AttemptWriter(AppendFile file) : file_(std::move(file)) {}
    void line(const std::string& content, AppendFile::Sync sync);
    void check_tick(std::int64_t tick) const;

    AppendFile file_;
    Digest chain_{};
    std::int64_t entries_ = 0;
    std::int64_t last_tick_ = 0;
    bool ended_ = false;
};

} // namespace lightoff::files
