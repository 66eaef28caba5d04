// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"
#include "gui/trace/strip_chart.hpp"
#include "lesson/debrief.hpp"

#include <memory>
#include <string>
#include <vector>

namespace lightoff::debrief {

/// The contrast call, if there is one.
struct Twin {
    std::string name; ///< empty: none
    std::string title;
    std::string complaint;
};

/// A finished attempt as the window shows it. Nothing in it changes.
struct Model {
    std::shared_ptr<const files::LoadedBundle> bundle;
    lesson::Debrief debrief;
    Twin twin;
    // The recorder's paper: seconds since arrival.
    trace::Recording recording{1};
    std::vector<trace::Lane> lanes;
    std::vector<std::string> lane_groups; ///< headings, one for each lane
    std::vector<trace::Event> flags;

    [[nodiscard]] const bench::Site& site() const { return bundle->site; }
    [[nodiscard]] const lesson::Story& story() const { return debrief.story; }
    [[nodiscard]] double seconds(std::uint64_t tick) const;
    [[nodiscard]] std::uint64_t tick_at(double seconds) const;
    /// Of the whole attempt.
    [[nodiscard]] double length_s() const { return seconds(story().last_tick); }
};

/// So many lanes, the first ones, are on the paper until somebody picks others.
inline constexpr std::size_t kUsualLanes = 10;

Model make_model(std::shared_ptr<const files::LoadedBundle> bundle, lesson::Debrief debrief, Twin twin);

} // namespace lightoff::debrief
