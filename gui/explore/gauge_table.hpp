// SPDX-License-Identifier: MIT
#pragma once
#include "gui/explore/step_facts.hpp"
#include "gui/sheet/column.hpp"

#include <span>
#include <vector>

namespace lightoff::explore {

/// Rows of "what should read what where" into a sheet: name and place at the left, the value at the right. A
/// bar marks what has changed, what it was stands below. Where the furnace beside reads another thing, its
/// value stands in a reversed box, with the difference below; `what_if` is empty if there is none.
void draw_gauges(sheet::Column& column, const bench::Gauges& gauges, std::span<const GaugeRow> rows,
                 const std::vector<double>& what_if);

/// "+0.95", with as many digits as the gauge's values.
std::string difference_text(const bench::Gauge& gauge, double from, double to);

} // namespace lightoff::explore
