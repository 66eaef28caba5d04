// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/sheet.hpp"

/// The words of the ladder, each where there is room; asked for in the order of their importance.
namespace lightoff::diagram {

void letter_rails(const Sheet& sheet, LabelPlacer& placer);
void letter_symbols(const Sheet& sheet, LabelPlacer& placer);
/// Names of terminals: those of up to two letters, or the others.
void letter_spots(const Sheet& sheet, LabelPlacer& placer, bool short_ones);
/// Names of rooms, or of the board and of casings.
void letter_blocks(const Sheet& sheet, LabelPlacer& placer, bool rooms);
/// The letters of a wire's colour stand on the wire, with a stripe of the colour itself below them.
void letter_wires(const Sheet& sheet, LabelPlacer& placer);
/// "off" at lugs that are off their pins.
void letter_lifted(const Sheet& sheet, LabelPlacer& placer);

} // namespace lightoff::diagram
