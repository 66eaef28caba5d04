// SPDX-License-Identifier: MIT
#pragma once
#include "gui/explore/running_furnace.hpp"

#include <string>

/// The exits of the board's table as sentences, with what is measured where they look.
namespace lightoff::explore {

/// What would lead on from the step that is going on: "After 20 s of this step it goes on to “...”."
std::string way_on_words(RunningFurnace& furnace, const bench::WayOn& way);
/// What led on from a step: "There was 24 V at board.W (call, 25.3 V)."
std::string way_back_words(RunningFurnace& furnace, const bench::WayOn& way);

/// "15 s", "0.2 s".
std::string seconds_text(double s);

} // namespace lightoff::explore
