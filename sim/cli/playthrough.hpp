// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"

#include <cstdint>

namespace lightoff::cli {

/// A scenario as it goes by itself: its history is played, nobody else acts. `bundle` must outlive it.
class Playthrough {
public:
    Playthrough(const files::LoadedBundle& bundle, std::uint64_t seed)
        : bundle_(&bundle), world_(lesson::begin_world(bundle.site, bundle.scenario, seed)),
          workspace_(bundle.site.model),
          history_(bundle.site, lesson::history_of(bundle.site, bundle.scenario)) {}

    void run_to(std::uint64_t tick) { history_.run(world_, workspace_, tick); }

    [[nodiscard]] const furnace::Model& model() const { return bundle_->site.model; }
    [[nodiscard]] const bench::World& world() const { return world_; }
    furnace::Workspace& workspace() { return workspace_; }

private:
    const files::LoadedBundle* bundle_;
    bench::World world_;
    furnace::Workspace workspace_;
    bench::History history_;
};

inline double seconds_of(std::uint64_t tick) {
    return static_cast<double>(tick) / units::ticks_per_second;
}

} // namespace lightoff::cli
