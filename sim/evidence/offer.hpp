// SPDX-License-Identifier: MIT
#pragma once
#include "evidence/cause.hpp"

#include <string>
#include <vector>

namespace lightoff::evidence {

/// What one outcome of a test would mean.
struct Meaning {
    std::string shows;         ///< "24.3 V", "the inducer runs"
    std::vector<Cause> causes; ///< that would show it, ascending
};

/// A test that could be made now.
struct Offer {
    int test = -1;    ///< place in Bank::tests
    std::string what; ///< "volts, board.W to common, as it stands"
    int pairs = 0;    ///< of fitting causes that it tells apart
    double minutes = 0.0;
    double pairs_a_minute = 0.0;
    std::vector<Meaning> meanings;
};

} // namespace lightoff::evidence
