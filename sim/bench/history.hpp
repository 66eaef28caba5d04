// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace lightoff::bench {

/// An action and when it is due.
struct TimedAction {
    std::uint64_t tick = 0;
    Action action;
};

/// Plays actions while time runs; one that is due waits for the hands, one that is refused is passed over.
/// For whoever wants to look on: the caller may stop at any tick and go on.
class History {
public:
    /// `site` must outlive it; the order of `steps` counts only among those of one tick.
    History(const Site& site, std::vector<TimedAction> steps);
    void run(World& world, furnace::Workspace& workspace, std::uint64_t until_tick);

private:
    const Site* site_;
    std::vector<TimedAction> steps_;
    std::size_t next_ = 0;
};

} // namespace lightoff::bench
