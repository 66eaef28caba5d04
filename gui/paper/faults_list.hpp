// SPDX-License-Identifier: MIT
#pragma once
#include "gui/sheet/pick_list.hpp"
#include "gui/view/known.hpp"

#include <vector>

namespace lightoff::paper {

/// Everything that can go wrong with a furnace like this one, by the blocks of the suspects sheet.
std::vector<sheet::Entry> faults_list(const view::Known& known, int chosen);

} // namespace lightoff::paper
