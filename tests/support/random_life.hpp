// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "units/random.hpp"

#include <cstdint>
#include <map>
#include <optional>

/// Somebody who does allowed things at random: for tests that any life of a World must pass.
namespace lightoff::test {

class RandomHands {
public:
    explicit RandomHands(std::uint64_t seed) : seed_(seed) {}

    /// Nobody waits for a new heat exchanger in a test.
    static constexpr std::uint64_t kPatienceTicks = 20 * 30;

    /// A random action that may be done in this World now; none if nothing was found or the hands rest.
    std::optional<bench::Action> choose(const bench::Site& site, const bench::World& world) {
        if (random(4) != 0)
            return std::nullopt;
        for (int attempt = 0; attempt < 10; ++attempt) {
            const std::optional<bench::Action> action = any_action(site);
            if (!action)
                continue;
            const bench::Verdict verdict = bench::check(site, world, *action);
            if (verdict.allowed && verdict.duration_ticks <= kPatienceTicks)
                return action;
        }
        return std::nullopt;
    }
    std::uint64_t random(std::uint64_t below) { return units::random_bits(seed_, 7, ++drawn_) % below; }

    /// Any action that can be written, allowed or not; none if the site has no word of the kind. Never the
    /// one that ends the call.
    std::optional<bench::Action> any_action(const bench::Site& site) {
        const auto verbs = bench::verbs();
        const bench::VerbSpec& spec = verbs[random(verbs.size())];
        if (spec.verb == bench::Verb::sign_off)
            return std::nullopt;
        bench::Action action;
        action.verb = spec.verb;
        for (std::size_t i = 0; i < spec.word_count(); ++i) {
            const std::optional<std::int32_t> word = any_word(site, spec.words[i]);
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
    std::optional<std::int32_t> any_word(const bench::Site& site, bench::Word word) {
        switch (word) {
        case bench::Word::seconds:
            return static_cast<std::int32_t>(1 + random(30));
        case bench::Word::temperature:
            return static_cast<std::int32_t>(285000 + 100 * random(150));
        case bench::Word::turns:
            return random(2) != 0 ? 1 + static_cast<std::int32_t>(random(8))
                                  : -1 - static_cast<std::int32_t>(random(8));
        case bench::Word::reading:
            return static_cast<std::int32_t>(random(5));
        case bench::Word::step:
            return static_cast<std::int32_t>(random(7));
        default:
            break;
        }
        auto& known = choices_[word]; // asked for thousands of times
        if (known.empty())
            known = bench::choices(site, word);
        if (known.empty())
            return std::nullopt;
        return known[random(known.size())].value;
    }

    std::uint64_t seed_;
    std::uint64_t drawn_ = 0;
    std::map<bench::Word, std::vector<bench::Choice>> choices_;
};

} // namespace lightoff::test
