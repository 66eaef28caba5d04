// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/sheet.hpp"

/// What hands have put on the sheet.
namespace lightoff::diagram {

/// Wires landed elsewhere, jumper lead, lead with the small breaker, clamp and wattmeter round their wires.
void draw_handiwork(const Sheet& sheet, LabelPlacer& placer);
/// The meter's leads, from the right edge to their points.
void draw_leads(const Sheet& sheet);
/// Keeps words off them; before any words are placed.
void reserve_leads(const Sheet& sheet, LabelPlacer& placer);

} // namespace lightoff::diagram
