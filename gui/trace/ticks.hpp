// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <vector>

namespace lightoff::trace {

/// Distance in seconds between marks of a time axis: the least round step (1, 2, 5, 10, 15, 30 of a second,
/// minute or hour) that gives at most `most` of them over the span.
double time_step(double span_s, int most);
/// Multiples of the step within from..to, both included.
std::vector<double> marks(double from_s, double to_s, double step_s);
/// Minutes and seconds, as every clock here: 0:05, 12:30, 62:30; tenths where the step is under a second.
std::string time_label(double t_s, double step_s = 1);

} // namespace lightoff::trace
