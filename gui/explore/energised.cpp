// SPDX-License-Identifier: MIT
#include "gui/explore/energised.hpp"

#include "furnace/network_now.hpp"

namespace lightoff::explore {

using diagram::Carried;

namespace {

constexpr double kHalfLine_v = 60.0, kHalfSecondary_v = 12.0;

} // namespace

std::vector<Carried> energised(const diagram::Ladder& ladder, const furnace::Model& model,
                               const bench::World& world, furnace::Workspace& workspace) {
    const electrical::AcSolution ac =
        furnace::solve_ac(model, world.state, world.condition, world.inputs, workspace);
    electrical::AcVoltages all{};
    workspace.network.node_voltages(ac, all);
    const auto volts = [&](std::size_t node, int against) {
        return against < 0 ? 0.0 : units::abs(all[node] - all[static_cast<std::size_t>(against)]);
    };
    std::vector<Carried> carried(ladder.low_voltage.size(), Carried::nothing);
    for (std::size_t node = 0; node < carried.size(); ++node) {
        if (ladder.low_voltage[node] != 0 && volts(node, ladder.common_node) > kHalfSecondary_v)
            carried[node] = Carried::volts_24;
        if (ladder.low_voltage[node] == 0 && volts(node, ladder.neutral_node) > kHalfLine_v)
            carried[node] = Carried::volts_120;
    }
    return carried;
}

} // namespace lightoff::explore
