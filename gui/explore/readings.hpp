// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "furnace/furnace.hpp"
#include "gui/canvas/canvas.hpp"

#include <string>
#include <vector>

namespace lightoff::explore {

struct ReadingRow {
    std::string name, value, unit;
};

struct ReadingGroup {
    std::string title;
    std::vector<ReadingRow> rows;
};

/// The main readings in trade units, true values. Rows that this furnace has no readout for are left out.
std::vector<ReadingGroup> readings_of(const furnace::Model& model, const bench::World& world,
                                      furnace::Workspace& workspace);

/// Groups shared out to columns and, where one page does not hold them, pages.
struct ReadingsLayout {
    struct Column {
        std::size_t first = 0, last = 0; ///< groups
    };
    std::vector<ReadingGroup> groups; ///< a tall one may have been cut in two
    std::vector<Column> columns;
    bool small = false; ///< values in the smaller type, to hold more
    std::size_t columns_a_page = 1;
    float height = 0; ///< pixels of the tallest column
    std::size_t pages() const { return (columns.size() + columns_a_page - 1) / columns_a_page; }
};

ReadingsLayout lay_out_readings(const canvas::Canvas& canvas, ImVec2 room,
                                const std::vector<ReadingGroup>& groups);
void draw_readings(const canvas::Canvas& canvas, canvas::Rect area, const ReadingsLayout& layout,
                   std::size_t page);

/// 79,968: groups of three.
std::string grouped(double value);

} // namespace lightoff::explore
