// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/sheet.hpp"

/// The ladder itself, before any words.
namespace lightoff::diagram {

/// The board, the living room, casings of motors.
void draw_blocks(const Sheet& sheet);
/// Tracks, wires, rails, symbols, marks.
void draw_lines(const Sheet& sheet);
/// Pins, lugs, bare metal; `cursor`: the spot that the keyboard is on, or -1.
void draw_spots(const Sheet& sheet, int cursor);
/// Once more what the halos of words may have eaten into: after all words.
void mend_beside_halos(const Sheet& sheet, const LabelPlacer& placer);
/// Of a pin, pixels.
float pin_radius(const Sheet& sheet);

/// Keeps words off all of it; before any words are placed.
void reserve_line_work(const Sheet& sheet, LabelPlacer& placer);

} // namespace lightoff::diagram
