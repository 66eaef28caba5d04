// SPDX-License-Identifier: MIT
#include "lesson/begin_of.hpp"

namespace lightoff::lesson {

evidence::Begin begin_of(const bench::Site& site, const Scenario& scenario, std::uint64_t seed) {
    Scenario sound = scenario;
    sound.faults.clear();
    return {begin_world(site, sound, seed), history_of(site, scenario), scenario.arrive_after_ticks};
}

std::vector<evidence::RealFault> real_faults(const bench::Site& site, const Scenario& scenario) {
    std::vector<evidence::RealFault> real;
    for (const FaultUse& use : scenario.faults)
        real.push_back(
            {site.catalogue.find_fault(use.id), use.severity, use.onset == faults::Trigger::now_and_then});
    return real;
}

} // namespace lightoff::lesson
