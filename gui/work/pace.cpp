// SPDX-License-Identifier: MIT
#include "gui/work/pace.hpp"

#include <algorithm>

namespace lightoff::work {
namespace {

constexpr double kTicks_per_s = 20.0;
constexpr double kLongestAct_s = 2.5;         ///< on the wall
constexpr double kMostTicks_per_s = 20'000.0; ///< that a slow machine computes in good time
constexpr double kMostAtOnce = 2'000.0;

} // namespace

void Pace::begin(std::uint64_t ticks) {
    hurry_ = std::min(static_cast<double>(ticks) / kLongestAct_s, kMostTicks_per_s);
}

std::uint64_t Pace::due(double wall_s, std::uint64_t ticks_busy, bool reading) {
    const bool busy = ticks_busy > 0;
    const bool stands = held_ || reading;
    if (!busy)
        hurry_ = 0.0;
    if (stands && !busy) {
        left_over_ = 0.0;
        return 0;
    }
    const double rate = std::max(kTicks_per_s * kSpeeds[speed_], hurry_);
    left_over_ = std::min(left_over_ + wall_s * rate, kMostAtOnce);
    auto ticks = static_cast<std::uint64_t>(left_over_);
    if (busy && ticks >= ticks_busy && (stands || hurry_ > kTicks_per_s * kSpeeds[speed_])) {
        left_over_ = 0.0; // what was hurried ends with the act
        return ticks_busy;
    }
    left_over_ -= static_cast<double>(ticks);
    return ticks;
}

} // namespace lightoff::work
