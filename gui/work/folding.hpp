// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::work {

/// What stands beside what on a call's page. One rule: a pane stands beside the others as long as each of
/// them keeps its least width; else it takes turns. The strip goes first, then the sheets.
struct Folding {
    bool strip_beside = true;  ///< else the strip is one more view of the middle
    bool sheets_beside = true; ///< else middle and sheets take turns, by a rail at the left
    bool low = false;          ///< the foot is one row
};

/// Design pixels.
inline constexpr float kStripWide = 176, kLeastMiddle = 420, kLeastSheet = 380, kMostSheet = 640;
inline constexpr float kBetween = 14;
inline constexpr float kLowPage = 520;
/// A pane in the middle keeps so much height under a tag; else the tag has the place to itself.
inline constexpr float kLeastDrawing = 140;

/// Of a page of so many design pixels.
constexpr Folding fold(float wide, float high) {
    Folding folding;
    folding.sheets_beside = wide >= kLeastMiddle + kBetween + kLeastSheet;
    folding.strip_beside = wide >= kStripWide + kBetween + kLeastMiddle + kBetween + kLeastSheet;
    folding.low = high < kLowPage;
    return folding;
}

} // namespace lightoff::work
