// SPDX-License-Identifier: MIT
#include "evidence/fit.hpp"

#include "evidence/doubt.hpp"

#include <algorithm>

namespace lightoff::evidence {
namespace {

Numbers of(const Prediction& p) {
    return {p.low, p.high, p.half_width};
}

Numbers both(const Numbers& a, const Numbers& b) {
    if (a.none() || b.none())
        return a.none() ? b : a;
    return {std::min(a.low, b.low), std::max(a.high, b.high), std::max(a.half_width, b.half_width)};
}

bool meet(const Numbers& a, const Numbers& b) {
    if (a.none() || b.none())
        return a.none() == b.none();
    const double reach = a.half_width + b.half_width;
    return a.low - reach <= b.high && b.low - reach <= a.high;
}

bool bands_meet(const Prediction& a_low, const Prediction& a_high, const Prediction& b_low,
                const Prediction& b_high) {
    for (std::size_t i = 0; i < a_low.band.size(); ++i) {
        const auto a = std::minmax(a_low.band[i], a_high.band[i]);
        const auto b = std::minmax(b_low.band[i], b_high.band[i]);
        if (a.first > b.second || b.first > a.second)
            return false;
    }
    return true;
}

bool benches_meet(const Prediction& a_low, const Prediction& a_high, const Prediction& b_low,
                  const Prediction& b_high) {
    for (std::size_t i = 0; i < a_low.bench.size(); ++i)
        if (!meet(both(a_low.bench[i], a_high.bench[i]), both(b_low.bench[i], b_high.bench[i])))
            return false;
    return true;
}

Sensed sensed_by(const Prediction& low, const Prediction& high) {
    Sensed all = low.sensed;
    add(all, high.sensed);
    return all;
}

} // namespace

Prediction either(const Prediction& first, const Prediction& second) {
    Prediction p = first;
    const Numbers numbers = both(of(first), of(second));
    p.low = numbers.low;
    p.high = numbers.high;
    p.half_width = numbers.half_width;
    for (std::size_t i = 0; i < p.bench.size(); ++i)
        p.bench[i] = both(first.bench[i], second.bench[i]);
    p.possible = first.possible || second.possible;
    add(p.sensed, second.sensed);
    return p;
}

bool fits(const Observation& seen, const bench::Reading* reading, const Prediction& low,
          const Prediction& high) {
    if (!low.possible && !high.possible)
        return false;
    if (reading == nullptr)
        return alike(seen.sensed, low.sensed, high.sensed);
    if (reading->part < 0)
        return meet(numbers_of(reading->display), both(of(low), of(high)));
    Prediction looked;
    for (std::size_t i = 0; i < reading->bands.size() && i < looked.band.size(); ++i)
        looked.band[i] = static_cast<std::uint8_t>(reading->bands[i]);
    for (std::size_t i = 0; i < reading->values.size(); ++i)
        looked.bench[i] = numbers_of(reading->values[i]);
    if (!benches_meet(looked, looked, low, high))
        return false;
    const auto differs = [&](const Prediction& p) {
        return ((seen.controls ^ p.controls) & seen.seen_controls) != 0;
    };
    return bands_meet(looked, looked, low, high) && !(differs(low) && differs(high));
}

bool told_apart(const Observation& seen, const Span& a, const Span& b) {
    const bool a_possible = a.low->possible || a.high->possible;
    const bool b_possible = b.low->possible || b.high->possible;
    if (a_possible != b_possible)
        return true;
    if (seen.reading == 0)
        return !alike(sensed_by(*a.low, *a.high), b.low->sensed, b.high->sensed);
    const bool controls_differ = ((a.low->controls ^ b.low->controls) &
                                  (a.high->controls ^ b.high->controls) & seen.seen_controls) != 0;
    return controls_differ || !bands_meet(*a.low, *a.high, *b.low, *b.high) ||
           !benches_meet(*a.low, *a.high, *b.low, *b.high) ||
           !meet(both(of(*a.low), of(*a.high)), both(of(*b.low), of(*b.high)));
}

} // namespace lightoff::evidence
