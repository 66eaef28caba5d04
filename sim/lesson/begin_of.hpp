// SPDX-License-Identifier: MIT
#pragma once
#include "evidence/begin.hpp"
#include "lesson/scenario.hpp"

#include <cstdint>
#include <vector>

/// A call as evidence takes it.
namespace lightoff::lesson {

/// The call without what is wrong.
evidence::Begin begin_of(const bench::Site& site, const Scenario& scenario, std::uint64_t seed);

/// What is wrong, in the order of the scenario.
std::vector<evidence::RealFault> real_faults(const bench::Site& site, const Scenario& scenario);

} // namespace lightoff::lesson
