// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace lightoff::bench {

/// The first number, in the order of the World's field list, that two Worlds do not share.
struct WorldDifference {
    std::uint64_t tick = 0; ///< of the first World
    std::string part;       ///< "state.draft", "condition.wiring", "hands"
    std::string field;      ///< below the part: "inducer.speed"
    std::string unit;
    std::string left; ///< shortest text that gives the same bits
    std::string right;
};

/// None if they are the same, bit for bit. Slow: for replay, tests and messages.
std::optional<WorldDifference> first_difference(const World& left, const World& right);

/// "tick 1200, state.draft: inducer.speed is 321.4 rad/s in one and 321.5 rad/s in the other".
std::string describe(const WorldDifference& difference);

} // namespace lightoff::bench
