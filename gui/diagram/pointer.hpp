// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/picking.hpp"

namespace lightoff::diagram {

/// Drag moves the sheet, the wheel zooms, a click picks. Returns what the pointer is on.
Hit take_pointer(const Sheet& sheet, DiagramView& view, view::Wanted& wanted);

} // namespace lightoff::diagram
