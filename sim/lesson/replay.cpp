// SPDX-License-Identifier: MIT
#include "lesson/replay.hpp"

#include "units/fields.hpp"

namespace lightoff::lesson {

namespace {

/// A World without what lies on the bench.
struct AtWork {
    const bench::World* world;
    template <class Visit>
    static void fields(const AtWork& self, Visit& visit) {
        bench::World::fields_at_work(*self.world, visit);
    }
};

} // namespace

/// What lies on the bench counts from when something lies there.
std::uint64_t world_hash(const bench::World& world) {
    const std::uint64_t at_work = units::hash_fields(AtWork{&world});
    const std::uint64_t on_the_bench = units::hash_fields(world.old_parts);
    const std::uint64_t empty = units::hash_fields(bench::OldParts{});
    return on_the_bench == empty ? at_work : units::mix(at_work, on_the_bench);
}

ReplayResult replay(const bench::Site& site, const Scenario& scenario, const Log& log,
                    const std::function<void(const bench::World&)>& look) {
    furnace::Workspace workspace(site.model);
    ReplayResult result;
    result.world = arrive(site, scenario, log.seed, workspace);
    bench::World& world = result.world;

    std::size_t entry = 0;
    std::size_t mark = 0;
    while (entry < log.entries.size() || mark < log.marks.size()) {
        const std::uint64_t entry_tick =
            entry < log.entries.size() ? log.entries[entry].tick : ~std::uint64_t{0};
        const std::uint64_t mark_tick = mark < log.marks.size() ? log.marks[mark].tick : ~std::uint64_t{0};
        const std::uint64_t stop = entry_tick < mark_tick ? entry_tick : mark_tick;
        if (stop > world.tick)
            bench::advance(site, world, workspace, stop - world.tick);
        // A mark shows the World before an action that begins in the same tick.
        if (mark_tick <= entry_tick) {
            const std::uint64_t hash = world_hash(world);
            if (look)
                look(world);
            ++result.marks_compared;
            if (hash != log.marks[mark].world_hash) {
                result.divergence =
                    Divergence{world.tick, "the World differs", log.marks[mark].world_hash, hash};
                return result;
            }
            ++mark;
        } else {
            const bench::Verdict verdict = bench::begin(site, world, log.entries[entry].action);
            if (!verdict.allowed) {
                result.divergence =
                    Divergence{world.tick, "a recorded action is refused: " + verdict.reason, 0, 0};
                return result;
            }
            ++entry;
        }
    }
    if (log.last_tick > world.tick)
        bench::advance(site, world, workspace, log.last_tick - world.tick);
    return result;
}

} // namespace lightoff::lesson
