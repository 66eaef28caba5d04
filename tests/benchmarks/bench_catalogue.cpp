// SPDX-License-Identifier: MIT
//
// The whole catalogue: every fault at its worst, five minutes of a call from cold each, one after the other
// on one core. Goal: under one second.
#include "files/bundle_loader.hpp"
#include "lesson/scenario.hpp"

#include <cstdio>
#include <sys/resource.h>

namespace {

using namespace lightoff;

double user_seconds() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return static_cast<double>(used.ru_utime.tv_sec) + 1e-6 * static_cast<double>(used.ru_utime.tv_usec);
}

} // namespace

int main() {
    constexpr double kGoal_s = 1.0;
    constexpr double kEach_s = 300.0;
    const double before_loading_s = user_seconds();
    const files::LoadedBundle bundle = files::load_bundle("call-for-heat");
    const double start_s = user_seconds();
    furnace::Workspace workspace(bundle.site.model);
    const auto ticks = static_cast<std::uint64_t>(kEach_s / bundle.site.model.board.tick_s);
    std::uint64_t running = 0;
    for (const faults::Fault& fault : bundle.site.catalogue.faults) {
        lesson::Scenario scenario = bundle.scenario;
        scenario.faults = {{fault.id, 1.0, faults::Trigger::from_start, 0}};
        bench::World world = lesson::begin_world(bundle.site, scenario, 0);
        bench::History(bundle.site, lesson::history_of(bundle.site, scenario)).run(world, workspace, ticks);
        running += world.state.signals.combustion.heat_released_hhv_w > 0.0 ? 1 : 0;
    }
    const double taken_s = user_seconds() - start_s;
    const auto faults = static_cast<double>(bundle.site.catalogue.faults.size());
    std::printf("loading the bundle with its catalogue: %.1f ms\n", 1e3 * (start_s - before_loading_s));
    std::printf("%.0f faults x %.0f s: %.2f s, %.0f simulated s/s; %d of them burn at the end\n", faults,
                kEach_s, taken_s, faults * kEach_s / taken_s, static_cast<int>(running));
    std::printf("goal %.1f s: %s\n", kGoal_s, taken_s <= kGoal_s ? "met" : "MISSED");
    return 0;
}
