// SPDX-License-Identifier: MIT
#pragma once
#include "bench/gauges.hpp"
#include "bench/milestones.hpp"
#include "gui/trace/strip_chart.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace lightoff::explore {

/// A lane for each gauge, in their order; scales are to be fitted.
std::vector<trace::Lane> lanes_of(const furnace::Model& model, const bench::Gauges& gauges);
/// Those that a recorder begins with.
std::vector<std::size_t> usual_lanes(const bench::Gauges& gauges);

/// The energy that a quantity of that group and name speaks of.
std::optional<canvas::Energy> energy_of(std::string_view group, std::string_view name);

/// A milestone's name short enough for a flag on the chart; nothing for those that would only crowd it.
std::optional<std::string> flag_of(const bench::Milestone& milestone);

} // namespace lightoff::explore
