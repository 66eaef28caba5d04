// SPDX-License-Identifier: MIT
#include "gui/explore/readings.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace lightoff::explore {
namespace {

using namespace canvas;

constexpr std::string_view kControl = "Control";
constexpr int kGrouped = -1; ///< whole numbers with a comma before each three

struct Entry {
    std::string_view group, name, gauge, unit;
    int decimals;
};

constexpr std::array kEntries{
    Entry{"Draft", "Inducer", "inducer speed", "rpm", kGrouped},
    Entry{"Draft", "Suction, port", "suction at the port", "in. w.c.", 2},
    Entry{"Draft", "Suction, switch", "suction at the pressure switch", "in. w.c.", 2},
    Entry{"Draft", "Vent connector", "vent connector pressure", "in. w.c.", 3},
    Entry{kControl, "Progress lamp", "progress lamp", "", 0},
    Entry{kControl, "Pressure switch", "pressure switch", "", 0},
    Entry{kControl, "Limit", "limit", "", 0},
    Entry{kControl, "Rollout switch", "rollout switch", "", 0},
    Entry{kControl, "Gas valve", "gas valve's armature", "", 0},
    Entry{"Fire", "Gas inlet", "gas inlet pressure", "in. w.c.", 2},
    Entry{"Fire", "Manifold", "manifold pressure", "in. w.c.", 2},
    Entry{"Fire", "Input", "input rate", "Btu/h", kGrouped},
    Entry{"Fire", "Oxygen", "oxygen", "%", 1},
    Entry{"Fire", "CO, air-free", "carbon monoxide air-free", "ppm", 0},
    Entry{"Fire", "Flue over room", "flue gas over room", "°F", 0},
    Entry{"Fire", "Flame current", "flame current", "µA", 1},
    Entry{"Fire", "Igniter surface", "igniter surface", "°F", kGrouped},
    Entry{"Heat and air", "Airflow", "airflow", "cfm", kGrouped},
    Entry{"Heat and air", "External static", "external static", "in. w.c.", 2},
    Entry{"Heat and air", "Return air", "return air", "°F", 1},
    Entry{"Heat and air", "Supply air", "supply air", "°F", 1},
    Entry{"Heat and air", "Temperature rise", "temperature rise", "°F", 1},
    Entry{"Heat and air", "Blower", "blower speed", "rpm", kGrouped},
    Entry{"Electrical", "Line, L–N", "line, L-N at the board", "V", 1},
    Entry{"Electrical", "Control, R–C", "control, R-C", "V", 1},
    Entry{"Electrical", "Call, W–C", "call, W-C", "V", 1},
    Entry{"Electrical", "Gas valve", "gas valve", "V", 1},
    Entry{"Electrical", "Igniter", "igniter current", "A", 2},
    Entry{"Electrical", "Inducer", "inducer current", "A", 2},
    Entry{"Electrical", "Blower", "blower current", "A", 2},
};

std::string written(double value, int decimals) {
    return decimals == kGrouped ? grouped(value) : figure(value, decimals);
}

ReadingGroup& group_called(std::vector<ReadingGroup>& groups, std::string_view title) {
    for (ReadingGroup& group : groups) {
        if (group.title == title) {
            return group;
        }
    }
    groups.push_back({std::string(title), {}});
    return groups.back();
}

std::string written(const bench::Gauge& gauge, const Entry& entry, double value) {
    if (gauge.words.empty()) {
        return written(value, entry.decimals);
    }
    return gauge.words[std::min(static_cast<std::size_t>(std::max(0.0, value)), gauge.words.size() - 1)];
}

constexpr float kColumnGap = 24; // design pixels
constexpr Type kName = Type::Secondary;

Type value_type(bool small) {
    return small ? Type::Secondary : Type::Body;
}
float heading_height(const Canvas& canvas) {
    return line_height(canvas, Type::Body) + canvas.px(4);
}
float row_height(const Canvas& canvas, bool small) {
    return line_height(canvas, value_type(small)) + canvas.px(1);
}
float gap_below(const Canvas& canvas) {
    return canvas.px(8);
}
float group_height(const Canvas& canvas, const ReadingGroup& group, bool small) {
    return heading_height(canvas) + row_height(canvas, small) * static_cast<float>(group.rows.size()) +
           gap_below(canvas);
}

/// A group that no column of this height holds goes on in the next.
std::vector<ReadingGroup> cut_to(const Canvas& canvas, const std::vector<ReadingGroup>& groups, float height,
                                 bool small) {
    const float rows = (height - heading_height(canvas) - gap_below(canvas)) / row_height(canvas, small);
    const auto most = static_cast<std::size_t>(std::max(1.0F, rows));
    std::vector<ReadingGroup> cut;
    for (const ReadingGroup& group : groups) {
        for (std::size_t first = 0; first < group.rows.size(); first += most) {
            const std::size_t last = std::min(group.rows.size(), first + most);
            const auto begin = group.rows.begin();
            cut.push_back(
                {group.title,
                 {begin + static_cast<std::ptrdiff_t>(first), begin + static_cast<std::ptrdiff_t>(last)}});
        }
    }
    return cut;
}

struct Widths {
    float name = 0, value = 0, unit = 0, what_if = 0;
    float total(const Canvas& canvas) const {
        return name + canvas.px(10) + value + (unit > 0 ? canvas.px(5) + unit : 0) +
               (what_if > 0 ? canvas.px(6) + what_if : 0);
    }
};

/// Values are given room for what they may become, so that columns stand still.
Widths widths_of(const Canvas& canvas, const std::vector<ReadingGroup>& groups, bool small, bool what_if) {
    const Type kValue = value_type(small);
    Widths widths;
    widths.value = std::max(text_size(canvas, "80,000", kValue).x, text_size(canvas, "−0.026", kValue).x);
    for (const ReadingGroup& group : groups) {
        for (const ReadingRow& row : group.rows) {
            widths.name = std::max(widths.name, text_size(canvas, row.name, kName).x);
            if (!row.unit.empty()) {
                widths.value = std::max(widths.value, text_size(canvas, row.value, kValue).x);
            }
            widths.unit = std::max(widths.unit, text_size(canvas, row.unit, Type::Minimum).x);
            if (what_if) {
                widths.what_if =
                    std::max({widths.what_if, widths.value, text_size(canvas, row.what_if, kValue).x});
            }
        }
    }
    widths.what_if += what_if ? canvas.px(10) : 0;
    return widths;
}

/// Shares groups out in their order to columns no taller than `tallest`.
std::vector<ReadingsLayout::Column> columns_of(const std::vector<float>& heights, float tallest) {
    std::vector<ReadingsLayout::Column> columns;
    float used = 0;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        if (columns.empty() || used + heights[i] > tallest + 0.5F) {
            columns.push_back({i, i});
            used = 0;
        }
        used += heights[i];
        columns.back().last = i + 1;
    }
    return columns;
}

} // namespace

std::string grouped(double value) {
    const std::string digits = figure(std::abs(value), 0);
    std::string text = value <= -0.5 ? "−" : "";
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && (digits.size() - i) % 3 == 0) {
            text += ',';
        }
        text += digits[i];
    }
    return text;
}

std::vector<ReadingGroup> readings_of(const bench::Gauges& gauges, const std::vector<double>& values,
                                      const std::vector<double>& what_if) {
    std::vector<ReadingGroup> groups;
    for (const Entry& entry : kEntries) {
        const auto found = std::find_if(gauges.list().begin(), gauges.list().end(),
                                        [&](const bench::Gauge& gauge) { return gauge.name == entry.gauge; });
        if (found == gauges.list().end()) {
            continue;
        }
        const auto i = static_cast<std::size_t>(found - gauges.list().begin());
        ReadingRow row{std::string(entry.name), written(*found, entry, values[i]), std::string(entry.unit)};
        if (!what_if.empty() && bench::differ(*found, values[i], what_if[i])) {
            row.what_if = written(*found, entry, what_if[i]);
        }
        group_called(groups, entry.group).rows.push_back(std::move(row));
    }
    return groups;
}

namespace {

ReadingsLayout lay_out_in(const Canvas& canvas, ImVec2 room, const std::vector<ReadingGroup>& all, bool small,
                          bool what_if) {
    ReadingsLayout layout;
    layout.small = small;
    layout.what_if = what_if;
    layout.groups = cut_to(canvas, all, room.y, small);
    const std::vector<ReadingGroup>& groups = layout.groups;
    const float gap = canvas.px(kColumnGap);
    const float column = widths_of(canvas, groups, small, what_if).total(canvas) + gap;
    layout.columns_a_page = std::max<std::size_t>(1, static_cast<std::size_t>((room.x + gap) / column));
    std::vector<float> heights;
    for (const ReadingGroup& group : groups) {
        heights.push_back(group_height(canvas, group, small));
    }
    // The least height at which one page holds all; else as many pages as the room asks for.
    float tallest = *std::max_element(heights.begin(), heights.end());
    const float step = row_height(canvas, small) / 2;
    while (tallest < room.y && columns_of(heights, tallest).size() > layout.columns_a_page) {
        tallest = std::min(room.y, tallest + step);
    }
    layout.columns = columns_of(heights, tallest);
    for (const ReadingsLayout::Column& one : layout.columns) {
        float height = 0;
        for (std::size_t g = one.first; g < one.last; ++g) {
            height += heights[g];
        }
        layout.height = std::max(layout.height, height);
    }
    return layout;
}

} // namespace

ReadingsLayout lay_out_readings(const Canvas& canvas, ImVec2 room, const std::vector<ReadingGroup>& groups,
                                bool what_if) {
    const ReadingsLayout layout = lay_out_in(canvas, room, groups, false, what_if);
    if (layout.pages() == 1 || layout.columns_a_page == 1) {
        return layout.pages() == 1 ? layout : lay_out_in(canvas, room, groups, true, what_if);
    }
    // The lamp is told beside the board's step anyway: contacts may wait for the last page.
    std::vector<ReadingGroup> order = groups;
    std::stable_partition(order.begin(), order.end(),
                          [](const ReadingGroup& group) { return group.title != kControl; });
    return lay_out_in(canvas, room, order, true, what_if);
}

void draw_readings(const Canvas& canvas, Rect area, const ReadingsLayout& layout, std::size_t page) {
    const Theme& theme = *canvas.theme;
    const std::vector<ReadingGroup>& groups = layout.groups;
    const Type kValue = value_type(layout.small);
    const Widths widths = widths_of(canvas, groups, layout.small, layout.what_if);
    const float gap = canvas.px(kColumnGap);
    const float share = (area.width() + gap) / static_cast<float>(layout.columns_a_page);
    const float width = std::min(share - gap, widths.total(canvas) + canvas.px(40));
    const std::size_t first = page * layout.columns_a_page;
    for (std::size_t c = first; c < std::min(layout.columns.size(), first + layout.columns_a_page); ++c) {
        Rect column = rect_at({std::round(area.min.x + share * static_cast<float>(c - first)), area.min.y},
                              {std::round(width), area.height()});
        for (std::size_t g = layout.columns[c].first; g < layout.columns[c].last; ++g) {
            const Rect heading = column.cut_top(heading_height(canvas));
            text(canvas, heading.min, groups[g].title, Type::Body, theme.ink);
            const float y = heading.max.y - canvas.px(3);
            segment(canvas, {heading.min.x, y}, {heading.max.x, y}, Line::Rule, theme.pencil);
            for (const ReadingRow& row : groups[g].rows) {
                Rect line = column.cut_top(row_height(canvas, layout.small));
                text_in(canvas, line.cut_left(widths.name), row.name, kName, theme.pencil);
                if (layout.what_if) {
                    const Rect mark = line.cut_right(widths.what_if);
                    line.cut_right(canvas.px(6));
                    if (!row.what_if.empty()) {
                        fill(canvas, mark, theme.ink);
                        text_in(canvas, mark, row.what_if, kValue, theme.ground, Align::Middle);
                    }
                }
                if (row.unit.empty()) {
                    text_in(canvas, line, row.value, kValue, theme.ink, Align::End);
                    continue;
                }
                text_in(canvas, line.cut_right(widths.unit), row.unit, Type::Minimum, theme.pencil);
                line.cut_right(canvas.px(5));
                text_in(canvas, line, row.value, kValue, theme.ink, Align::End);
            }
            column.cut_top(gap_below(canvas));
        }
    }
}

} // namespace lightoff::explore
