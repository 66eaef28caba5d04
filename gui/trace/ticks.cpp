// SPDX-License-Identifier: MIT
#include "gui/trace/ticks.hpp"

#include <array>
#include <cmath>
#include <cstdio>

namespace lightoff::trace {
namespace {

constexpr std::array<double, 24> kSteps_s{0.1,  0.2,   0.5,   1,     2,     5,      10,     15,
                                          30,   60,    120,   300,   600,   900,    1800,   3600,
                                          7200, 10800, 21600, 43200, 86400, 172800, 432000, 864000};

} // namespace

double time_step(double span_s, int most) {
    for (const double step : kSteps_s) {
        if (span_s <= step * most) {
            return step;
        }
    }
    return kSteps_s.back();
}

std::vector<double> marks(double from_s, double to_s, double step_s) {
    std::vector<double> found;
    const double slack = step_s * 1e-9;
    for (double n = std::ceil((from_s - slack) / step_s); n * step_s <= to_s + slack; n += 1) {
        found.push_back(n * step_s);
    }
    return found;
}

std::string time_label(double t_s, double step_s) {
    const bool tenths = step_s < 1;
    const auto total = std::llround(std::abs(t_s) * (tenths ? 10 : 1));
    const long long whole_s = tenths ? total / 10 : total;
    std::array<char, 48> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%lld:%02lld", whole_s / 60, whole_s % 60);
    std::string label = (t_s < 0 && total != 0 ? "−" : "") + std::string(buffer.data());
    return tenths ? label + "." + std::to_string(total % 10) : label;
}

} // namespace lightoff::trace
