// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/standard_sheet.hpp"

#include <vector>

namespace lightoff::lesson {

/// A fault at its worst that another one, at some severity, imitates in every reading of the standard sheet.
struct Imitation {
    int fault = 0;         ///< place in the catalogue
    int by = 0;            ///< the other one
    double severity = 0.0; ///< of the other one
    double distance = 0.0; ///< 1 at the most: see lesson::distance
};

/// All of them on one furnace, by simulation: some hundred sheets, a quarter of a minute. The severity of the
/// imitator is looked for in steps, and between the best two by thirds; what would need a finer search is
/// taken for telling apart.
std::vector<Imitation> find_imitations(const bench::Site& site, const Scenario& scenario);

} // namespace lightoff::lesson
