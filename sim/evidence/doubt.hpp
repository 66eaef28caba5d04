// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"

#include <algorithm>

namespace lightoff::evidence {

/// Leads pick up tens of millivolts from whatever runs beside them (common practice, no source).
inline constexpr double kStray_v = 0.05;

/// How far a number may be from the truth before it counts as another one, SI: the display's accuracy; on AC
/// volts never less than what leads pick up. Nobody tells one cause from another by millivolts.
inline double doubt(instruments::Quantity quantity, const instruments::Value& value) {
    return quantity == instruments::Quantity::ac_volts ? std::max(kStray_v, value.half_width)
                                                       : value.half_width;
}

} // namespace lightoff::evidence
