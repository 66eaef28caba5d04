// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/log.hpp"
#include "lesson/scenario.hpp"

#include <functional>
#include <optional>
#include <string>

namespace lightoff::lesson {

/// Where a replay left the recording.
struct Divergence {
    std::uint64_t tick = 0;
    std::string what; ///< "the World differs", or the refusal of a recorded action
    std::uint64_t recorded_hash = 0;
    std::uint64_t replayed_hash = 0;
};

struct ReplayResult {
    std::optional<Divergence> divergence; ///< none: the same, bit for bit, at every mark
    std::size_t marks_compared = 0;
    bench::World world; ///< at the end, or where it diverged
};

/// Runs a recorded attempt again from its scenario and compares the World at every mark. `look`, if given, is
/// shown the World at every mark.
ReplayResult replay(const bench::Site& site, const Scenario& scenario, const Log& log,
                    const std::function<void(const bench::World&)>& look = {});

} // namespace lightoff::lesson
