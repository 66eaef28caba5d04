// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include "lesson/scenario.hpp"

#include <string>
#include <vector>

namespace lightoff::files {

inline constexpr std::string_view kScenarioFormat = "lightoff-scenario-1";

/// Reads a scenario file. Names that belong to the equipment (paths of conditions, test points in actions)
/// are judged when both are there: check_scenario.
lesson::Scenario read_scenario(const Document& document);

/// Throws Error, with the place in the scenario file, for an override, onset or action that this furnace
/// does not have.
void check_scenario(const Document& document, const lesson::Scenario& scenario, const bench::Site& site);

/// Its traces on the parts of this catalogue; throws Error for a part that is not in it.
std::vector<bench::Trace> read_traces(const Document& document, const lesson::Scenario& scenario,
                                      const faults::Catalogue& catalogue);

} // namespace lightoff::files
