// SPDX-License-Identifier: MIT
#include "lesson/scenario.hpp"

#include "furnace/tolerance.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::lesson {
namespace {

/// Lays the onsets of a fault that is not there from the start. A short that waits is an open bridge.
class WaitingFault {
public:
    WaitingFault(const faults::Fault& fault, const FaultUse& use) : fault_(fault), severity_(use.severity) {
        pattern_.tick = use.tick;
        if (use.onset == faults::Trigger::when_hot) {
            pattern_.trigger = bench::OnsetTrigger::while_hot;
            pattern_.node = static_cast<std::uint32_t>(fault.hot_node);
            pattern_.level = fault.hot_above_k;
        }
        if (use.onset == faults::Trigger::now_and_then) {
            pattern_.trigger = bench::OnsetTrigger::now_and_then;
            pattern_.level = static_cast<double>(fault.stretch_ticks);
        }
    }

    void lay(const faults::Catalogue& catalogue, furnace::Condition& condition,
             std::vector<bench::Onset>& onsets) const {
        for (const faults::Setting& s : faults::settings_at(fault_, severity_))
            onsets.push_back(onset(s.field, s.value, furnace::condition_value(condition, s.field)));
        for (electrical::Bridge bridge : faults::bridges_at(catalogue, fault_, severity_)) {
            const int slot = faults::free_bridge(condition.wiring);
            if (slot < 0)
                throw std::invalid_argument("more shorts at once than the wiring has room for");
            const auto ohm = static_cast<double>(bridge.ohm);
            bridge.ohm = electrical::kOpenOhm;
            condition.wiring.bridges[static_cast<std::size_t>(slot)] = bridge;
            onsets.push_back(
                onset(faults::bridge_field(slot) + 2, ohm, static_cast<double>(electrical::kOpenOhm)));
        }
    }

private:
    [[nodiscard]] bench::Onset onset(std::uint64_t field, double value, double otherwise) const {
        bench::Onset onset = pattern_;
        onset.field = static_cast<std::uint32_t>(field);
        onset.value = value;
        onset.otherwise = otherwise;
        return onset;
    }

    const faults::Fault& fault_;
    double severity_;
    bench::Onset pattern_;
};

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
        WaitingFault(fault, use).lay(catalogue, world.condition, onsets);
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
