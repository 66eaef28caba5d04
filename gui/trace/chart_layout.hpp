// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/trace/chart.hpp"

namespace lightoff::trace {

/// Where everything on a recorder's paper stands, in pixels. From the left: names of the lanes, their limits,
/// the plot, values with their units, values of the other run; from the top: flags, the plot, stretches,
/// times.
struct ChartLayout {
    canvas::Rect area, flags, plot, stretches, axis;
    canvas::Rect names, limits, values, units, others; ///< columns, as high as the plot
    canvas::Rect headings;                             ///< row of what the columns of values are of
    int flag_rows = 0;
    float row = 0;                    ///< height of a lane, never less than its words need
    std::size_t first = 0, count = 0; ///< lanes shown

    canvas::Rect lane(canvas::Rect column, std::size_t index) const {
        const float top = plot.min.y + row * static_cast<float>(index - first);
        return {{column.min.x, top}, {column.max.x, top + row}};
    }
    /// Whether the headings have no row of their own and stand behind the times.
    bool headings_below() const { return headings.min.y >= plot.max.y; }
};

/// Lanes come first: where the area is low, names of events and of stretches give way to them, and then as
/// many lanes are shown as there is room for.
ChartLayout lay_out_chart(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<Lane>& lanes,
                          const Beside& beside, const ChartView& view);

float x_at(canvas::Rect box, const ChartView& view, double t_s);
double time_at(canvas::Rect box, const ChartView& view, float x);

} // namespace lightoff::trace
