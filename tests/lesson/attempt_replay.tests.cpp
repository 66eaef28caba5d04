// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "files/attempt.hpp"
#include "files/attempt_log.hpp"
#include "files/error.hpp"
#include "files/temporary_folder.hpp"
#include "furnace/furnace.hpp"
#include "recorded_life.hpp"

#include <algorithm>
#include <optional>
#include <set>

// An attempt goes to its file and comes back as the same attempt, also when the program was killed in the
// middle of a line; and it comes back as no other, whatever is done to the file.

using lightoff::bench::Verb;
using lightoff::lesson::Log;
namespace files = lightoff::files;
namespace lesson = lightoff::lesson;

namespace {

constexpr std::int64_t kPhysics = lightoff::furnace::kPhysicsVersion;

void write(const std::string& path, const Log& log, bool finish) {
    const lightoff::bench::Site& site = lightoff::test::reference_site();
    files::AttemptWriter writer(path, {"call-for-heat", kPhysics, site.model.bundle_hash, log.seed});
    std::size_t entry = 0;
    const auto entries_before = [&](std::uint64_t tick) {
        for (; entry < log.entries.size() && log.entries[entry].tick < tick; ++entry)
            writer.entry(static_cast<std::int64_t>(log.entries[entry].tick), "student",
                         files::action_json(site, log.entries[entry].action));
    };
    for (const Log::Mark& mark : log.marks) {
        entries_before(mark.tick);
        writer.mark(static_cast<std::int64_t>(mark.tick), mark.world_hash);
    }
    entries_before(~std::uint64_t{0});
    if (finish)
        writer.end("handed in");
}

Log log_of(const files::Attempt& attempt) {
    return files::log_of(attempt, "attempt", lightoff::test::reference_site());
}

bool equal(const Log& a, const Log& b) {
    const auto same_entry = [](const Log::Entry& x, const Log::Entry& y) {
        return x.tick == y.tick && x.action == y.action;
    };
    const auto same_mark = [](const Log::Mark& x, const Log::Mark& y) {
        return x.tick == y.tick && x.world_hash == y.world_hash;
    };
    return a.seed == b.seed && a.last_tick == b.last_tick &&
           std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(), same_entry) &&
           std::equal(a.marks.begin(), a.marks.end(), b.marks.begin(), b.marks.end(), same_mark);
}

/// An attempt with every verb in it, whether it could be done or not: a file only says what was done.
Log every_verb() {
    Log log;
    log.seed = 11;
    std::set<Verb> missing;
    for (const lightoff::bench::VerbSpec& spec : lightoff::bench::verbs())
        missing.insert(spec.verb);
    missing.erase(Verb::sign_off); // comes last
    lightoff::test::RandomHands hands(8, {.rests = 0});
    while (!missing.empty()) {
        const auto action = hands.any_action(lightoff::test::reference_site());
        if (!action || missing.erase(action->verb) == 0)
            continue;
        log.last_tick += hands.random(60);
        log.entries.push_back({log.last_tick, *action});
        if (log.entries.size() % 6 == 0)
            log.marks.push_back({++log.last_tick, lightoff::units::random_bits(8, 1, log.last_tick)});
    }
    log.entries.push_back({++log.last_tick, {Verb::sign_off, 0, 0}});
    return log;
}

std::string bytes_of_attempt(const Log& log, bool finish) {
    const TemporaryFolder folder;
    write(folder.file("a.jsonl"), log, finish);
    return bytes_of(folder.file("a.jsonl"));
}

#ifdef NDEBUG
constexpr std::size_t kStep = 1; ///< every byte
#else
constexpr std::size_t kStep = 29; ///< some hundreds of places: unoptimised, or under sanitizers
#endif

/// One byte changed, put in or taken out.
enum class Edit { change, insert, erase };
std::string edited(std::string text, std::size_t at, Edit edit) {
    const std::uint64_t bits = lightoff::units::random_bits(3, static_cast<std::uint64_t>(edit), at);
    // A byte of the file's own kind, for half of them: a digit, a letter, a line feed where there was none.
    const char own = text[bits / 512 % text.size()];
    const char any = bits % 2 != 0 ? own : static_cast<char>(bits / 2 % 256);
    switch (edit) {
    case Edit::change:
        text[at] = any != text[at] ? any : static_cast<char>(any ^ 1);
        break;
    case Edit::insert:
        text.insert(at, 1, any);
        break;
    case Edit::erase:
        text.erase(at, 1);
        break;
    }
    return text;
}

/// The attempt of a text, if the reader takes it.
std::optional<files::Attempt> taken(const std::string& text) {
    try {
        return files::parse_attempt(text, "attempt", kPhysics);
    } catch (const files::Error&) {
        return std::nullopt;
    }
}

bool same_contents(const files::Attempt& a, const files::Attempt& b) {
    return a.header == b.header && a.entries == b.entries && a.marks == b.marks &&
           equal(log_of(a), log_of(b));
}

lesson::ReplayResult replay(const Log& log) {
    return lesson::replay(lightoff::test::reference_site(), lightoff::test::call_for_heat(), log);
}

} // namespace

TEST_CASE("every verb goes to a file and comes back") {
    const Log log = every_verb();
    REQUIRE(log.entries.size() == lightoff::bench::verbs().size());
    const auto attempt = taken(bytes_of_attempt(log, true));
    REQUIRE(attempt);
    CHECK_FALSE(attempt->abandoned());
    CHECK(equal(log_of(*attempt), log));
}

// What is read is all that a grade is computed from: the same log, the same grade.
TEST_CASE("an attempt with one byte edited anywhere is refused, or reads as the same attempt") {
    const std::string good = bytes_of_attempt(every_verb(), true);
    const files::Attempt attempt = taken(good).value();
    int refused = 0;
    for (std::size_t at = good.size(); at-- > 0;) {
        if (at % kStep != 0 && at + 1 != good.size())
            continue;
        for (const Edit edit : {Edit::change, Edit::insert, Edit::erase}) {
            const std::string text = edited(good, at, edit);
            const auto read = text == good ? std::nullopt : taken(text);
            if (!read) {
                ++refused;
                continue;
            }
            INFO("byte " << at << " of " << good.size() << ", edit " << static_cast<int>(edit));
            CHECK(same_contents(*read, attempt));
            CHECK(read->abandoned()); // only the last line feed can go: then the end is not whole
        }
    }
    CHECK_FALSE(taken(good + "x"));
    CHECK_FALSE(taken(good + "\n"));
    CHECK(static_cast<std::size_t>(refused) + 1 >= 3 * (good.size() / kStep));
}

TEST_CASE("the rest of a line in which the program was killed counts for nothing, whatever is in it") {
    const std::string good = bytes_of_attempt(every_verb(), false);
    const std::size_t last_line = good.rfind('\n', good.size() - 2) + 1;
    const std::size_t cut = last_line + (good.size() - last_line) / 2;
    const files::Attempt attempt = taken(good.substr(0, cut)).value();
    int same = 0;
    // Every byte from the line feed before it on: without that feed a whole line would be part of the rest.
    for (std::size_t at = 0; at < cut;
         at = at + 1 < last_line ? std::min(at + 3 * kStep, last_line - 1) : at + 1)
        for (const Edit edit : {Edit::change, Edit::insert, Edit::erase}) {
            const std::string text = edited(good.substr(0, cut), at, edit);
            if (const auto read = taken(text)) {
                INFO("byte " << at << " of " << cut << ", edit " << static_cast<int>(edit));
                CHECK(at >= last_line);
                CHECK(same_contents(*read, attempt));
                ++same;
            }
        }
    CHECK(same > 0);
}

TEST_CASE("an attempt cut at any byte is abandoned, and loses nothing but the line that is not whole") {
    const Log log = every_verb();
    const std::string good = bytes_of_attempt(log, true);
    const files::Attempt whole = taken(good).value();
    const auto begins_with = [](const auto& all, const auto& first) {
        return first.size() <= all.size() && std::equal(first.begin(), first.end(), all.begin());
    };
    for (std::size_t size = good.find('\n') + 1; size < good.size(); size += kStep) {
        INFO(size << " of " << good.size() << " bytes");
        const std::string cut = good.substr(0, size);
        const auto attempt = taken(cut);
        REQUIRE(attempt);
        CHECK(attempt->abandoned());
        CHECK(attempt->header == whole.header);
        CHECK(begins_with(whole.entries, attempt->entries));
        CHECK(begins_with(whole.marks, attempt->marks));
        const auto lines = static_cast<std::size_t>(std::count(cut.begin(), cut.end(), '\n'));
        CHECK(1 + attempt->entries.size() + attempt->marks.size() == lines);
        CHECK(attempt->whole_bytes + attempt->unfinished_bytes == size);
        if (attempt->unfinished_bytes == 0) {
            const Log read = log_of(*attempt);
            CHECK(read.entries.size() == attempt->entries.size());
            CHECK(std::equal(
                read.entries.begin(), read.entries.end(), log.entries.begin(),
                [](const auto& a, const auto& b) { return a.tick == b.tick && a.action == b.action; }));
        }
    }
}

TEST_CASE("an attempt's file replays like the attempt") {
    const TemporaryFolder folder;
    const Log log = lightoff::test::record_random_life(2, 300.0);
    write(folder.file("a.jsonl"), log, true);
    const files::Attempt attempt = files::read_attempt(folder.file("a.jsonl"), kPhysics);
    CHECK_FALSE(attempt.abandoned());
    CHECK(attempt.entries.size() == log.entries.size());
    const Log back = log_of(attempt);
    CHECK(equal(back, log));
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
