// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <algorithm>

#include "bench/difference.hpp"
#include "recorded_life.hpp"

// A log and its scenario give the attempt again, bit for bit; another log doesn't.

using lightoff::lesson::Log;
namespace bench = lightoff::bench;
namespace lesson = lightoff::lesson;

namespace {

lesson::ReplayResult replay(const Log& log) {
    return lesson::replay(lightoff::test::reference_site(), lightoff::test::call_for_heat(), log);
}

/// The first mark at or behind the tick at which an entry takes effect.
std::uint64_t mark_after(const Log& log, const Log::Entry& entry) {
    const std::uint64_t effect =
        entry.tick + static_cast<std::uint64_t>(bench::spec_of(entry.action.verb).ticks);
    for (const Log::Mark& mark : log.marks)
        if (mark.tick > effect)
            return mark.tick;
    return 0;
}

/// The first mark behind the tick at which an entry begins: busy hands are part of the World.
std::uint64_t mark_after_begin(const Log& log, const Log::Entry& entry) {
    for (const Log::Mark& mark : log.marks)
        if (mark.tick > entry.tick)
            return mark.tick;
    return 0;
}

/// Whether no mark stands between a thermostat's setting and the next one: then the first leaves no trace.
bool is_set_again_before_a_mark(const Log& log, std::size_t entry) {
    const std::uint64_t mark = mark_after(log, log.entries[entry]);
    return std::any_of(log.entries.begin() + static_cast<std::ptrdiff_t>(entry) + 1, log.entries.end(),
                       [&](const Log::Entry& later) {
                           return later.action.verb == bench::Verb::thermostat_set &&
                                  mark_after(log, later) <= mark;
                       });
}

} // namespace

TEST_CASE("a recorded attempt replays the same") {
    for (std::uint64_t seed = 0; seed < 6; ++seed) {
        INFO("seed " << seed);
        const Log log = lightoff::test::record_random_life(seed, 600.0);
        CHECK(log.entries.size() > 20);
        CHECK(log.marks.size() == 60);
        std::size_t looked_at = 0;
        const auto result = lesson::replay(lightoff::test::reference_site(), lightoff::test::call_for_heat(),
                                           log, [&](const bench::World&) { ++looked_at; });
        if (result.divergence)
            FAIL_CHECK(result.divergence->what << " at tick " << result.divergence->tick);
        CHECK(result.marks_compared == log.marks.size());
        CHECK(looked_at == log.marks.size());
        CHECK(result.world.tick == log.last_tick);
        CHECK(lesson::world_hash(result.world) == log.marks.back().world_hash);
    }
}

TEST_CASE("a changed action shows at the first mark behind it") {
    const auto turns_the_thermostat = [](const Log& life) {
        return std::any_of(life.entries.begin(), life.entries.end(), [](const Log::Entry& entry) {
            return entry.action.verb == bench::Verb::thermostat_set;
        });
    };
    Log log;
    for (std::uint64_t seed = 3; !turns_the_thermostat(log) && seed < 40; ++seed)
        log = lightoff::test::record_random_life(seed, 600.0);
    int changed = 0;
    for (std::size_t i = 0; i < log.entries.size(); ++i) {
        Log other = log;
        bench::Action& action = other.entries[i].action;
        if (action.verb != bench::Verb::thermostat_set || is_set_again_before_a_mark(log, i))
            continue;
        INFO("entry " << i << " at tick " << log.entries[i].tick);
        action.value += 100; // a tenth of a kelvin
        const auto result = replay(other);
        REQUIRE(result.divergence);
        CHECK(result.divergence->what == "the World differs");
        const std::uint64_t begun = mark_after_begin(log, log.entries[i]);
        CHECK(result.divergence->tick >= begun);
        CHECK(result.divergence->tick <= mark_after(log, log.entries[i]));
        CHECK(result.divergence->tick == result.world.tick);
        ++changed;
    }
    CHECK(changed >= 1);
}

TEST_CASE("an action left out shows; so does another seed") {
    const Log log = lightoff::test::record_random_life(4, 300.0);
    int left_out = 0;
    for (std::size_t i = 0; i < log.entries.size(); i += 3) {
        if (log.entries[i].action.verb == bench::Verb::wait)
            continue;
        INFO("entry " << i << " at tick " << log.entries[i].tick);
        Log missing = log;
        missing.entries.erase(missing.entries.begin() + static_cast<std::ptrdiff_t>(i));
        const auto result = replay(missing);
        if (result.divergence) { // something that was set to what it was already leaves no trace once done
            CHECK(result.divergence->tick >= mark_after_begin(log, log.entries[i]));
            ++left_out;
        }
    }
    CHECK(left_out >= 1);

    Log other_seed = log;
    other_seed.seed = 5;
    const auto result = replay(other_seed);
    REQUIRE(result.divergence);
    CHECK(result.divergence->tick == log.marks.front().tick);
    CHECK(result.marks_compared == 1);
    CHECK(result.divergence->recorded_hash == log.marks.front().world_hash);
    CHECK(result.divergence->replayed_hash != result.divergence->recorded_hash);
}

TEST_CASE("a recorded action that is refused ends the replay and says why") {
    Log log = lightoff::test::record_random_life(0, 30.0);
    log.entries.clear();
    log.marks.clear();
    bench::Action door;
    door.verb = bench::Verb::burner_door;
    door.value = 1; // it is on
    log.entries.push_back({7, door});
    const auto result = replay(log);
    REQUIRE(result.divergence);
    CHECK(result.divergence->tick == 7);
    CHECK(result.divergence->what ==
          "a recorded action is refused: The burner compartment door is already on.");
}

TEST_CASE("a mark that doesn't fit is told by its tick") {
    Log log = lightoff::test::record_random_life(1, 100.0);
    log.marks[4].world_hash ^= 1U;
    const auto result = replay(log);
    REQUIRE(result.divergence);
    CHECK(result.divergence->tick == 1000);
    CHECK(result.marks_compared == 5);
}
