// SPDX-License-Identifier: MIT
#pragma once
#include "gui/explore/explore.hpp"
#include "gui/platform/platform.hpp"

#include <string>

namespace lightoff::explore {

/// Runs the call from its beginning and saves pictures at named moments into a folder: cold, igniter-glowing,
/// burners-lighting, steady-run; then, with more gas in a furnace beside: what-if, readings, recorder.
/// Simulated time alone decides what is on them. Returns one sentence for each that could not be made: the
/// call never came to it, or the file could not be written. Throws std::runtime_error where no window can be
/// opened.
std::vector<std::string> save_shots(platform::WindowOptions options, Explore& page,
                                    const std::string& folder);

} // namespace lightoff::explore
