// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"
#include "bench/site.hpp"

#include <string>

namespace lightoff::explore {

/// What the hands are doing, for people: "turning the thermostat to 71 °F".
std::string hands_words(const bench::Site& site, const bench::Action& action);

} // namespace lightoff::explore
