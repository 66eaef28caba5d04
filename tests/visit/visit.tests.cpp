// SPDX-License-Identifier: MIT
#include "visit/visit.hpp"

#include "files/attempt_log.hpp"
#include "files/bundle_loader.hpp"
#include "files/temporary_folder.hpp"
#include "lesson/log.hpp"
#include "lesson/replay.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;

namespace {

const visit::Visit::Listener kNobody{[](const bench::Caption&) {}, [](const bench::Reading&, std::size_t) {},
                                     [] { return false; }};

} // namespace

TEST_CASE("an action begun and let run tick by tick comes to the same as one done at once", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    visit::Visit at_once(bundle, 0);
    visit::Visit by_ticks(bundle, 0);
    for (const char* text : {"disconnect off", "burner-door off", "look pressure_hose", "wait 30s"}) {
        const bench::Action action = bench::parse_action(bundle.site, text);
        REQUIRE(at_once.act(action, "script", kNobody).empty());
        REQUIRE(by_ticks.begin(action, "student").empty());
        while (by_ticks.world().hands.busy != 0)
            by_ticks.tick();
    }
    CHECK(lesson::world_hash(at_once.world()) == lesson::world_hash(by_ticks.world()));
    CHECK(at_once.captions() == by_ticks.captions());
    CHECK(at_once.notebook().readings().size() == by_ticks.notebook().readings().size());
    CHECK(by_ticks.actions() == 4);
}

TEST_CASE("a second action is refused while the hands are busy, and is not written down", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    visit::Visit visit(bundle, 0);
    REQUIRE(visit.begin(bench::parse_action(bundle.site, "burner-door off"), "student").empty());
    CHECK_FALSE(visit.begin(bench::parse_action(bundle.site, "disconnect off"), "student").empty());
    CHECK(visit.actions() == 1);
}

TEST_CASE("an attempt left at any tick replays and is taken up where it was left", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    const TemporaryFolder folder;
    const std::string path = folder.file("left.jsonl");
    const int ticks_after = GENERATE(0, 1, 7); // none: the window is closed in the very tick the act begins
    CAPTURE(ticks_after);
    std::uint64_t left_hash = 0;
    {
        visit::Visit visit(bundle, 0);
        visit.record(path);
        REQUIRE(visit.act(bench::parse_action(bundle.site, "wait 30s"), "student", kNobody).empty());
        REQUIRE(visit.begin(bench::parse_action(bundle.site, "disconnect off"), "student").empty());
        for (int i = 0; i < ticks_after; ++i)
            visit.tick();
        left_hash = lesson::world_hash(visit.world());
        visit.leave();
    }
    const files::Attempt attempt = files::read_attempt(path, furnace::kPhysicsVersion);
    const lesson::Log log = files::log_of(attempt, path, bundle.site);
    const lesson::ReplayResult replayed = lesson::replay(bundle.site, bundle.scenario, log);
    CHECK_FALSE(replayed.divergence);
    CHECK(lesson::world_hash(replayed.world) == left_hash);

    visit::Visit taken_up(bundle, 0);
    REQUIRE_NOTHROW(taken_up.resume(path));
    CHECK(taken_up.actions() == 2);
    taken_up.leave();
}

TEST_CASE("what would stop all work is known before it is done, and ends the call when it is", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    visit::Visit visit(bundle, 0);
    const bench::Action shut = bench::parse_action(bundle.site, "gas-cock off");
    const bench::Action open_joint = bench::parse_action(bundle.site, "replace gas_valve");
    CHECK_FALSE(visit.would_stop(open_joint)); // a door is in the way: it can't be done at all
    REQUIRE(visit.act(bench::parse_action(bundle.site, "burner-door off"), "script", kNobody).empty());
    CHECK(visit.would_stop(open_joint) == bench::Hazard::gas_open_apart);
    CHECK_FALSE(visit.would_stop(shut));
    CHECK(visit.hazards().empty()); // asking has done nothing
    CHECK(visit.stopped() == nullptr);
    SECTION("with the cock shut it stops nothing") {
        REQUIRE(visit.act(shut, "script", kNobody).empty());
        CHECK_FALSE(visit.would_stop(open_joint));
    }
    SECTION("with the cock open it is the end") {
        REQUIRE(visit.begin(open_joint, "script").empty());
        REQUIRE(visit.stopped() != nullptr);
        CHECK(visit.stopped()->hazard == bench::Hazard::gas_open_apart);
    }
}
