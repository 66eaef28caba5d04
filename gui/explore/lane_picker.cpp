// SPDX-License-Identifier: MIT
#include "gui/explore/lane_picker.hpp"

#include "gui/trace/scale.hpp"

#include <algorithm>

namespace lightoff::explore {

void draw_lane_picker(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<trace::Lane>& lanes,
                      const std::vector<std::string>& groups, LanePicker& picker) {
    sheet::Column column(canvas, area, "lanes");
    std::vector<sheet::Entry> entries;
    for (std::size_t i = 0; i < lanes.size(); ++i) {
        sheet::Entry entry;
        entry.words = lanes[i].name + (lanes[i].unit.empty() ? "" : ", " + lanes[i].unit);
        entry.group = i < groups.size() ? groups[i] : std::string();
        entry.chosen = std::find(picker.chosen.begin(), picker.chosen.end(), i) != picker.chosen.end();
        entries.push_back(std::move(entry));
    }
    const std::string typed = picker.search;
    const std::optional<std::size_t> picked = sheet::pick_list(column, "lanes", entries, picker.search);
    if (!picked) {
        return;
    }
    picker.search = typed;
    if (!entries[*picked].chosen) {
        picker.chosen.push_back(*picked);
    } else if (picker.chosen.size() > 1) {
        std::erase(picker.chosen, *picked);
    }
}

std::vector<trace::Lane> chosen_lanes(const std::vector<trace::Lane>& lanes, const LanePicker& picker,
                                      const trace::Recording& recording, const trace::Recording* other) {
    std::vector<trace::Lane> chosen;
    for (const std::size_t index : picker.chosen) {
        trace::Lane lane = lanes[index];
        lane.column = lane.column.value_or(index);
        trace::Extremes values = recording.extremes(*lane.column, 0, recording.size());
        if (other != nullptr) {
            values.take(other->extremes(*lane.column, 0, other->size()));
        }
        for (const float level : lane.levels) {
            values.take(level);
        }
        trace::fit_scale(lane, values);
        chosen.push_back(std::move(lane));
    }
    return chosen;
}

} // namespace lightoff::explore
