// SPDX-License-Identifier: MIT
#pragma once
#include "gui/explore/step_facts.hpp"
#include "gui/explore/what_if.hpp"

#include <optional>

namespace lightoff::explore {

struct StepPageView {
    StepReader reader;
    std::size_t listed = 0; ///< step that the list was scrolled to last
};

/// The sequence step by step: the list of its steps, what is to be said of the one looked at, and what should
/// read what where. Beside each other where there is room, else below each other. Returns the moment to go to
/// if a step was picked.
std::optional<std::uint64_t> draw_step_page(const canvas::Canvas& canvas, canvas::Rect area,
                                            RunningFurnace& furnace, WhatIf& what_if, StepPageView& view);

} // namespace lightoff::explore
