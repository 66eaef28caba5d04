// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/picking.hpp"

namespace lightoff::diagram {

/// Says beside the pointer what it is on; where it could mean one of several points, a loupe shows which.
void draw_tag(const Sheet& sheet, Hit hit, ImVec2 pointer);

} // namespace lightoff::diagram
