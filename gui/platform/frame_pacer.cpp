// SPDX-License-Identifier: MIT
#include "gui/platform/frame_pacer.hpp"

#include <algorithm>

namespace lightoff::platform {

double FramePacer::wait_s(double since_start_s, double wanted_in_s, bool typing) const {
    double period_s = idle(wanted_in_s) ? wanted_in_s : kFrame_s;
    if (typing) {
        period_s = std::min(period_s, kBlink_s);
    }
    return std::max(0.0, std::min(period_s, kLongest_s) - since_start_s);
}

void FramePacer::drew() {
    if (settling_ > 0) {
        --settling_;
    }
}

} // namespace lightoff::platform
