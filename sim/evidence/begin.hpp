// SPDX-License-Identifier: MIT
#pragma once
#include "bench/history.hpp"
#include "faults/catalogue.hpp"

#include <cstdint>
#include <vector>

namespace lightoff::evidence {

using bench::TimedAction;

/// A fault as it really is in this call.
struct RealFault {
    int fault = 0;
    double severity = 1.0;
    bool comes_and_goes = false; ///< now and then, from the seed
};

/// How a call begins. What is wrong is not in it: `world` is the furnace at tick 0 as the seed built it and
/// as the house, the weather and the thermostat are, without the call's faults.
struct Begin {
    bench::World world;
    std::vector<TimedAction> history; ///< before the visit; refused actions are passed over
    std::uint64_t arrive_after_ticks = 0;
};

} // namespace lightoff::evidence
