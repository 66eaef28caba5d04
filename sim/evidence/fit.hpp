// SPDX-License-Identifier: MIT
#pragma once
#include "bench/notebook.hpp"
#include "evidence/furnace.hpp"
#include "evidence/record.hpp"

namespace lightoff::evidence {

/// Whether furnaces of two neighbouring severities, or anything between them, give what was seen or read: a
/// number within the accuracy of both displays, words that lie between theirs, senses alike. `reading` is
/// nullptr for a stretch of the senses. It is taken that between two neighbouring severities nothing lies
/// outside what those two show.
bool fits(const Observation& seen, const bench::Reading* reading, const Prediction& low,
          const Prediction& high);

/// What either of two furnaces gives; words of a look as in the first.
Prediction either(const Prediction& first, const Prediction& second);

/// Whether two causes, each between two severities, would have shown it differently, whatever the real
/// furnace shows.
struct Span {
    const Prediction* low = nullptr;
    const Prediction* high = nullptr;
};
bool told_apart(const Observation& seen, const Span& a, const Span& b);

} // namespace lightoff::evidence
