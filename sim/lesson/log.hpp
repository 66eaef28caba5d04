// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"

#include <cstdint>
#include <vector>

namespace lightoff::lesson {

inline constexpr std::uint64_t kMarkTicks = 200; ///< a mark every 10 s

/// What was done in an attempt, and what the World came to at the marks.
struct Log {
    struct Entry {
        std::uint64_t tick = 0; ///< when the action began
        bench::Action action;
    };
    struct Mark {
        std::uint64_t tick = 0;
        std::uint64_t world_hash = 0;
    };
    std::uint64_t seed = 0;
    std::vector<Entry> entries; ///< in order of their ticks
    std::vector<Mark> marks;    ///< in order of their ticks
    std::uint64_t last_tick = 0;
};

/// Hash of the whole World, field by field.
std::uint64_t world_hash(const bench::World& world);

} // namespace lightoff::lesson
