// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "units/random.hpp"

#include <cstdint>
#include <optional>

/// Somebody who does allowed things at random: for tests that any life of a World must pass.
namespace lightoff::test {

class RandomHands {
public:
    explicit RandomHands(std::uint64_t seed) : seed_(seed) {}

    /// A random action that may be done in this World now; none if nothing was found or the hands rest.
    std::optional<bench::Action> choose(const bench::Site& site, const bench::World& world) {
        if (random(4) != 0)
            return std::nullopt;
        for (int attempt = 0; attempt < 10; ++attempt) {
            const bench::Action action = any_action(site.model);
            if (bench::check(site, world, action).allowed)
                return action;
        }
        return std::nullopt;
    }
    std::uint64_t random(std::uint64_t below) { return units::random_bits(seed_, 7, ++drawn_) % below; }

private:
    bench::Action any_action(const furnace::Model& model) {
        const auto verbs = bench::verbs();
        bench::Action action;
        const bench::VerbSpec& spec = verbs[random(verbs.size())];
        action.verb = spec.verb;
        switch (spec.argument) {
        case bench::Argument::none:
            break;
        case bench::Argument::seconds:
            action.value = static_cast<std::int32_t>(1 + random(30));
            break;
        case bench::Argument::temperature:
            action.value = static_cast<std::int32_t>(285000 + 100 * random(150));
            break;
        case bench::Argument::on_off:
        case bench::Argument::heat_off:
        case bench::Argument::on_auto:
            action.value = static_cast<std::int32_t>(random(2));
            break;
        case bench::Argument::two_points: {
            const auto nodes = static_cast<std::uint64_t>(model.wiring.netlist.node_count());
            action.target = static_cast<std::uint16_t>(random(nodes));
            action.value = static_cast<std::int32_t>(random(nodes));
            break;
        }
        }
        return action;
    }

    std::uint64_t seed_;
    std::uint64_t drawn_ = 0;
};

} // namespace lightoff::test
