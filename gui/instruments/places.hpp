// SPDX-License-Identifier: MIT
#pragma once
#include "gui/sheet/pick_list.hpp"
#include "gui/view/known.hpp"

#include <vector>

namespace lightoff::faces {

/// Every place that a verb of an instrument may be given here, with the reason under those that are out of
/// reach now. `chosen`: where it is.
std::vector<sheet::Entry> places_of(const view::Known& known, bench::Verb verb, int chosen);
/// The test points, for a lead.
std::vector<sheet::Entry> points_of(const view::Known& known, int chosen);

/// The line that puts an instrument there.
std::string line_for(const view::Known& known, bench::Verb verb, int value);

} // namespace lightoff::faces
