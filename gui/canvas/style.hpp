// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/theme.hpp"

#include <imgui.h>

namespace lightoff::canvas {

/// Flags of every window of ours: no title bar, nothing that moves, folds or is remembered.
inline constexpr ImGuiWindowFlags kPlainWindow = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize |
                                                 ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoCollapse |
                                                 ImGuiWindowFlags_NoSavedSettings;
/// A page that fills the window behind all others.
inline constexpr ImGuiWindowFlags kPage = kPlainWindow | ImGuiWindowFlags_NoBringToFrontOnFocus |
                                          ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
/// A draw list of its own inside a page (one list holds at most 65,535 vertices), which input passes through.
inline constexpr ImGuiWindowFlags kLayer =
    kPlainWindow | ImGuiWindowFlags_NoInputs | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoBackground;

/// Gives the library's own widgets (text fields, lists, scroll bars) our ink and paper. Call after a change
/// of theme or scale; it starts from the library's defaults each time, so sizes do not add up.
void apply_style(ImGuiStyle& style, const Theme& theme, float scale);

} // namespace lightoff::canvas
