// SPDX-License-Identifier: MIT
#include "units/pinned_math.hpp"

namespace lightoff::units {} // namespace lightoff::units
