// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <cstdio>
#include <memory>
#include <string>
#include <string_view>

/// Reading and writing whole files. Every failure is a files::Error that names the file and the
/// system's reason.
namespace lightoff::files {

inline constexpr std::size_t kLargestFile = 16U << 20U; ///< bytes; a profile has some 30 thousand

/// All bytes of a file. A file larger than `limit` is refused without being read.
std::string read_file(const std::string& path, std::size_t limit = kLargestFile);

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using OwnedFile = std::unique_ptr<std::FILE, CloseFile>;

/// A file that grows line by line and survives the death of the program at any moment.
class AppendFile {
public:
    enum class Sync {
        to_system, ///< survives the death of the program
        to_disk    ///< survives the loss of power, too; takes milliseconds
    };

    /// Makes a new file; one that is there already and not empty is refused, never overwritten.
    static AppendFile create(const std::string& path);
    /// Opens a file, cuts it to its first `keep` bytes and goes on behind them.
    static AppendFile reopen(const std::string& path, std::size_t keep);

    /// Appends `text` whole or, if that fails (a full disk), not at all; a later call may succeed.
    void append(std::string_view text, Sync sync);

private:
    AppendFile(std::string path, OwnedFile file, std::size_t size);
    std::string path_;
    OwnedFile file_;
    std::size_t size_;
};

/// A file that is written from its beginning while it grows, for what is too long to be kept; what was there
/// before is lost.
class OutputFile {
public:
    explicit OutputFile(const std::string& path);
    void write(std::string_view text);

private:
    std::string path_;
    OwnedFile file_;
};

/// Puts `text` in the place of the file at `path` in one step: readers see the old file or the new
/// one, never a part, and a failure leaves the old one as it was.
void replace_file(const std::string& path, std::string_view text);

} // namespace lightoff::files
