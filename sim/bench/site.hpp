// SPDX-License-Identifier: MIT
#pragma once
#include "bench/hazard_table.hpp"
#include "faults/catalogue.hpp"
#include "furnace/model.hpp"

#include <string>
#include <vector>

namespace lightoff::bench {

/// What somebody left on a part who worked here before: to be seen by whoever looks closely.
struct Trace {
    int part = 0; ///< of the catalogue
    std::string words;
};

/// What does not change while somebody works: the furnace as it was built, and the parts that hands can get
/// at with what can be done to them; what the school takes for a hazard, and how grave. Shared by every World
/// of the same bundle.
struct Site {
    furnace::Model model;
    faults::Catalogue catalogue;
    HazardTable hazards;
    std::vector<Trace> traces; ///< of the call
};

} // namespace lightoff::bench
