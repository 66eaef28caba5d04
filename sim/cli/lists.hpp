// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"
#include "control/board.hpp"

#include <string>

namespace lightoff::cli {

/// Lists every number of the Condition that a scenario's overrides and onsets may set, with its unit and the
/// value that it has when the student arrives.
int list_conditions(Output& out, const std::string& scenario, const std::string& seed, bool as_json);

/// Prints the chart inside the door: of an equipment or scenario, by name or path.
int print_chart(Output& out, const std::string& name_or_path);
void write_chart(Output& out, const control::Board& board);

/// Lists every verb with its words, time and hands, as somebody looks for them; with a scenario also the
/// names that each word may be there. Without one `scenario` is empty.
int list_actions(Output& out, const std::string& scenario, bool as_json);

} // namespace lightoff::cli
