// SPDX-License-Identifier: MIT
#include "bench/milestones.hpp"

#include "furnace/network_now.hpp"

#include "units/convert.hpp"

#include <array>
#include <string_view>

namespace lightoff::bench {

int lit_burners(const furnace::Model& model, const World& world) {
    int lit = 0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(model.gas.burner_count); ++i)
        if (world.state.combustion.flame[i] > 0.5)
            ++lit;
    return lit;
}

bool igniter_lights_gas(const World& world) {
    return world.state.heat.temperature.igniter > units::celsius_to_k(980.0);
}

namespace {

struct Watched {
    int (*value)(const furnace::Model&, const World&);
    std::string_view on;
    std::string_view off;
};

int fuse_melted(const furnace::Model& model, const World& w) {
    for (const furnace::FuseBinding& fuse : model.wiring.fuses)
        if (w.condition.wiring.series_ohm[static_cast<std::size_t>(fuse.element)] > 1e6F)
            return 1;
    return 0;
}

constexpr std::array kWatched{
    Watched{[](const furnace::Model&, const World& w) {
                return static_cast<int>(w.state.thermostat_heat_closed);
            },
            "thermostat closes R-W", "thermostat opens R-W"},
    Watched{[](const furnace::Model&, const World& w) { return static_cast<int>(w.state.board.powered); },
            "board has control power", "board loses control power"},
    Watched{
        [](const furnace::Model&, const World& w) { return w.state.draft.inducer.speed_rad_s > 1.0 ? 1 : 0; },
        "inducer turns", "inducer stands still"},
    Watched{[](const furnace::Model&, const World& w) {
                return static_cast<int>(w.state.signals.draft.switch_closed);
            },
            "pressure switch closes", "pressure switch opens"},
    Watched{[](const furnace::Model&, const World& w) { return igniter_lights_gas(w) ? 1 : 0; },
            "igniter glows bright enough to light gas", "igniter has cooled below lighting heat"},
    Watched{[](const furnace::Model& m, const World& w) {
                return m.wiring.gas_valve >= 0 && furnace::armature_in(m, w.state, m.wiring.gas_valve) ? 1
                                                                                                       : 0;
            },
            "gas valve opens", "gas valve closes"},
    Watched{[](const furnace::Model& m, const World& w) { return lit_burners(m, w) > 0 ? 1 : 0; },
            "first burner lights", "last burner goes out"},
    Watched{[](const furnace::Model& m, const World& w) {
                return lit_burners(m, w) == m.gas.burner_count ? 1 : 0;
            },
            "all burners are lit", "not all burners are lit"},
    Watched{
        [](const furnace::Model&, const World& w) { return w.state.air.blower.speed_rad_s > 1.0 ? 1 : 0; },
        "blower turns", "blower stands still"},
    Watched{
        [](const furnace::Model&, const World& w) { return w.state.signals.heat.limit_closed != 0 ? 1 : 0; },
        "limit closes", "limit opens"},
    Watched{[](const furnace::Model&, const World& w) {
                return w.state.signals.heat.rollout_closed != 0 ? 1 : 0;
            },
            "rollout switch closes", "rollout switch opens"},
    Watched{[](const furnace::Model&, const World& w) {
                return w.state.signals.heat.blower_overload_closed != 0 ? 1 : 0;
            },
            "blower motor's overload closes", "blower motor's overload opens"},
    Watched{[](const furnace::Model&, const World& w) {
                return w.state.signals.heat.inducer_overload_closed != 0 ? 1 : 0;
            },
            "inducer motor's overload closes", "inducer motor's overload opens"},
    Watched{fuse_melted, "control fuse melts", "control fuse is whole"}};

} // namespace

void MilestoneWatch::look(const World& world, std::vector<Milestone>& out) {
    const control::Board& board = model_->board;
    std::vector<int> now;
    for (const Watched& w : kWatched)
        now.push_back(w.value(*model_, world));
    for (std::size_t m = 0; m < board.machines.size(); ++m)
        now.push_back(world.state.board.state[m]);
    if (!seen_.empty()) {
        for (std::size_t i = 0; i < kWatched.size(); ++i)
            if (now[i] != seen_[i])
                out.push_back({world.tick, std::string(now[i] != 0 ? kWatched[i].on : kWatched[i].off)});
        for (std::size_t m = 0; m < board.machines.size(); ++m) {
            const std::size_t i = kWatched.size() + m;
            if (now[i] != seen_[i])
                out.push_back(
                    {world.tick, "board, " + board.machines[m].name + ": " +
                                     board.machines[m].state_titles[static_cast<std::size_t>(now[i])]});
        }
    }
    seen_ = std::move(now);
}

} // namespace lightoff::bench
