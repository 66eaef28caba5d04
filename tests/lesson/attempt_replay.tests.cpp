// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "files/attempt.hpp"
#include "files/attempt_log.hpp"
#include "files/temporary_folder.hpp"
#include "furnace/furnace.hpp"
#include "recorded_life.hpp"

// An attempt goes to its file and comes back as the same attempt, also when the program was killed in the
// middle of a line.

using lightoff::lesson::Log;
namespace files = lightoff::files;
namespace lesson = lightoff::lesson;

namespace {

constexpr std::int64_t kPhysics = lightoff::furnace::kPhysicsVersion;

void write(const std::string& path, const Log& log, bool finish) {
    const lightoff::bench::Site& site = lightoff::test::reference_site();
    files::AttemptWriter writer(path, {"call-for-heat", kPhysics, site.model.bundle_hash, log.seed});
    std::size_t entry = 0;
    for (const Log::Mark& mark : log.marks) {
        for (; entry < log.entries.size() && log.entries[entry].tick < mark.tick; ++entry)
            writer.entry(static_cast<std::int64_t>(log.entries[entry].tick), "student",
                         files::action_json(site, log.entries[entry].action));
        writer.mark(static_cast<std::int64_t>(mark.tick), mark.world_hash);
    }
    if (finish)
        writer.end("handed in");
}

Log log_of(const files::Attempt& attempt) {
    return files::log_of(attempt, "attempt", lightoff::test::reference_site());
}

lesson::ReplayResult replay(const Log& log) {
    return lesson::replay(lightoff::test::reference_site(), lightoff::test::call_for_heat(), log);
}

} // namespace

TEST_CASE("an attempt's file replays like the attempt") {
    const TemporaryFolder folder;
    const Log log = lightoff::test::record_random_life(2, 300.0);
    write(folder.file("a.jsonl"), log, true);
    const files::Attempt attempt = files::read_attempt(folder.file("a.jsonl"), kPhysics);
    CHECK_FALSE(attempt.abandoned());
    CHECK(attempt.entries.size() == log.entries.size());
    const Log back = log_of(attempt);
    CHECK(back.seed == log.seed);
    CHECK(back.last_tick == log.last_tick);
    REQUIRE(back.entries.size() == log.entries.size());
    for (std::size_t i = 0; i < log.entries.size(); ++i) {
        CHECK(back.entries[i].tick == log.entries[i].tick);
        CHECK(back.entries[i].action == log.entries[i].action);
    }
    const auto result = replay(back);
    CHECK_FALSE(result.divergence);
    CHECK(result.marks_compared == log.marks.size());
    CHECK(lesson::world_hash(result.world) == log.marks.back().world_hash);
    CHECK_THROWS(files::read_attempt(folder.file("a.jsonl"), kPhysics + 1));
}

TEST_CASE("killed at any byte of the last line, an attempt keeps all lines before it and can go on") {
    const TemporaryFolder folder;
    const Log log = lightoff::test::record_random_life(7, 100.0);
    write(folder.file("whole.jsonl"), log, false);
    const std::string bytes = bytes_of(folder.file("whole.jsonl"));
    const std::size_t last_line = bytes.rfind('\n', bytes.size() - 2) + 1;
    REQUIRE(bytes.size() - last_line > 40);

    for (std::size_t size = last_line; size <= bytes.size(); ++size) {
        INFO(size - last_line << " bytes of the last line");
        const std::string path = folder.file("cut" + std::to_string(size) + ".jsonl");
        put_bytes(path, bytes.substr(0, size));
        const bool whole = size == bytes.size();
        const files::Attempt attempt = files::read_attempt(path, kPhysics);
        CHECK(attempt.abandoned());
        CHECK(attempt.unfinished_bytes == (whole ? 0 : size - last_line));
        CHECK(attempt.marks.size() == log.marks.size() - (whole ? 0 : 1));
        CHECK(attempt.entries.size() == log.entries.size());

        files::Attempt so_far;
        auto writer = files::AttemptWriter::resume(path, kPhysics, so_far);
        if (!whole)
            writer.mark(static_cast<std::int64_t>(log.marks.back().tick), log.marks.back().world_hash);
        CHECK(bytes_of(path) == bytes); // the line that was lost, byte for byte
        writer.end("handed in");
        const files::Attempt finished = files::read_attempt(path, kPhysics);
        CHECK_FALSE(finished.abandoned());
        if (size == last_line || size == last_line + 20 || whole) {
            const auto result = replay(log_of(finished));
            CHECK_FALSE(result.divergence);
            CHECK(result.marks_compared == log.marks.size());
        }
    }
}
