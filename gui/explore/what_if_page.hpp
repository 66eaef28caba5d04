// SPDX-License-Identifier: MIT
#pragma once
#include "gui/explore/what_if.hpp"
#include "gui/sheet/pick_list.hpp"

#include <string>
#include <vector>

namespace lightoff::explore {

/// What somebody has typed to find a parameter, and the list that it is found in.
struct WhatIfView {
    std::vector<sheet::Entry> entries;
    std::string search;
    std::string refusal; ///< why the last turn was not done
};

/// What-if: a slider for each parameter laid out, what now differs, and the list of all parameters. The
/// sliders turn numbers; every reading follows from the physics.
void draw_what_if_page(const canvas::Canvas& canvas, canvas::Rect area, RunningFurnace& furnace,
                       WhatIf& what_if, WhatIfView& view);

} // namespace lightoff::explore
