// SPDX-License-Identifier: MIT
#include "lesson/scenario.hpp"

#include "bench/fault_onsets.hpp"
#include "furnace/tolerance.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::lesson {
namespace {

void set_in(const faults::Catalogue& catalogue, const FaultUse& use, bench::World& world,
            std::vector<bench::Onset>& onsets) {
    const int index = catalogue.find_fault(use.id);
    if (index < 0)
        throw std::invalid_argument("this furnace has no fault \"" + use.id +
                                    "\"; they are listed by `lightoff-cli faults`");
    const faults::Fault& fault = catalogue.faults[static_cast<std::size_t>(index)];
    if (std::find(fault.triggers.begin(), fault.triggers.end(), use.onset) == fault.triggers.end())
        throw std::invalid_argument("fault \"" + use.id + "\" does not set in that way");
    if (use.onset == faults::Trigger::from_start)
        faults::apply(catalogue, fault, use.severity, world.condition, world.inputs);
    else
        bench::lay_waiting(catalogue, fault, use.severity, use.onset, use.tick, world.condition, onsets);
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
    world.condition = furnace::as_built(model, seed);
    for (const ConditionChange& change : scenario.overrides)
        furnace::set_condition_field(world.condition, furnace::condition_field(model, change.path),
                                     change.value);
    std::vector<bench::Onset> onsets = onsets_of(model, scenario.onsets);
    for (const FaultUse& use : scenario.faults)
        set_in(site.catalogue, use, world, onsets);
    bench::set_onsets(world, onsets);
    return world;
}

std::vector<bench::TimedAction> history_of(const bench::Site& site, const Scenario& scenario) {
    std::vector<bench::TimedAction> steps;
    for (const HistoryAction& h : scenario.history)
        steps.push_back({h.tick, bench::parse_action(site, h.action)});
    return steps;
}

bench::World arrive(const bench::Site& site, const Scenario& scenario, std::uint64_t seed,
                    furnace::Workspace& workspace) {
    bench::World world = begin_world(site, scenario, seed);
    bench::History(site, history_of(site, scenario)).run(world, workspace, scenario.arrive_after_ticks);
    return world;
}

} // namespace lightoff::lesson
