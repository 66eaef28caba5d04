// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/sheet.hpp"

namespace lightoff::diagram {

/// Over the ink, every conductor both of whose ends carry voltage, in the colour and pattern of its energy.
void draw_energy(const Sheet& sheet, const std::vector<Carried>& carried);

} // namespace lightoff::diagram
