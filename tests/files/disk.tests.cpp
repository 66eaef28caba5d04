// SPDX-License-Identifier: MIT
#include "files/disk.hpp"
#include "files/csv.hpp"
#include "files/message_of.hpp"
#include "files/reader.hpp"
#include "files/temporary_folder.hpp"
#include <catch2/catch.hpp>
#include <csignal>
#include <limits>
#include <sys/resource.h>
#include <unistd.h>

using namespace lightoff::files;

namespace {

std::string reading(const std::string& path, std::size_t limit = kLargestFile) {
    return message_of([&] { static_cast<void>(read_file(path, limit)); });
}

/// No file may grow beyond `bytes` while this lives: a full disk, for one process.
class FullDisk {
public:
    explicit FullDisk(rlim_t bytes) {
        std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit limit{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &limit);
    }
    ~FullDisk() { setrlimit(RLIMIT_FSIZE, &before_); }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    rlimit before_{};
};

} // namespace

TEST_CASE("a file is read to its last byte") {
    const TemporaryFolder folder;
    for (const std::size_t size : {0U, 1U, 65535U, 65536U, 65537U, 200000U}) {
        std::string bytes(size, 'x');
        if (size > 0)
            bytes.back() = '\0';
        put_bytes(folder.file("f"), bytes);
        CHECK(read_file(folder.file("f")) == bytes);
    }
}

TEST_CASE("what can't be read is named with the reason") {
    const TemporaryFolder folder;
    const std::string path = folder.file("x.json");
    CHECK(reading(path) ==
          path + ": found the system's answer \"No such file or directory\"; check the name and your "
                 "right to read it");
    CHECK(reading(folder.path().string()) == folder.path().string() + ": found a folder; allowed a file");
    CHECK(reading("").find("No such file") != std::string::npos);
    CHECK(reading("/dev/zero", 1000) ==
          "/dev/zero: found more than 1000 bytes; allowed at most 1000 bytes; is it the right file?");
    if (geteuid() != 0) { // root may read everything
        put_bytes(path, "{}");
        std::filesystem::permissions(path, std::filesystem::perms::none);
        CHECK(reading(path).find("Permission denied") != std::string::npos);
    }
}

TEST_CASE("a file of 100 MB is refused without being read") {
    const TemporaryFolder folder;
    const std::string path = folder.file("big.json");
    put_bytes(path, "{");
    std::filesystem::resize_file(path, 100'000'000); // sparse: takes no room
    CHECK(message_of([&] { static_cast<void>(read_document(path)); }) ==
          path + ": found 100000000 bytes; allowed at most 16777216 bytes; is it the right file?");
}

TEST_CASE("a full disk leaves the lines before it whole, and the line may be tried again") {
    const TemporaryFolder folder;
    const std::string path = folder.file("log");
    AppendFile file = AppendFile::create(path);
    file.append("first line\n", AppendFile::Sync::to_disk);
    {
        const FullDisk full(15);
        const std::string message =
            message_of([&] { file.append("second line\n", AppendFile::Sync::to_system); });
        CHECK(message ==
              path + ": found the system's answer \"File too large\"; free some space; what was written "
                     "before is whole");
        CHECK(bytes_of(path) == "first line\n");
    }
    file.append("second line\n", AppendFile::Sync::to_system);
    CHECK(bytes_of(path) == "first line\nsecond line\n");

    AppendFile device = AppendFile::create("/dev/full");
    CHECK(message_of([&] {
              device.append("x\n", AppendFile::Sync::to_disk);
          }).find("No space left on device") != std::string::npos);
}

TEST_CASE("an existing file is never overwritten by a new log") {
    const TemporaryFolder folder;
    put_bytes(folder.file("log"), "old");
    CHECK(message_of([&] { AppendFile::create(folder.file("log")); }).find("nothing was overwritten") !=
          std::string::npos);
    CHECK(bytes_of(folder.file("log")) == "old");
}

TEST_CASE("a file is replaced whole or not at all") {
    const TemporaryFolder folder;
    const std::string path = folder.file("grades.csv");
    replace_file(path, "old");
    {
        const FullDisk full(100);
        CHECK(message_of([&] { replace_file(path, std::string(200, 'x')); }).find("free some space") !=
              std::string::npos);
    }
    CHECK(bytes_of(path) == "old");
    replace_file(path, "new");
    CHECK(bytes_of(path) == "new");
    CHECK(std::distance(std::filesystem::directory_iterator(folder.path()), {}) ==
          1); // no part left lying about
    CHECK(message_of([&] { replace_file(folder.path().string(), "x"); }).find("found a folder") !=
          std::string::npos);
    CHECK(message_of([&] { replace_file(folder.file("no/such"), "x"); }).find("No such file") !=
          std::string::npos);
    CHECK(message_of([&] { replace_file("/dev/full", "x"); }).find("No space left") != std::string::npos);
    CHECK(message_of([&] { replace_file("/proc/x", "x"); }) !=
          "no error"); // a folder in which nobody may write
}

TEST_CASE("a table goes out as RFC 4180 says") {
    // RFC 4180 section 2: CRLF, fields with comma, quote or line break in quotes, quotes doubled
    Csv csv({{"student"}, {"rise", "F"}, {"score"}});
    csv.row({std::string("Ode, \"Al\""), 52.5, std::int64_t{88}});
    csv.row({std::string("two\nlines"), 0.1, std::int64_t{-1}});
    csv.row({std::string("=2+2"), std::numeric_limits<double>::quiet_NaN(), std::int64_t{0}});
    CHECK(csv.text() == "student,rise (F),score\r\n"
                        "\"Ode, \"\"Al\"\"\",52.5,88\r\n"
                        "\"two\nlines\",0.1,-1\r\n"
                        "'=2+2,,0\r\n");
    CHECK_THROWS_AS(csv.row({1.0}), std::invalid_argument);
    const TemporaryFolder folder;
    csv.save(folder.file("t.csv"));
    CHECK(bytes_of(folder.file("t.csv")) == csv.text());
}
