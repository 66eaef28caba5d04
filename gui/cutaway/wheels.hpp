// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/cutaway/scene.hpp"

namespace lightoff::cutaway {

/// A centrifugal wheel seen from its side: rim, hub, blades, and one blade filled in that the eye can follow.
/// The faster it truly runs, the fainter its blades.
void draw_wheel(const canvas::Canvas& canvas, ImVec2 centre, float radius, int blades, const Wheel& wheel);

/// A scroll housing round a wheel: the outline winds outwards by `growth` of its radius and ends in an
/// upright outlet, up to `outlet_top`, whose far wall stands at the widest radius.
void draw_scroll(const canvas::Canvas& canvas, ImVec2 centre, float radius, float growth, float outlet_top,
                 bool mirrored);

} // namespace lightoff::cutaway
