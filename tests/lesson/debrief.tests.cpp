// SPDX-License-Identifier: MIT
#include "lesson/debrief.hpp"
#include "support/worked_call.hpp"
#include "units/constants.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace lightoff;
using test::WorkedCall;

namespace {

/// Runs the attempt straight through and compares the World with the film's, now and then.
class Comparer : public lesson::Onlooker {
public:
    Comparer(const bench::Site& site, const lesson::Film& film)
        : site_(&site), film_(&film), workspace_(site.model) {}
    void arrived(const bench::World& world) override { compare(world); }
    void before(const bench::World& world, const bench::Action&) override { compare(world); }
    void tick(const bench::World& world) override {
        if (world.tick % 331 == 0)
            compare(world);
    }
    int compared = 0;
    int different = 0;

private:
    void compare(const bench::World& world) {
        ++compared;
        different +=
            lesson::world_hash(film_->at(*site_, world.tick, workspace_)) == lesson::world_hash(world) ? 0
                                                                                                       : 1;
    }
    const bench::Site* site_;
    const lesson::Film* film_;
    furnace::Workspace workspace_;
};

double minutes(std::uint64_t tick, const lesson::Debrief& debrief) {
    return static_cast<double>(tick - debrief.story.arrived_tick) / (60.0 * units::ticks_per_second);
}

void check_lanes(const lesson::Tracks& tracks) {
    REQUIRE(tracks.lanes.size() > 30);
    CHECK(tracks.values.size() == tracks.lanes.size() * tracks.ticks.size());
    CHECK(std::is_sorted(tracks.ticks.begin(), tracks.ticks.end()));
    CHECK(std::all_of(tracks.values.begin(), tracks.values.end(), [](float v) { return std::isfinite(v); }));
}

} // namespace

TEST_CASE("a debrief tells what could have been known when, and what would have told more") {
    WorkedCall call("plugged-hose");
    const lesson::Log model_log = call.log(test::model_script("plugged-hose"));

    // Broken off half-way, nothing is lost: the same bank answers the next time.
    struct Enough {};
    double heard = 0.0;
    const auto break_off = [&](lesson::DebriefStage stage, double share) {
        heard = share;
        if (stage == lesson::DebriefStage::judging && share > 0.02)
            throw Enough{};
    };
    REQUIRE_THROWS_AS(call.debrief(model_log, break_off), Enough);
    CHECK(heard > 0.02);

    const lesson::Debrief model = call.debrief(model_log);
    const lesson::Grade straight =
        lesson::grade(call.site(), call.bundle().scenario, call.bundle().rubric, model_log, call.bank());
    CHECK(model.grade.mark == straight.mark);
    CHECK(model.grade.lines.size() == straight.lines.size());
    CHECK(model.twin == "deaf-board");
    CHECK(model.has_staircase);

    // The expert knew by a reading, before the first change.
    REQUIRE(model.knew.has_value());
    REQUIRE_FALSE(model.story.changes.empty());
    CHECK(model.knew->reading > 0);
    CHECK(model.knew->tick < model.story.changes.front().tick);
    CHECK(model.grade.mending_tick == model.story.changes.back().tick);
    CHECK(model.story.readings[static_cast<std::size_t>(model.knew->reading) - 1].tick == model.knew->tick);

    // Both ways begin with the same causes and end with the same few.
    REQUIRE_FALSE(model.coach.empty());
    CHECK(model.coach.front().still_fitting < model.fitting_on_arrival);
    for (std::size_t i = 1; i < model.coach.size(); ++i) {
        CHECK(model.coach[i].still_fitting <= model.coach[i - 1].still_fitting);
        CHECK(model.coach[i].minutes > model.coach[i - 1].minutes);
    }
    CHECK(model.coach.back().still_fitting <= model.grade.staircase.back().still_fitting);
    CHECK_FALSE(model.worths.empty());

    // Any moment can be looked at, and is the one that was.
    Comparer comparer(call.site(), model.story.film);
    lesson::play(call.site(), call.bundle().scenario, model_log, comparer);
    CHECK(comparer.compared > 60);
    CHECK(comparer.different == 0);
    furnace::Workspace workspace(call.site().model);
    CHECK(model.story.film.at(call.site(), 0, workspace).tick == model.story.arrived_tick);
    CHECK(model.story.film.at(call.site(), ~std::uint64_t{0}, workspace).tick == model.story.last_tick);
    check_lanes(model.story.tracks);

    // Whoever changes first knows later, and is told what would have told more at that moment.
    const lesson::Debrief guess = call.debrief(call.log(test::kGuessing));
    REQUIRE(guess.knew.has_value());
    const std::uint64_t changed = guess.story.changes.front().tick;
    CHECK(guess.knew->tick > changed);
    CHECK(guess.grade.mark < model.grade.mark);
    REQUIRE(guess.better.has_value());
    CHECK(guess.better->reading == 0);
    CHECK(guess.better->made_tick == changed);
    CHECK(guess.better->still_fitting > 1);
    CHECK(guess.better->offer.pairs > 0);
    CHECK(guess.better->offer.minutes > 0.0);
    CHECK(guess.better->offer.meanings.size() > 1);
    CHECK(minutes(guess.better->tick, guess) < 1.0);

    // The same again, bit for bit.
    const lesson::Debrief again = call.debrief(model_log);
    CHECK(again.story.tracks.values == model.story.tracks.values);
    CHECK(again.grade.mark == model.grade.mark);
    CHECK(again.story.captions == model.story.captions);
}

TEST_CASE("a long attempt keeps a bounded number of frames, and every moment of it") {
    const files::LoadedBundle bundle =
        files::load_bundle(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/call-for-heat.json");
    furnace::Workspace workspace(bundle.site.model);
    bench::World world = lesson::arrive(bundle.site, bundle.scenario, 0, workspace);
    lesson::Film film({{world.tick + 500, bench::parse_action(bundle.site, "thermostat-set 72F")}});
    film.see(world);
    const std::uint64_t last = world.tick + 2 * lesson::Film::kMostFrames * lesson::kMarkTicks;
    std::uint64_t middle_hash = 0;
    const std::uint64_t middle = world.tick + 77777;
    while (world.tick < last) {
        if (world.tick == film.entries().front().tick)
            bench::begin(bundle.site, world, film.entries().front().action);
        bench::advance(bundle.site, world, workspace, 1);
        film.see(world);
        if (world.tick == middle)
            middle_hash = lesson::world_hash(world);
    }
    CHECK(film.frames() <= lesson::Film::kMostFrames);
    CHECK(film.frames() > lesson::Film::kMostFrames / 4);
    CHECK(lesson::world_hash(film.at(bundle.site, middle, workspace)) == middle_hash);
    CHECK(lesson::world_hash(film.at(bundle.site, last, workspace)) == lesson::world_hash(world));
}
