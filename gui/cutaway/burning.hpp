// SPDX-License-Identifier: MIT
#pragma once
#include "gui/cutaway/pen.hpp"

/// Cells, burners and what burns in them.
namespace lightoff::cutaway {

void draw_cells(const Pen& pen);
void draw_fire_box(const Pen& pen);
void draw_flames(const Pen& pen);
void draw_burners(const Pen& pen);
/// What rolls out comes from the flames that want for air or miss their openings.
void draw_rollouts(const Pen& pen);
void draw_igniter_and_rod(const Pen& pen);

} // namespace lightoff::cutaway
