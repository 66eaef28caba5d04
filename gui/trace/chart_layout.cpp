// SPDX-License-Identifier: MIT
#include "gui/trace/chart_layout.hpp"

#include "gui/canvas/lettering.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::trace {
namespace {

using namespace canvas;

constexpr float kMostForNames = 0.29F; // of the width; longer names take more lines
constexpr std::size_t kLeastLanes = 2; // one says little: names of events and stretches give way for another

float widest_value(const Canvas& canvas, const Lane& lane) {
    float widest = 0;
    for (const std::string& word : lane.words) {
        widest = std::max(widest, text_size(canvas, word, Type::Body).x);
    }
    if (lane.words.empty()) {
        for (const float end : {lane.low, lane.high, -1.0F}) {
            widest = std::max(widest, text_size(canvas, words_for(lane, end), Type::Body).x);
        }
    }
    return widest;
}

float widest_limit(const Canvas& canvas, const Lane& lane) {
    if (!lane.words.empty()) {
        return 0;
    }
    return std::max(text_size(canvas, limit_words(lane, lane.low), Type::Minimum).x,
                    text_size(canvas, limit_words(lane, lane.high), Type::Minimum).x);
}

/// Of the words of each column, the widest.
struct Widths {
    float name = 0, limit = 0, value = 0, unit = 0;
};

Widths widths_of(const Canvas& canvas, const std::vector<Lane>& lanes) {
    Widths widths;
    widths.value = text_size(canvas, "0:00:00", Type::Secondary).x;
    for (const Lane& lane : lanes) {
        widths.name = std::max(widths.name, text_size(canvas, lane.name, Type::Secondary).x);
        widths.limit = std::max(widths.limit, widest_limit(canvas, lane));
        widths.value = std::max(widths.value, widest_value(canvas, lane));
        widths.unit = std::max(widths.unit, text_size(canvas, lane.unit, Type::Minimum).x);
    }
    return widths;
}

/// Cuts the columns off `rest`; what is left in the middle is the plot's width.
void cut_columns(const Canvas& canvas, const std::vector<Lane>& lanes, const Beside& beside, Rect& rest,
                 ChartLayout& layout) {
    const Widths widths = widths_of(canvas, lanes);
    const float gap = canvas.px(10);
    const float small_gap = canvas.px(6);
    if (beside.other != nullptr) {
        const float heading = text_size(canvas, beside.other_name, Type::Minimum).x;
        layout.others = rest.cut_right(std::max(widths.value, heading) + gap);
        rest.cut_right(small_gap);
    }
    layout.names = rest.cut_left(std::min(widths.name, layout.area.width() * kMostForNames));
    rest.cut_left(gap);
    layout.limits = rest.cut_left(widths.limit);
    rest.cut_left(small_gap);
    layout.units = rest.cut_right(widths.unit);
    rest.cut_right(small_gap);
    layout.values = rest.cut_right(widths.value);
    rest.cut_right(gap);
}

/// Height of a lane that keeps its words clear of the rulings above and below it.
float least_row(const Canvas& canvas, const std::vector<Lane>& lanes, float names_width) {
    float least = line_height(canvas, Type::Body);
    for (const Lane& lane : lanes) {
        least = std::max(least, text_size(canvas, lane.name, Type::Secondary, names_width + 1).y);
    }
    return least + canvas.px(4);
}

/// What stands above and below the lanes and may give way to them.
struct Extras {
    int flag_rows = 0;
    bool stretches = false;

    float flags_height(const Canvas& canvas) const {
        return flag_rows == 0
                   ? 0
                   : line_height(canvas, Type::Minimum) * static_cast<float>(flag_rows) + canvas.px(4);
    }
    float stretches_height(const Canvas& canvas) const {
        return stretches ? line_height(canvas, Type::Minimum) + canvas.px(6) : 0;
    }
    float height(const Canvas& canvas) const { return flags_height(canvas) + stretches_height(canvas); }
    /// Leaves out what is missed least; false if nothing is left.
    bool give_way() {
        if (flag_rows > 1) {
            flag_rows = 1;
        } else if (stretches) {
            stretches = false;
        } else if (flag_rows == 1) {
            flag_rows = 0;
        } else {
            return false;
        }
        return true;
    }
};

std::size_t fitting(float height, float row) {
    return static_cast<std::size_t>(std::max(0.0F, height / row));
}

/// All of them, unless fewer let more lanes stand (up to the least number of lanes).
Extras extras_for(const Canvas& canvas, float height, float row, std::size_t lanes, Extras extras) {
    const std::size_t reachable = std::min({fitting(height, row), kLeastLanes, lanes});
    while (fitting(height - extras.height(canvas), row) < reachable && extras.give_way()) {
    }
    return extras;
}

} // namespace

ChartLayout lay_out_chart(const Canvas& canvas, Rect area, const std::vector<Lane>& lanes,
                          const Beside& beside, const ChartView& view) {
    ChartLayout layout;
    layout.area = area;
    Rect rest = area;
    layout.axis = rest.cut_bottom(line_height(canvas, Type::Minimum) + canvas.px(8));
    const Rect between = rest;
    cut_columns(canvas, lanes, beside, rest, layout);
    const float least = least_row(canvas, lanes, layout.names.width());
    const Extras extras = extras_for(canvas, between.height(), least, lanes.size(),
                                     {view.flag_rows, !beside.stretches.empty()});
    layout.flag_rows = extras.flag_rows;
    layout.flags = Rect{area.min, {rest.max.x + canvas.px(10), between.max.y}} // names end where values begin
                       .cut_top(extras.flags_height(canvas));
    rest.cut_top(extras.flags_height(canvas));
    layout.stretches = rest.cut_bottom(extras.stretches_height(canvas));
    layout.plot = {{std::round(rest.min.x), std::round(rest.min.y)},
                   {std::round(rest.max.x), std::round(rest.max.y)}};
    const float line = line_height(canvas, Type::Minimum);
    const float heading =
        layout.flag_rows > 0 ? layout.flags.max.y - canvas.px(4) - line : layout.axis.min.y + canvas.px(6);
    layout.headings = {{layout.values.min.x, heading}, {area.max.x, heading + line}};
    layout.count = std::min(fitting(layout.plot.height(), least), lanes.size());
    layout.first = std::min(view.first_lane, lanes.size() - layout.count);
    layout.row = layout.plot.height() / static_cast<float>(std::max<std::size_t>(1, layout.count));
    return layout;
}

float x_at(Rect box, const ChartView& view, double t_s) {
    return box.min.x + static_cast<float>((t_s - view.from_s()) / view.span_s) * box.width();
}

double time_at(Rect box, const ChartView& view, float x) {
    return view.from_s() + static_cast<double>((x - box.min.x) / box.width()) * view.span_s;
}

} // namespace lightoff::trace
