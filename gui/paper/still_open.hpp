// SPDX-License-Identifier: MIT
#pragma once
#include "gui/view/known.hpp"

#include <string>
#include <vector>

namespace lightoff::paper {

/// What is not as a furnace and a work order are left, one sentence each, as far as whoever signs can know
/// it: doors, switches, leads, what is off its place, lines of the paper still empty.
std::vector<std::string> still_open(const view::Known& known);

} // namespace lightoff::paper
