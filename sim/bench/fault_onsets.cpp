// SPDX-License-Identifier: MIT
#include "bench/fault_onsets.hpp"

#include "furnace/condition_paths.hpp"

#include <stdexcept>

namespace lightoff::bench {

void lay_waiting(const faults::Catalogue& catalogue, const faults::Fault& fault, double severity,
                 faults::Trigger trigger, std::uint64_t tick, furnace::Condition& condition,
                 std::vector<Onset>& onsets) {
    Onset pattern;
    pattern.tick = tick;
    if (trigger == faults::Trigger::when_hot) {
        pattern.trigger = OnsetTrigger::while_hot;
        pattern.node = static_cast<std::uint32_t>(fault.hot_node);
        pattern.level = fault.hot_above_k;
    }
    if (trigger == faults::Trigger::now_and_then) {
        pattern.trigger = OnsetTrigger::now_and_then;
        pattern.level = static_cast<double>(fault.stretch_ticks);
    }
    const auto lay = [&](std::uint64_t field, double value, double otherwise) {
        Onset onset = pattern;
        onset.field = static_cast<std::uint32_t>(field);
        onset.value = value;
        onset.otherwise = otherwise;
        onsets.push_back(onset);
    };
    for (const faults::Setting& s : faults::settings_at(fault, severity))
        lay(s.field, s.value, furnace::condition_value(condition, s.field));
    for (electrical::Bridge bridge : faults::bridges_at(catalogue, fault, severity)) {
        const int slot = faults::free_bridge(condition.wiring);
        if (slot < 0)
            throw std::invalid_argument("more shorts at once than the wiring has room for");
        const auto ohm = static_cast<double>(bridge.ohm);
        bridge.ohm = electrical::kOpenOhm;
        condition.wiring.bridges[static_cast<std::size_t>(slot)] = bridge;
        lay(faults::bridge_field(slot) + 2, ohm, static_cast<double>(electrical::kOpenOhm));
    }
}

} // namespace lightoff::bench
