// SPDX-License-Identifier: MIT
#include "gui/debrief/model.hpp"

#include "gui/explore/lanes.hpp"
#include "report/pictures.hpp"
#include "report/words.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace lightoff::debrief {
namespace {

/// Lanes that tell most of a call come first, in the order in which a call goes; the others follow.
constexpr std::array<std::string_view, kUsualLanes> kFirst{
    "control, R-C",    "call, W-C", "inducer speed", "suction at the pressure switch",
    "igniter current", "gas valve", "flame current", "manifold pressure",
    "blower speed",    "supply air"};
constexpr int kSteps = 4; ///< of a lane's scale

/// A scale of round numbers that holds every value.
trace::Lane lane_of(const lesson::Tracks& tracks, std::size_t index) {
    const lesson::Tracks::Lane& track = tracks.lanes[index];
    float low = 0;
    float high = 0;
    for (std::size_t i = 0; i < tracks.ticks.size(); ++i) {
        low = std::min(low, tracks.value(i, index));
        high = std::max(high, tracks.value(i, index));
    }
    const double span = std::max(0.1, static_cast<double>(high) - static_cast<double>(low));
    const double step = report::round_step(1.05 * span, kSteps);
    trace::Lane lane;
    lane.name = track.name;
    lane.unit = report::unit_text(track.unit);
    lane.low = static_cast<float>(std::floor(static_cast<double>(low) / step) * step);
    lane.high = static_cast<float>(std::max(1.0, std::ceil(1.02 * static_cast<double>(high) / step)) * step);
    lane.decimals = lane.unit == "in. w.c." ? 2 : step >= 10 ? 0 : step >= 0.5 ? 1 : 2;
    lane.energy = explore::energy_of(track.group, track.name);
    return lane;
}

std::vector<std::size_t> order_of(const lesson::Tracks& tracks) {
    std::vector<std::size_t> order;
    for (const std::string_view name : kFirst)
        for (std::size_t i = 0; i < tracks.lanes.size(); ++i)
            if (tracks.lanes[i].name == name)
                order.push_back(i);
    for (std::size_t i = 0; i < tracks.lanes.size(); ++i)
        if (std::find(order.begin(), order.end(), i) == order.end())
            order.push_back(i);
    return order;
}

} // namespace

double Model::seconds(std::uint64_t tick) const {
    return static_cast<double>(tick - std::min(tick, story().arrived_tick)) * units::seconds_per_tick;
}

std::uint64_t Model::tick_at(double seconds) const {
    const auto since =
        static_cast<std::uint64_t>(std::llround(std::max(0.0, seconds) / units::seconds_per_tick));
    return std::min(story().last_tick, story().arrived_tick + since);
}

Model make_model(std::shared_ptr<const files::LoadedBundle> bundle, lesson::Debrief debrief, Twin twin) {
    Model model;
    model.bundle = std::move(bundle);
    model.debrief = std::move(debrief);
    model.twin = std::move(twin);
    const lesson::Tracks& tracks = model.story().tracks;
    const std::vector<std::size_t> order = order_of(tracks);
    model.recording = trace::Recording(order.size());
    for (const std::size_t index : order) {
        model.lanes.push_back(lane_of(tracks, index));
        model.lane_groups.push_back(tracks.lanes[index].group);
    }
    std::vector<float> sample(order.size());
    for (std::size_t i = 0; i < tracks.ticks.size(); ++i) {
        for (std::size_t k = 0; k < order.size(); ++k)
            sample[k] = tracks.value(i, order[k]);
        model.recording.append(model.seconds(tracks.ticks[i]), sample);
    }
    for (const bench::Milestone& milestone : model.story().milestones)
        if (const std::optional<std::string> name = explore::flag_of(milestone))
            model.flags.push_back({model.seconds(milestone.tick), *name});
    return model;
}

} // namespace lightoff::debrief
