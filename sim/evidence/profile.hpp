// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "evidence/tests_on_offer.hpp"

#include <string>
#include <vector>

namespace lightoff::evidence {

/// One value that a test gives, SI or a whole number for words; OL is infinite.
struct Shown {
    double value = 0.0;
    double half_width = 0.0;
};
/// By the values of all tests, in their order.
using Profile = std::vector<Shown>;

/// What every test would show on a furnace that stands as it was found: as it stands; the most that is seen
/// while its power is switched off and on and the sequence runs (90 s); and the most in eight minutes of it.
/// True values with the accuracy of the instruments.
Profile make_profile(const bench::Site& site, const std::vector<Test>& tests, bench::World found,
                     furnace::Workspace& workspace);

/// Whether two furnaces, each between two severities, differ in a test beyond the accuracy.
bool told_apart(const Test& test, const Profile& a_low, const Profile& a_high, const Profile& b_low,
                const Profile& b_high);

/// What a test shows, in words.
std::string text_of(const bench::Site& site, const Test& test, const Profile& profile);

} // namespace lightoff::evidence
