// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"
#include "furnace/model.hpp"

#include <string>

namespace lightoff::desk {

/// What the hands are doing, for people: "turning the thermostat to 71 °F".
std::string hands_words(const furnace::Model& model, const bench::Action& action);

} // namespace lightoff::desk
