// SPDX-License-Identifier: MIT
#pragma once
#include "bench/gauges.hpp"
#include "gui/canvas/canvas.hpp"

#include <string>
#include <vector>

namespace lightoff::explore {

struct ReadingRow {
    std::string name, value, unit;
    std::string what_if = {}; ///< of the furnace beside, where it differs by more than can be read
};

struct ReadingGroup {
    std::string title;
    std::vector<ReadingRow> rows;
};

/// The main readings in trade units, true values; those of the furnace beside in `what_if`, empty if there is
/// none. Rows that this furnace has no gauge for are left out.
std::vector<ReadingGroup> readings_of(const bench::Gauges& gauges, const std::vector<double>& values,
                                      const std::vector<double>& what_if);

/// Groups shared out to columns and, where one page does not hold them, pages.
struct ReadingsLayout {
    struct Column {
        std::size_t first = 0, last = 0; ///< groups
    };
    std::vector<ReadingGroup> groups; ///< a tall one may have been cut in two
    std::vector<Column> columns;
    bool small = false;   ///< values in the smaller type, to hold more
    bool what_if = false; ///< there is a column for those of the furnace beside
    std::size_t columns_a_page = 1;
    float height = 0; ///< pixels of the tallest column
    std::size_t pages() const { return (columns.size() + columns_a_page - 1) / columns_a_page; }
};

ReadingsLayout lay_out_readings(const canvas::Canvas& canvas, ImVec2 room,
                                const std::vector<ReadingGroup>& groups, bool what_if);
void draw_readings(const canvas::Canvas& canvas, canvas::Rect area, const ReadingsLayout& layout,
                   std::size_t page);

/// 79,968: groups of three.
std::string grouped(double value);

} // namespace lightoff::explore
