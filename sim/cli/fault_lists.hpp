// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>

namespace lightoff::cli {

/// The call whose furnace the fault lists are about when nobody names one.
inline constexpr const char* kFaultListScenario = "call-for-heat";

/// Lists every fault of a scenario's furnace: what breaks, what repairs it, what only seems to, how it may
/// set in.
int list_faults(Output& out, const std::string& scenario, bool as_json);

/// Runs every fault and lists the pairs that no reading of the standard sheet tells apart, with the
/// catalogue's reason. Takes half a minute.
int list_look_alikes(Output& out, const std::string& scenario, bool as_json);

} // namespace lightoff::cli
