// SPDX-License-Identifier: MIT
#pragma once
#include "gui/cutaway/pen.hpp"

/// Gas from the meter to the manifold, flue gas from the collector box to the vent.
namespace lightoff::cutaway {

/// Pipe, cock and manifold, and the gas in them.
void draw_gas(const Pen& pen);
/// In section: its disc lifts off its seat by the stroke; on top the coil with its two terminals.
void draw_gas_valve(const Pen& pen);
void draw_gas_meter(const Pen& pen);
void draw_draft(const Pen& pen);
void draw_pressure_switch(const Pen& pen);

} // namespace lightoff::cutaway
