// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "bench/offers.hpp"
#include "units/random.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <utility>
#include <vector>

/// Somebody who does allowed things at random: for tests that any life of a World must pass.
namespace lightoff::test {

struct Habits {
    std::uint64_t rests = 3;                ///< times out of four that nothing is done
    std::uint64_t patience_ticks = 20 * 30; ///< nobody waits for a new heat exchanger in a test
    std::uint64_t longest_wait_s = 30;
    int tries = 10; ///< for something that may be done now
    /// What is done, the more often the more often it stands here; empty: everything.
    std::vector<bench::Verb> verbs{};
};

class RandomHands {
public:
    explicit RandomHands(std::uint64_t seed, Habits habits = {}) : seed_(seed), habits_(std::move(habits)) {}

    /// A random action that may be done in this World now; none if nothing was found or the hands rest.
    std::optional<bench::Action> choose(const bench::Site& site, const bench::World& world) {
        if (random(4) >= 4 - habits_.rests)
            return std::nullopt;
        for (int i = 0; i < habits_.tries; ++i) {
            const std::optional<bench::Action> action = any_action(site);
            if (!action)
                continue;
            const bench::Verdict verdict = bench::check(site, world, *action);
            if (verdict.allowed && verdict.duration_ticks <= habits_.patience_ticks)
                return action;
        }
        return std::nullopt;
    }
    std::uint64_t random(std::uint64_t below) { return units::random_bits(seed_, 7, ++drawn_) % below; }

    /// Any action that is offered, allowed now or not; none if the site has no word of the kind. Never the
    /// one that ends the call.
    std::optional<bench::Action> any_action(const bench::Site& site) {
        const bench::VerbSpec& spec = any_verb();
        if (spec.verb == bench::Verb::sign_off)
            return std::nullopt;
        bench::Action action;
        action.verb = spec.verb;
        for (std::size_t i = 0; i < spec.word_count(); ++i) {
            const std::optional<std::int32_t> word = any_word(site, spec, i);
            if (!word)
                return std::nullopt;
            if (i + 1 == spec.word_count())
                action.value = *word;
            else
                action.target = static_cast<std::uint16_t>(*word);
        }
        const bool two_ends = spec.words[1] == bench::Word::point || spec.words[1] == bench::Word::terminal;
        if (two_ends && action.target == action.value)
            return std::nullopt;
        return action;
    }

private:
    const bench::VerbSpec& any_verb() {
        const auto all = bench::verbs();
        return habits_.verbs.empty() ? all[random(all.size())]
                                     : bench::spec_of(habits_.verbs[random(habits_.verbs.size())]);
    }
    std::optional<std::int32_t> any_word(const bench::Site& site, const bench::VerbSpec& spec,
                                         std::size_t i) {
        switch (spec.words[i]) {
        case bench::Word::seconds:
            return static_cast<std::int32_t>(1 + random(habits_.longest_wait_s));
        case bench::Word::temperature:
            return static_cast<std::int32_t>(285000 + 100 * random(150));
        case bench::Word::turns:
            return random(2) != 0 ? 1 + static_cast<std::int32_t>(random(8))
                                  : -1 - static_cast<std::int32_t>(random(8));
        case bench::Word::reading:
            return static_cast<std::int32_t>(random(5));
        case bench::Word::step:
            return static_cast<std::int32_t>(random(7));
        case bench::Word::expected:
            return random(4) == 0 ? bench::kExpectsOverload : static_cast<std::int32_t>(random(130000));
        default:
            break;
        }
        auto& known = offered_[{spec.verb, i}]; // asked for thousands of times
        if (known.empty())
            known = bench::offered(site, spec.verb, i);
        if (known.empty())
            return std::nullopt;
        return known[random(known.size())].value;
    }

    std::uint64_t seed_;
    Habits habits_;
    std::uint64_t drawn_ = 0;
    std::map<std::pair<bench::Verb, std::size_t>, std::vector<bench::Choice>> offered_;
};

} // namespace lightoff::test
