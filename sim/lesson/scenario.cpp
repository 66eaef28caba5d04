// SPDX-License-Identifier: MIT
#include "lesson/scenario.hpp"

#include "units/random.hpp"

#include <algorithm>

namespace lightoff::lesson {
namespace {

constexpr std::uint64_t kToleranceStream = 1;

/// A healthy furnace is not needle-perfect: each seed gives part values within ordinary tolerance.
void vary_parts(const furnace::Model& model, bench::World& world, std::uint64_t seed) {
    if (seed == 0)
        return;
    for (std::size_t i = 0; i < model.tolerances.size(); ++i) {
        const furnace::Tolerance& t = model.tolerances[i];
        const double offset = t.spread * units::random_signed(seed, kToleranceStream, i);
        const std::uint64_t field = furnace::condition_field(model, t.path);
        furnace::set_condition_field(world.condition, field, t.nominal + offset);
    }
}

std::vector<bench::Onset> onsets_of(const furnace::Model& model,
                                    const std::vector<ConditionChange>& changes) {
    std::vector<bench::Onset> onsets;
    for (const ConditionChange& change : changes) {
        bench::Onset onset;
        onset.tick = change.tick;
        onset.field = static_cast<std::uint32_t>(furnace::condition_field(model, change.path));
        onset.value = change.value;
        onsets.push_back(onset);
    }
    return onsets;
}

} // namespace

bench::World begin_world(const bench::Site& site, const Scenario& scenario, std::uint64_t seed) {
    const furnace::Model& model = site.model;
    bench::World world = bench::fresh_world(model, scenario.inputs, scenario.house_k, seed);
    vary_parts(model, world, seed);
    for (const ConditionChange& change : scenario.overrides)
        furnace::set_condition_field(world.condition, furnace::condition_field(model, change.path),
                                     change.value);
    bench::set_onsets(world, onsets_of(model, scenario.onsets));
    return world;
}

bench::World arrive(const bench::Site& site, const Scenario& scenario, std::uint64_t seed,
                    furnace::Workspace& workspace) {
    bench::World world = begin_world(site, scenario, seed);
    HistoryPlayer(site, scenario).run(world, workspace, scenario.arrive_after_ticks);
    return world;
}

HistoryPlayer::HistoryPlayer(const bench::Site& site, const Scenario& scenario) : site_(&site) {
    for (const HistoryAction& h : scenario.history)
        steps_.push_back({h.tick, bench::parse_action(site, h.action)});
    std::stable_sort(steps_.begin(), steps_.end(),
                     [](const Step& a, const Step& b) { return a.tick < b.tick; });
}

void HistoryPlayer::run(bench::World& world, furnace::Workspace& workspace, std::uint64_t until_tick) {
    while (world.tick < until_tick) {
        while (next_ < steps_.size() && steps_[next_].tick <= world.tick && world.hands.busy == 0)
            bench::begin(*site_, world, steps_[next_++].action);
        std::uint64_t stop = until_tick;
        if (next_ < steps_.size())
            stop = std::clamp(steps_[next_].tick, world.tick + 1, until_tick);
        bench::advance(*site_, world, workspace, stop - world.tick);
    }
}

} // namespace lightoff::lesson
