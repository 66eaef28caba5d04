// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/pushing.hpp"

#include <vector>

namespace lightoff::diagram {

/// A row for each run of a circuit, by run; 0 is the main run's. Short branches lie close to it, those from
/// the left by where they end, so that uprights cross as few rungs as can be.
std::vector<int> rows_of(const Circuits& circuits, const Circuit& circuit, const Xs& x, float width);

} // namespace lightoff::diagram
