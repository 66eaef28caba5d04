// SPDX-License-Identifier: MIT
#pragma once
#include "gui/sheet/pick_list.hpp"
#include "gui/trace/strip_chart.hpp"

#include <string>
#include <vector>

namespace lightoff::explore {

/// Which lanes of a recording somebody wants on the paper.
struct LanePicker {
    bool open = false;
    std::string search;
    std::vector<std::size_t> chosen; ///< places in the list of all lanes, uppermost first
};

/// The list of all lanes with a field to search by typing; pressing one puts it at the foot of the paper or
/// takes it off. One lane always stays. `groups` are headings, one for each lane.
void draw_lane_picker(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<trace::Lane>& lanes,
                      const std::vector<std::string>& groups, LanePicker& picker);

/// Those chosen, each with its column of the recording, scales fitted to all that was recorded; with a second
/// recording to that, too.
std::vector<trace::Lane> chosen_lanes(const std::vector<trace::Lane>& lanes, const LanePicker& picker,
                                      const trace::Recording& recording, const trace::Recording* other);

} // namespace lightoff::explore
