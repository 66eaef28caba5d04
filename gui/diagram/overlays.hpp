// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/transform.hpp"
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/ladder.hpp"
#include "gui/view/known.hpp"

#include <string>
#include <vector>

/// What hands and readings have put on the sheet.
namespace lightoff::diagram {

/// The sheet as it lies now.
struct Sheet {
    const canvas::Canvas& canvas;
    canvas::Rect area;
    const Ladder& ladder;
    const view::Known& known;
    canvas::Transform place;
    std::vector<ImVec2> spots; ///< pixels

    [[nodiscard]] ImVec2 spot(int i) const { return spots[static_cast<std::size_t>(i)]; }
    [[nodiscard]] bool is_parted(int joint) const;
    [[nodiscard]] bool is_off(const Spot& lug) const;
    /// Path of a wire in pixels, its ends where its lugs are.
    [[nodiscard]] std::vector<ImVec2> path_of(const Wire& wire) const;
};

/// The colour of a wire's insulation, as material.
canvas::Colour insulation(std::string_view colour);

/// Conductors and points that a reading has proved live, and brackets between two points of a reading.
void draw_stamps(const Sheet& sheet);
/// The words of the stamps, where there is room; asked for before other words.
void letter_stamps(const Sheet& sheet, LabelPlacer& placer);

/// Wires landed elsewhere, jumper lead, lead with the small breaker, clamp and wattmeter round their wires.
void draw_handiwork(const Sheet& sheet, LabelPlacer& placer);
/// The meter's leads, from the right edge to their points.
void draw_leads(const Sheet& sheet);
/// Keeps words off them; before any words are placed.
void reserve_leads(const Sheet& sheet, LabelPlacer& placer);

} // namespace lightoff::diagram
