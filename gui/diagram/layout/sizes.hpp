// SPDX-License-Identifier: MIT
#pragma once

/// Sizes that several pieces of the layout go by, in drawing units. The left rail is at x = 0.
namespace lightoff::diagram {

inline constexpr float kPitch = 24; ///< between rows
inline constexpr float kRowHalf = 12;
inline constexpr float kTop = 22;         ///< above the first row: names of the supply's parts
inline constexpr float kToRail = 20;      ///< from a rail to the first pin
inline constexpr float kGroundInset = 26; ///< from the right rail to a ground mark
inline constexpr float kBusPitch = 18;    ///< from the row of the line to the head of its rail

} // namespace lightoff::diagram
