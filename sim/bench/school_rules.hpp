// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::bench {

/// What a school allows; data of the class.
struct SchoolRules {
    bool jumpers_allowed = true;
    bool live_testing_allowed = true;
};

} // namespace lightoff::bench
