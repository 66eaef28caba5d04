// SPDX-License-Identifier: MIT
#pragma once
#include "gui/trace/chart.hpp"
#include "gui/trace/recording.hpp"

namespace lightoff::trace {

/// Gives a lane edges of round numbers that hold all these values; those of a temperature need not hold 0.
void fit_scale(Lane& lane, const Extremes& values);

} // namespace lightoff::trace
