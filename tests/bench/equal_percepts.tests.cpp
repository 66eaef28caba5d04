// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/captions.hpp"
#include "bench/inverse.hpp"
#include "bench/offers.hpp"
#include "support/random_life.hpp"
#include "support/rig.hpp"
#include "units/fields.hpp"

#include <algorithm>
#include <cstring>
#include <type_traits>

// What may be done, why not, and what captions say gives nothing away: two Worlds that nobody could tell
// apart give the same. Searched for at random, between Worlds that differ in everything else.

using lightoff::bench::Percept;
using lightoff::bench::World;
using lightoff::test::RandomHands;
using lightoff::test::Rig;
namespace bench = lightoff::bench;
namespace faults = lightoff::faults;
namespace units = lightoff::units;

// Offers and the act that undoes another can't know more: they are not even given a World.
static_assert(std::is_same_v<decltype(&bench::offered),
                             std::vector<bench::Choice> (*)(const bench::Site&, bench::Verb, std::size_t)>);
static_assert(std::is_same_v<decltype(&bench::inverse_of),
                             std::optional<bench::Action> (*)(const bench::Action&, const Percept&)>);

namespace {

#ifdef NDEBUG
constexpr std::uint64_t kPairs = 60;
#else
constexpr std::uint64_t kPairs = 8; // unoptimised, or under sanitizers
#endif

const bench::Site& site() {
    return lightoff::test::reference_site();
}

bool alike(const World& a, const World& b) {
    return bench::perceive(site(), a) == bench::perceive(site(), b);
}

/// A much broken furnace after some random work, with whoever writes captions.
struct Life {
    Rig rig;
    RandomHands hands;
    bench::CaptionWatch watch{site()};

    explicit Life(std::uint64_t seed) : rig(seed), hands(seed, {.rests = 0, .longest_wait_s = 10}) {
        const auto& all = site().catalogue.faults;
        for (int i = 0; i < 4; ++i)
            faults::apply(site().catalogue, all[hands.random(all.size())], 0.9, rig.world.condition,
                          rig.world.inputs);
        rig.run(10.0); // the scenario's own history is over
        const std::uint64_t actions = 20 + hands.random(40);
        for (std::uint64_t i = 0; i < actions; ++i) {
            if (const auto action = hands.choose(site(), rig.world))
                bench::begin(site(), rig.world, *action);
            for (std::uint64_t ticks = 0; rig.world.hands.busy != 0 || ticks < 5; ++ticks) {
                rig.run(0.05);
                watch.observe(rig.world);
            }
        }
    }
};

/// Where the numbers of a World stand that nobody is shown as they are.
struct Place {
    std::size_t offset;
    std::size_t size;
};
std::vector<Place> places_of(const World& world) {
    std::vector<Place> places;
    const auto* start = reinterpret_cast<const char*>(&world);
    const auto add = [&](const auto& value) {
        places.push_back(
            {static_cast<std::size_t>(reinterpret_cast<const char*>(&value) - start), sizeof value});
    };
    add(world.seed);
    units::for_each_value(world.state, add);
    units::for_each_value(world.condition, add);
    units::for_each_value(world.inputs, add);
    units::for_each_value(world.bag, add);
    units::for_each_value(world.handiwork, add);
    return places;
}

/// `world` with every number of `other` that can be put into it, one after another in a random order, without
/// anybody noticing. Counts the numbers that differ.
World graft(const World& world, const World& other, RandomHands& dice, int& differing) {
    std::vector<Place> places = places_of(world);
    for (std::size_t i = places.size(); i > 1; --i)
        std::swap(places[i - 1], places[dice.random(i)]);
    const Percept percept = bench::perceive(site(), world);
    World mixed = world;
    const auto put = [&](const Place& place, const World& from) {
        std::memcpy(reinterpret_cast<char*>(&mixed) + place.offset,
                    reinterpret_cast<const char*>(&from) + place.offset, place.size);
    };
    const auto differs = [&](const Place& place) {
        return std::memcmp(reinterpret_cast<const char*>(&world) + place.offset,
                           reinterpret_cast<const char*>(&other) + place.offset, place.size) != 0;
    };
    for (const Place& place : places) {
        if (!differs(place))
            continue;
        put(place, other);
        if (bench::perceive(site(), mixed) == percept)
            ++differing;
        else
            put(place, world);
    }
    return mixed;
}

/// Every verb with every name that it may take; of two names, and of numbers, some.
std::vector<bench::Action> everything(RandomHands& hands) {
    std::vector<bench::Action> actions;
    for (const bench::VerbSpec& spec : bench::verbs()) {
        if (spec.word_count() == 0)
            actions.push_back({spec.verb, 0, 0});
        else if (spec.word_count() == 1 && bench::range_of(spec.words[0]).empty())
            for (const bench::Choice& choice : bench::choices(site(), spec.words[0]))
                actions.push_back({spec.verb, 0, choice.value});
    }
    for (int i = 0; i < 2000; ++i)
        if (const auto action = hands.any_action(site()))
            actions.push_back(*action);
    return actions;
}

bool same_verdict(const World& a, const World& b, const bench::Action& action) {
    const bench::Verdict one = bench::check(site(), a, action);
    const bench::Verdict other = bench::check(site(), b, action);
    return one.allowed == other.allowed && one.reason == other.reason &&
           one.duration_ticks == other.duration_ticks;
}

} // namespace

TEST_CASE("Worlds mixed of two without anybody noticing give equal verdicts and captions") {
    int differing = 0;
    std::uint64_t allowed = 0;
    for (std::uint64_t pair = 0; pair < kPairs; ++pair) {
        Life life(4000 + 2 * pair);
        const Life other(4001 + 2 * pair);
        const World& world = life.rig.world;
        const World mixed = graft(world, other.rig.world, life.hands, differing);
        REQUIRE(alike(world, mixed));
        for (const bench::Action& action : everything(life.hands)) {
            allowed += bench::check(site(), world, action).allowed ? 1U : 0U;
            if (!same_verdict(world, mixed, action))
                FAIL_CHECK("pair " << pair << ": " << bench::format_action(site(), action) << ": "
                                   << bench::check(site(), world, action).reason << " / "
                                   << bench::check(site(), mixed, action).reason);
        }
        bench::CaptionWatch watch = life.watch;
        bench::CaptionWatch other_watch = life.watch;
        watch.observe(world);
        other_watch.observe(mixed);
        CHECK(watch.captions() == other_watch.captions());
    }
    WARN(kPairs << " pairs, " << differing << " numbers differ, " << allowed << " actions allowed");
    CHECK(static_cast<std::uint64_t>(differing) > 100 * kPairs);
    CHECK(allowed > 100 * kPairs);
}

TEST_CASE("two faults tell themselves by nothing but what can be perceived") {
    const auto& all = site().catalogue.faults;
    std::uint64_t compared = 0;
    std::size_t said = 0;
    std::uint64_t told_apart = 0;
    for (std::uint64_t pair = 0; pair < 2 * kPairs; ++pair) {
        Rig rig(pair);
        Rig other(pair);
        RandomHands hands(5000 + pair, {.rests = 0, .longest_wait_s = 10});
        for (Rig* one : {&rig, &other})
            faults::apply(site().catalogue, all[hands.random(all.size())], 0.9, one->world.condition,
                          one->world.inputs);
        bench::CaptionWatch watch(site());
        bench::CaptionWatch other_watch(site());
        for (int tick = 0; tick < 4000 && alike(rig.world, other.world); ++tick) {
            watch.observe(rig.world);
            other_watch.observe(other.world);
            ++compared;
            if (tick % 20 == 0)
                for (int i = 0; i < 20; ++i)
                    if (const auto action = hands.any_action(site());
                        action && !same_verdict(rig.world, other.world, *action))
                        FAIL_CHECK("pair " << pair << ", tick " << tick << ": "
                                           << bench::format_action(site(), *action));
            if (const auto action = tick % 40 == 0 ? hands.choose(site(), rig.world) : std::nullopt) {
                bench::begin(site(), rig.world, *action);
                CHECK(bench::begin(site(), other.world, *action).allowed);
            }
            rig.run(0.05);
            other.run(0.05);
        }
        CHECK(watch.captions() == other_watch.captions());
        said += watch.captions().size();
        told_apart += alike(rig.world, other.world) ? 0U : 1U;
    }
    WARN(2 * kPairs << " pairs, " << told_apart << " told apart, " << compared << " ticks alike, " << said
                    << " captions");
    CHECK(told_apart > kPairs / 2);
    CHECK(compared > 500 * kPairs);
    CHECK(said > 5 * kPairs);
}
