// SPDX-License-Identifier: MIT
#pragma once
#include "gui/view/known.hpp"

#include <string>
#include <vector>

namespace lightoff::view {

/// What a reading of volts has shown at two places, to be stamped on the diagram. It goes stale, and is
/// hatched from then on, once a door, the power, the gas cock or the thermostat has been touched since, or
/// after five minutes.
struct Stamp {
    std::size_t reading = 0;   ///< number in the notebook
    int red = 0, black = 0;    ///< nodes
    std::string words;         ///< "24.3 V"
    bool live = false;         ///< at least 2 V
    bool line_voltage = false; ///< over 40 V: which energy its colour is
    bool stale = false;
};

/// The last of every pair of places, in the order of the notebook.
std::vector<Stamp> stamps_of(const Known& known);

} // namespace lightoff::view
