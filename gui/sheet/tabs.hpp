// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <span>
#include <string>

namespace lightoff::sheet {

/// Which tab is chosen now, and the room under the tabs.
struct Tabs {
    std::size_t chosen = 0;
    canvas::Rect rest;
};
/// Tabs of sheets that lie in one place: the chosen one is open to its sheet below. They take as many lines
/// as they need.
Tabs draw_tabs(const canvas::Canvas& canvas, canvas::Rect area, std::span<const std::string> words,
               std::size_t chosen);

} // namespace lightoff::sheet
