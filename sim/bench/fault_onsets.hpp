// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "faults/catalogue.hpp"

#include <cstdint>
#include <vector>

namespace lightoff::bench {

/// Lays the onsets of a fault that is not there from the start but by `trigger`, not before `tick`. A short
/// that waits is an open bridge, put into `condition`. std::invalid_argument if no bridge is free.
void lay_waiting(const faults::Catalogue& catalogue, const faults::Fault& fault, double severity,
                 faults::Trigger trigger, std::uint64_t tick, furnace::Condition& condition,
                 std::vector<Onset>& onsets);

} // namespace lightoff::bench
