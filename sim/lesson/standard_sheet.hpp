// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/scenario.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Everything that a technician with all the time in the world would write down: one call from cold, read at
/// fixed moments with every instrument, the limit proved with the blower's lead off, and each part of the
/// wiring by itself on the ohmmeter. It decides whether two faults can be told apart at all.
namespace lightoff::lesson {

struct SheetReading {
    std::string name; ///< "hot: manifold pressure"
    double value = 0.0;
    double accuracy = 0.0; ///< of a field meter, in the same unit; common practice, no source
};

/// The sheet of a furnace with one fault (nullptr: none) at a severity. House, weather and supply are the
/// scenario's, on a day with some wind at the cap; its own faults, history and thermostat are left out. The
/// readings are the same ones in the same order for every fault. Twenty minutes of heat and the end of the
/// call are simulated.
std::vector<SheetReading> standard_sheet(const bench::Site& site, const Scenario& scenario,
                                         const faults::Fault* fault, double severity,
                                         furnace::Workspace& workspace);

/// How far two sheets lie apart: the greatest difference of a reading over its accuracy. 1 or less: no
/// reading tells one from the other.
double distance(const std::vector<SheetReading>& a, const std::vector<SheetReading>& b);

} // namespace lightoff::lesson
