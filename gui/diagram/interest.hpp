// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/diagram_view.hpp"
#include "gui/diagram/sheet.hpp"

#include <optional>

namespace lightoff::diagram {

/// Where hands and eyes are, drawing units: the keyboard's cursor, else what has the focus, else the meter's
/// leads.
std::optional<ImVec2> place_of_interest(const Sheet& sheet, const DiagramView& view);
/// Height of the sheet's letters without the empty top and bottom of their line, pixels.
float letters_of(const canvas::Canvas& canvas);

} // namespace lightoff::diagram
