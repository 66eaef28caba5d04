// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/colour.hpp"

#include <array>
#include <cstddef>

namespace lightoff::canvas {

/// Carriers of energy, each with a colour AND a line pattern (see strokes.hpp): never colour alone.
enum class Energy { Volts24, Volts120, Gas, Air, Heat };
inline constexpr std::size_t kEnergyCount = 5;

enum class ThemeId { Paper, Basement, Projector };
inline constexpr std::array<ThemeId, 3> kThemes{ThemeId::Paper, ThemeId::Basement, ThemeId::Projector};

/// Every colour the window uses. Text is drawn in ink, pencil or alarm on ground or panel (at least 4.5:1);
/// energy colours are for graphics on the ground (at least 3.1:1); `rule` is never the only boundary of a
/// thing.
struct Theme {
    const char* name = "";
    Colour ground, panel, ink, pencil, rule, alarm;
    std::array<Colour, kEnergyCount> energy;
    Colour chamber, igniter, blue_flame; // flame and glow sit on the chamber wash
    float line_factor = 1;               // on every line width
    float text_factor = 1;               // on every text size

    Colour of(Energy kind) const { return energy[static_cast<std::size_t>(kind)]; }
};

const Theme& theme(ThemeId id);
const char* name_of(Energy kind);

} // namespace lightoff::canvas
