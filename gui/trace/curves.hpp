// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/trace/chart.hpp"

namespace lightoff::trace {

/// Draws what was recorded as the curve of a lane. Kept from frame to frame to save allocation.
class Curves {
public:
    /// A column of the recording in a lane's box: sample by sample, or, where samples stand closer than
    /// pixels, as the extremes in each column of pixels.
    void draw(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording, std::size_t column,
              const Lane& lane, const ChartView& view);
    /// The other run as a dashed line in ink, and the room between the two where they are apart.
    void draw_other(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording,
                    const Recording& other, std::size_t column, const Lane& lane, const ChartView& view);

private:
    void draw_samples(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording,
                      std::size_t column, const Lane& lane, const ChartView& view);
    void draw_columns(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording,
                      std::size_t column, const Lane& lane, const ChartView& view);
    /// Draws what stands between the two edges, and forgets it.
    void flush_samples(const canvas::Canvas& canvas, const Lane& lane);
    void flush_columns(const canvas::Canvas& canvas, float foot, const Lane& lane);
    void flush_apart(const canvas::Canvas& canvas);
    void put(ImVec2 upper, float lower_y);
    void forget();

    std::vector<Extremes> columns_, other_columns_;
    std::vector<ImVec2> upper_, lower_;
};

/// Height of a value in a lane, kept inside it: a line that leaves its lane would run into its neighbour.
float y_at(canvas::Rect box, const Lane& lane, float value);

} // namespace lightoff::trace
