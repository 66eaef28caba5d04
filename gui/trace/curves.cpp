// SPDX-License-Identifier: MIT
#include "gui/trace/curves.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/trace/chart_layout.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::trace {
namespace {

using namespace canvas;

constexpr float kOnFill = 0.16F; // opacity under a step-like line, and between two runs

Colour colour_of(const Canvas& canvas, const Lane& lane) {
    return lane.energy ? canvas.theme->of(*lane.energy) : canvas.theme->ink;
}

/// Columns of one pixel lie on a grid fixed in time, or the curve would shimmer as it moves along.
struct Grid {
    double column_s, start_s;
    std::size_t count;

    Grid(Rect box, const ChartView& view)
        : column_s(view.span_s / static_cast<double>(box.width())),
          start_s(std::floor(view.from_s() / column_s) * column_s),
          count(static_cast<std::size_t>(box.width()) + 1) {}
    void fill(const Recording& recording, std::size_t column, std::vector<Extremes>& out) const {
        fill_columns(recording, column, start_s, start_s + static_cast<double>(count) * column_s, count, out);
    }
    double middle_s(std::size_t i) const { return start_s + (static_cast<double>(i) + 0.5) * column_s; }
};

float middle(const Extremes& values) {
    return values.low + (values.high - values.low) / 2;
}

/// Reaches to the neighbour, so that a jump between two columns shows as a line.
Extremes joined(const std::vector<Extremes>& columns, std::size_t i) {
    Extremes reach = columns[i];
    if (i > 0 && !columns[i - 1].empty()) {
        reach.low = std::min(reach.low, columns[i - 1].high);
        reach.high = std::max(reach.high, columns[i - 1].low);
    }
    return reach;
}

} // namespace

float y_at(Rect box, const Lane& lane, float value) {
    const float share = std::clamp((value - lane.low) / (lane.high - lane.low), 0.0F, 1.0F);
    return box.max.y - share * box.height();
}

void Curves::put(ImVec2 upper, float lower_y) {
    upper_.push_back(upper);
    lower_.push_back({upper.x, lower_y});
}

void Curves::forget() {
    upper_.clear();
    lower_.clear();
}

void Curves::draw(const Canvas& canvas, Rect box, const Recording& recording, std::size_t column,
                  const Lane& lane, const ChartView& view) {
    const std::size_t visible = recording.cell_from(view.end_s) - recording.cell_from(view.from_s());
    if (visible < 2 * static_cast<std::size_t>(box.width())) {
        draw_samples(canvas, box, recording, column, lane, view);
    } else {
        draw_columns(canvas, box, recording, column, lane, view);
    }
}

void Curves::draw_other(const Canvas& canvas, Rect box, const Recording& recording, const Recording& other,
                        std::size_t column, const Lane& lane, const ChartView& view) {
    const Grid grid(box, view);
    grid.fill(recording, column, columns_);
    grid.fill(other, column, other_columns_);
    std::vector<ImVec2> line;
    const auto flush_line = [&] {
        dashed(canvas, line, std::max(1.0F, canvas.px(1.6F)), canvas.theme->ink, canvas.px(6), canvas.px(4));
        line.clear();
    };
    forget();
    for (std::size_t i = 0; i < grid.count; ++i) {
        if (other_columns_[i].empty()) {
            flush_line();
            flush_apart(canvas);
            continue;
        }
        const float there = middle(other_columns_[i]);
        const ImVec2 at{x_at(box, view, grid.middle_s(i)), y_at(box, lane, there)};
        line.push_back(at);
        if (columns_[i].empty() || std::abs(there - middle(columns_[i])) <= lane.tolerance) {
            flush_apart(canvas);
            continue;
        }
        put(at, y_at(box, lane, middle(columns_[i])));
    }
    flush_line();
    flush_apart(canvas);
}

void Curves::flush_apart(const Canvas& canvas) {
    const Colour shade = faded(canvas.theme->ink, kOnFill);
    strip(canvas, upper_, lower_, shade, shade);
    forget();
}

void Curves::draw_samples(const Canvas& canvas, Rect box, const Recording& recording, std::size_t column,
                          const Lane& lane, const ChartView& view) {
    forget();
    const std::size_t first = recording.cell_from(view.from_s());
    const std::size_t last = std::min(recording.cell_from(view.end_s) + 1, recording.size());
    for (std::size_t i = first > 0 ? first - 1 : 0; i < last; ++i) {
        const Extremes& cell = recording.cell(column, i);
        const float x = x_at(box, view, recording.start_s(i));
        if (cell.empty()) {
            flush_samples(canvas, lane);
            continue;
        }
        if (lane.step_like && !upper_.empty()) {
            put({x, upper_.back().y}, box.max.y);
        }
        put({x, y_at(box, lane, cell.low)}, box.max.y);
        if (cell.high > cell.low) {
            put({x, y_at(box, lane, cell.high)}, box.max.y);
        }
    }
    if (lane.step_like && !upper_.empty()) {
        put({x_at(box, view, std::min(view.end_s, recording.newest_s())), upper_.back().y}, box.max.y);
    }
    flush_samples(canvas, lane);
}

void Curves::flush_samples(const Canvas& canvas, const Lane& lane) {
    const Colour colour = colour_of(canvas, lane);
    if (lane.step_like) {
        strip(canvas, upper_, lower_, faded(colour, kOnFill), faded(colour, kOnFill));
    }
    stroke(canvas, upper_, Line::Detail, colour);
    forget();
}

void Curves::draw_columns(const Canvas& canvas, Rect box, const Recording& recording, std::size_t column,
                          const Lane& lane, const ChartView& view) {
    const Grid grid(box, view);
    grid.fill(recording, column, columns_);
    forget();
    for (std::size_t i = 0; i < grid.count; ++i) {
        if (columns_[i].empty()) {
            flush_columns(canvas, box.max.y, lane);
            continue;
        }
        const Extremes reach = joined(columns_, i);
        put({x_at(box, view, grid.middle_s(i)), y_at(box, lane, reach.high)}, y_at(box, lane, reach.low));
    }
    flush_columns(canvas, box.max.y, lane);
}

void Curves::flush_columns(const Canvas& canvas, float foot, const Lane& lane) {
    const Colour colour = colour_of(canvas, lane);
    if (lane.step_like) {
        for (ImVec2& point : lower_) {
            point.y = foot;
        }
        flush_samples(canvas, lane);
        return;
    }
    strip(canvas, upper_, lower_, colour, colour);
    stroke(canvas, upper_, Line::Detail, colour);
    stroke(canvas, lower_, Line::Detail, colour);
    forget();
}

} // namespace lightoff::trace
