// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/cutaway/scene.hpp"

namespace lightoff::cutaway {

/// A flame along its way from the burner's mouth into the cell. `full_length` (pixels) is that at the rating,
/// `half_width` that of the cell. One that strikes metal bends to the upper wall and runs along it in
/// yellow tongues.
void draw_flame(const canvas::Canvas& canvas, canvas::Path way, float full_length, float half_width,
                const Flame& flame, float time_s, int number);

/// Flame that comes out of a burner's opening and licks back and up. `size` 0..1; `reach` in pixels at 1.
/// Drawn twice, first for all burners as a `wash` of the chamber's dark: on paper a flame would look dead.
void draw_rollout(const canvas::Canvas& canvas, ImVec2 mouth, float reach, float size, float time_s,
                  int number, bool wash);

/// Colour of a glowing surface: nothing under a dull red (800 K), then red, orange, nearly white.
struct Glow {
    canvas::Colour colour;
    float strength = 0; ///< of the light that it throws, 0..1
};
Glow glow_of(const canvas::Theme& theme, float surface_k);

/// Light of flame and igniter on the dark walls around.
void draw_flame_light(const canvas::Canvas& canvas, ImVec2 centre, float radius, const Flame& flame);
void draw_igniter_light(const canvas::Canvas& canvas, ImVec2 foot, float height, float surface_k);

/// A hot-surface igniter: two legs up from its block, joined on top.
void draw_igniter(const canvas::Canvas& canvas, ImVec2 foot, float height, float surface_k);

/// Flue gas on the dark wash, by its temperature; clear when cold.
canvas::Colour gas_tint(const canvas::Theme& theme, float gas_k);

/// Flue gas in a cell as a tint from its temperature, and dots that drift with the flow.
void draw_flue_gas(const canvas::Canvas& canvas, canvas::Path way, float half_width, float hot_k,
                   float cool_k, float drift, bool flows);

} // namespace lightoff::cutaway
