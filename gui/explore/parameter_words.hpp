// SPDX-License-Identifier: MIT
#pragma once
#include "faults/parameters.hpp"
#include "gui/sheet/pick_list.hpp"

#include <string>
#include <vector>

namespace lightoff::explore {

/// A value as the trade would say it: "0.45 in. w.c.", "12.0 MΩ", "stuck open".
std::string parameter_text(const faults::Parameter& parameter, double value);
/// "healthy 0 Ω; 0.400 Ω to 40.0 Ω".
std::string range_text(const faults::Parameter& parameter);

/// The list to choose from, grouped by part; found by part, name, path and the faults that move it. The
/// entry's value is the place of the parameter.
std::vector<sheet::Entry> parameter_entries(const std::vector<faults::Parameter>& parameters);

} // namespace lightoff::explore
