// SPDX-License-Identifier: MIT
#include "lesson/playback.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::lesson {

void play(const bench::Site& site, const Scenario& scenario, const Log& log, Onlooker& onlooker) {
    furnace::Workspace workspace(site.model);
    bench::World world = arrive(site, scenario, log.seed, workspace);
    onlooker.arrived(world);
    const auto run_to = [&](std::uint64_t tick) {
        while (world.tick < tick) {
            bench::advance(site, world, workspace, 1);
            onlooker.tick(world);
        }
    };
    std::uint64_t last = log.last_tick;
    for (const Log::Entry& entry : log.entries) {
        run_to(entry.tick);
        const bench::Verdict verdict = bench::check(site, world, entry.action);
        if (!verdict.allowed)
            throw std::invalid_argument("action \"" + bench::format_action(site, entry.action) +
                                        "\" of the record is refused: " + verdict.reason);
        onlooker.before(world, entry.action);
        bench::begin(site, world, entry.action);
        last = std::max(last, entry.tick + verdict.duration_ticks + 1);
    }
    run_to(last);
}

} // namespace lightoff::lesson
