// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/grade.hpp"
#include "lesson/review.hpp"

namespace lightoff::lesson {

/// Marks for a seasonal tune-up: checks measured, conditions found, values as found and as left, what was
/// corrected, what was proved. A value with no reading behind it earns nothing.
Grade judge_tune_up(const bench::Site& site, const Rubric& rubric, Review& review);

} // namespace lightoff::lesson
