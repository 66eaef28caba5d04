// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/debrief.hpp"
#include "report/drawing.hpp"

namespace lightoff::report {

/// How the number of causes still fitting fell: theirs against the coach's.
Drawing staircase_picture(const bench::Site& site, const lesson::Debrief& debrief);

/// The attempt on one line of time: what was done, read, noticed and risked, and the readouts that tell most.
Drawing timeline_picture(const bench::Site& site, const lesson::Debrief& debrief);

/// A round step for a scale: 1, 2 or 5 times a power of ten, at most `most` steps over the span.
double round_step(double span, int most);
/// The same for minutes on an axis of time: 1, 2, 5, 10, 15, 30, 60 ...
double minute_step(double minutes, int most);

} // namespace lightoff::report
