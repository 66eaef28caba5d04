// SPDX-License-Identifier: MIT
#include "gui/trace/scale.hpp"

#include <cmath>

namespace lightoff::trace {
namespace {

constexpr double kSteps = 4; ///< of a lane's scale, at the most
constexpr double kRoom = 1.04;
constexpr double kLeastDegrees = 20;

double round_step(double span) {
    double power = 1e-9;
    while (true) {
        for (const double k : {1.0, 2.0, 5.0}) {
            if (span <= kSteps * k * power) {
                return k * power;
            }
        }
        power *= 10;
    }
}

} // namespace

void fit_scale(Lane& lane, const Extremes& values) {
    if (!lane.words.empty()) {
        lane.low = 0;
        lane.high = static_cast<float>(std::max<std::size_t>(1, lane.words.size() - 1));
        return;
    }
    if (values.empty()) {
        return;
    }
    const bool from_nothing = lane.unit != "°F";
    const double low =
        from_nothing ? std::min(0.0, static_cast<double>(values.low)) : static_cast<double>(values.low);
    const double high =
        from_nothing ? std::max(0.0, static_cast<double>(values.high)) : static_cast<double>(values.high);
    // Finer than its figures says nothing, nor do tenths of a degree of air.
    const double least = from_nothing ? std::pow(10.0, -lane.decimals) * 2 * kSteps : kLeastDegrees;
    const double step = round_step(std::max(least, kRoom * (high - low)));
    lane.low = static_cast<float>(std::floor(low / step + 1e-9) * step);
    lane.high = static_cast<float>(std::ceil(high / step - 1e-9) * step);
    if (lane.high <= lane.low) {
        lane.high = lane.low + static_cast<float>(step);
    }
}

} // namespace lightoff::trace
