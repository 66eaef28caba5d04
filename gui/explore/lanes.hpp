// SPDX-License-Identifier: MIT
#pragma once
#include "bench/milestones.hpp"
#include "furnace/furnace.hpp"
#include "gui/trace/strip_chart.hpp"

#include <array>
#include <optional>

namespace lightoff::explore {

inline constexpr std::size_t kLaneCount = 8;

/// The recorder's lanes for this furnace, in trade units.
std::vector<trace::Lane> lanes_of(const furnace::Model& model);
/// One sample for each of them.
std::array<float, kLaneCount> sample_of(const furnace::Model& model, const bench::World& world,
                                        furnace::Workspace& workspace);

/// A milestone's name short enough for a flag on the chart; nothing for those that would only crowd it.
std::optional<std::string> flag_of(const bench::Milestone& milestone);

} // namespace lightoff::explore
