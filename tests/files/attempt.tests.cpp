// SPDX-License-Identifier: MIT
#include "files/attempt.hpp"
#include "files/message_of.hpp"
#include "files/temporary_folder.hpp"
#include <catch2/catch.hpp>
#include <csignal>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace lightoff::files;

namespace {

constexpr std::int64_t kPhysics = 3;
const AttemptHeader kHeader{"calls/no-heat-1", kPhysics, 0x0123456789ABCDEFULL, 42};

void write_sample(const std::string& path, bool finish = true) {
    AttemptWriter writer(path, kHeader);
    writer.entry(0, "student", R"({"verb": "set-thermostat", "to_F": 72})");
    writer.mark(200, 0xFEEDFACECAFEBEEFULL);
    writer.entry(215, "student", R"({"verb":"open-door","door":"burner"})");
    writer.entry(215, "student \"two\"", R"({"verb":"look"})");
    writer.mark(400, 7);
    if (finish)
        writer.end("handed in");
}

std::string sample(bool finish = true) {
    const TemporaryFolder folder;
    write_sample(folder.file("a.jsonl"), finish);
    return bytes_of(folder.file("a.jsonl"));
}

std::string refusal(std::string_view text, std::int64_t physics = kPhysics) {
    return message_of([&] { static_cast<void>(parse_attempt(text, "a.jsonl", physics)); });
}

} // namespace

TEST_CASE("an attempt comes back as it was written") {
    const Attempt attempt = parse_attempt(sample(), "a.jsonl", kPhysics);
    CHECK(attempt.header == kHeader);
    CHECK(attempt.entries ==
          std::vector<AttemptEntry>{{1, 0, "student", R"({"to_F":72,"verb":"set-thermostat"})"},
                                    {2, 215, "student", R"({"door":"burner","verb":"open-door"})"},
                                    {3, 215, "student \"two\"", R"({"verb":"look"})"}});
    CHECK(attempt.marks == std::vector<AttemptMark>{{200, 0xFEEDFACECAFEBEEFULL, 1}, {400, 7, 3}});
    CHECK(attempt.end == AttemptEnd{"handed in", 3});
    CHECK_FALSE(attempt.abandoned());
}

TEST_CASE("an edited byte anywhere is refused by its line") {
    const std::string good = sample();
    for (std::size_t i = 0; i < good.size(); ++i) {
        std::string edited = good;
        edited[i] = static_cast<char>(edited[i] ^ 1);
        const std::string message = refusal(edited);
        INFO("byte " << i << ": " << message);
        CHECK(message.rfind("a.jsonl: ", 0) == 0);
        const auto line = 1 + std::count(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(i), '\n');
        // A line feed that is gone joins two lines, the last one leaves a line cut off after the end.
        const bool last = i + 1 == good.size();
        if (!last)
            CHECK(message.find("line " + std::to_string(line)) != std::string::npos);
    }
}

TEST_CASE("lines left out, repeated, moved or added are refused") {
    const std::string good = sample();
    std::vector<std::string> lines;
    for (std::size_t start = 0; start < good.size();) {
        const std::size_t feed = good.find('\n', start);
        lines.push_back(good.substr(start, feed + 1 - start));
        start = feed + 1;
    }
    const auto joined = [](const std::vector<std::string>& parts) {
        std::string text;
        for (const auto& part : parts)
            text += part;
        return text;
    };
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        auto left_out = lines;
        left_out.erase(left_out.begin() + static_cast<std::ptrdiff_t>(i));
        CHECK(refusal(joined(left_out)) != "no error");
        auto twice = lines;
        twice.insert(twice.begin() + static_cast<std::ptrdiff_t>(i), lines[i]);
        CHECK(refusal(joined(twice)) != "no error");
        auto moved = lines;
        std::swap(moved[i], moved[i + 1]);
        CHECK(refusal(joined(moved)) != "no error");
    }
    CHECK(refusal(good + lines[1]) ==
          "a.jsonl: line 8: found a line after the end of the attempt; allowed nothing");
    CHECK(refusal(good + "x") == "a.jsonl: line 8: found text after the end of the attempt; allowed nothing");
    CHECK(
        refusal(good.substr(0, good.size() - 1) + "\r\n").find("line 7: found a line that does not follow") !=
        std::string::npos);
}

TEST_CASE("a file cut at any byte is an abandoned attempt with its whole lines, and goes on") {
    const std::string good = sample();
    const std::size_t header = good.find('\n') + 1;
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    for (std::size_t length = 0; length < good.size(); ++length) {
        INFO("cut after byte " << length);
        const std::string cut = good.substr(0, length);
        if (length < header) {
            CHECK(refusal(cut).find(length == 0 ? "found an empty file" : "cut in its first line") !=
                  std::string::npos);
            continue;
        }
        const Attempt attempt = parse_attempt(cut, path, kPhysics);
        CHECK(attempt.abandoned());
        CHECK(attempt.whole_bytes + attempt.unfinished_bytes == length);
        const auto lines = static_cast<std::size_t>(std::count(cut.begin(), cut.end(), '\n'));
        CHECK(1 + attempt.entries.size() + attempt.marks.size() == lines);

        put_bytes(path, cut);
        Attempt so_far;
        AttemptWriter writer = AttemptWriter::resume(path, kPhysics, so_far);
        writer.entry(500, "student", R"({"verb":"look"})");
        writer.end("handed in");
        const Attempt whole = read_attempt(path, kPhysics);
        CHECK(whole.entries.size() == so_far.entries.size() + 1);
        CHECK(whole.end.has_value());
    }
}

TEST_CASE("an attempt that ended does not go on") {
    const TemporaryFolder folder;
    write_sample(folder.file("a.jsonl"));
    Attempt so_far;
    CHECK(message_of([&] {
              AttemptWriter::resume(folder.file("a.jsonl"), kPhysics, so_far);
          }).find("found an attempt that has ended: \"handed in\"") != std::string::npos);
    CHECK(message_of([&] {
              AttemptWriter(folder.file("a.jsonl"), kHeader);
          }).find("nothing was overwritten") != std::string::npos);
}

TEST_CASE("another physics version, format or bundle is refused by name") {
    CHECK(refusal(sample(), 4) ==
          "a.jsonl: line 1: found physics version 3; allowed version 4; replay it with the "
          "program that recorded it");
    CHECK(refusal("{\"format\":\"lightoff-attempt-2\"}\n") ==
          "a.jsonl: line 1: found the format \"lightoff-attempt-2\"; allowed \"lightoff-attempt-1\"");
    CHECK(refusal("{}\n") == "a.jsonl: line 1: found no key format");
    CHECK(refusal("PK\x03\x04\n").find("a.jsonl: line 1: 1:3: found control character 03") == 0);
    const Attempt attempt = parse_attempt(sample(), "a.jsonl", kPhysics);
    CHECK_NOTHROW(check_bundle(attempt, "a.jsonl", kHeader.bundle_hash));
    CHECK(message_of([&] { check_bundle(attempt, "a.jsonl", 1); }) ==
          "a.jsonl: line 1: found the bundle 0123456789abcdef; allowed 0000000000000001; the scenario "
          "\"calls/no-heat-1\", its profile or a catalogue has changed since; replay it with the files it "
          "was made with");
}

TEST_CASE("a writer refuses what no reader would take") {
    const TemporaryFolder folder;
    AttemptWriter writer(folder.file("a.jsonl"), kHeader);
    writer.entry(10, "student", "{}");
    CHECK_THROWS_AS(writer.entry(9, "student", "{}"), std::invalid_argument);
    CHECK_THROWS_AS(writer.mark(9, 1), std::invalid_argument);
    CHECK_THROWS_AS(writer.entry(10, "student", "[]"), std::invalid_argument);
    CHECK_THROWS_AS(writer.entry(10, "student", R"({"a":1,"a":2})"), Error);
    CHECK_THROWS_AS(writer.entry(10, "", "{}"), std::invalid_argument);
    CHECK_THROWS_AS(writer.entry(10, "a\x01", "{}"), std::invalid_argument);
    CHECK_THROWS_AS(writer.entry(10, "a\xFF", "{}"), std::invalid_argument);
    CHECK_THROWS_AS(AttemptWriter(folder.file("b.jsonl"), {"", 1, 2, 3}), std::invalid_argument);
    CHECK_FALSE(std::filesystem::exists(folder.file("b.jsonl")));
    writer.end("handed in");
    CHECK_THROWS_AS(writer.entry(11, "student", "{}"), std::logic_error);
    CHECK(read_attempt(folder.file("a.jsonl"), kPhysics).entries.size() == 1);
}

TEST_CASE("a writer killed at any moment leaves a file that can be read") {
    const TemporaryFolder folder;
    for (int round = 0; round < 5; ++round) {
        const std::string path = folder.file("killed-" + std::to_string(round));
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            AttemptWriter writer(path, kHeader);
            for (std::int64_t tick = 0;; ++tick)
                writer.entry(tick, "student", R"({"verb":"look"})");
        }
        while (!std::filesystem::exists(path) || std::filesystem::file_size(path) < 300)
            usleep(1000);
        usleep(static_cast<useconds_t>(1000 * round));
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
        const Attempt attempt = read_attempt(path, kPhysics);
        CHECK(attempt.abandoned());
        CHECK_FALSE(attempt.entries.empty());
    }
}

TEST_CASE("an attempt survives a full disk") {
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    AttemptWriter writer(path, kHeader);
    const rlimit full{1000, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &full);
    std::int64_t written = 0;
    const std::string message = message_of([&] {
        for (;; ++written)
            writer.entry(written, "student", R"({"verb":"look"})");
    });
    const Attempt stopped = read_attempt(path, kPhysics);
    setrlimit(RLIMIT_FSIZE, &before);
    CHECK(message ==
          path + ": found the system's answer \"File too large\"; free some space; what was written before "
                 "is whole");
    CHECK(written > 3);
    CHECK(stopped.unfinished_bytes == 0);
    CHECK(static_cast<std::int64_t>(stopped.entries.size()) == written);
    writer.entry(written, "student", R"({"verb":"look"})");
    writer.end("handed in");
    CHECK(read_attempt(path, kPhysics).end->count == written + 1);
    CHECK(message_of([] { AttemptWriter("/dev/full", kHeader); }).find("No space left on device") !=
          std::string::npos);
}
