// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/sheet.hpp"

/// What readings have put on the sheet.
namespace lightoff::diagram {

/// Conductors and points that a reading has proved live, and brackets between two points of a reading.
void draw_stamps(const Sheet& sheet);
/// The words of the stamps, where there is room; asked for before other words.
void letter_stamps(const Sheet& sheet, LabelPlacer& placer);

} // namespace lightoff::diagram
