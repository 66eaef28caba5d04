// SPDX-License-Identifier: MIT
#include "gui/explore/lanes.hpp"

#include "units/convert.hpp"

#include <algorithm>
#include <limits>
#include <string_view>

namespace lightoff::explore {
namespace {

using canvas::Energy;
using namespace units;

struct ShortName {
    std::string_view milestone;
    std::string_view flag; ///< empty: none
};

constexpr std::array kShortNames{
    ShortName{"thermostat closes R-W", "call"},
    ShortName{"thermostat opens R-W", "call ends"},
    ShortName{"board has control power", ""},
    ShortName{"board loses control power", "power lost"},
    ShortName{"inducer turns", ""},
    ShortName{"inducer stands still", ""},
    ShortName{"pressure switch closes", "draft"},
    ShortName{"pressure switch opens", "draft gone"},
    ShortName{"igniter glows bright enough to light gas", "igniter"},
    ShortName{"igniter has cooled below lighting heat", ""},
    ShortName{"gas valve opens", "gas"},
    ShortName{"gas valve closes", "gas shut"},
    ShortName{"first burner lights", "flame"},
    ShortName{"all burners are lit", "all lit"},
    ShortName{"not all burners are lit", ""},
    ShortName{"last burner goes out", "flame out"},
    ShortName{"blower turns", "blower"},
    ShortName{"blower stands still", ""},
};

float volts_between(const furnace::Model& model, const bench::World& world, furnace::Workspace& workspace,
                    std::string_view red, std::string_view black) {
    const int a = model.find_test_point(red);
    const int b = model.find_test_point(black);
    if (a < 0 || b < 0) {
        return std::numeric_limits<float>::quiet_NaN();
    }
    const electrical::AcSolution ac =
        furnace::solve_ac(model, world.state, world.condition, world.inputs, workspace);
    electrical::AcVoltages volts{};
    workspace.network.node_voltages(ac, volts);
    return static_cast<float>(
        units::abs(volts[static_cast<std::size_t>(a)] - volts[static_cast<std::size_t>(b)]));
}

} // namespace

std::vector<trace::Lane> lanes_of(const furnace::Model& model) {
    const auto make = static_cast<float>(pa_to_inwc(model.draft.sense_line.make_pa));
    const auto off = static_cast<float>(pa_to_inwc(model.draft.sense_line.break_pa));
    return {{"Inducer", "rpm", 0, 4000, 0, false, {}, Energy::Volts120},
            {"Suction", "in. w.c.", 0, std::max(1.2F, 1.3F * make), 2, false, {}, Energy::Air, {make, off}},
            {"Igniter", "°F", 0, 2700, 0, false, {}, Energy::Heat},
            {"Manifold", "in. w.c.", 0, 4, 2, false, {}, Energy::Gas},
            {"Flame", "µA", 0, 6, 1, false, {}, Energy::Heat},
            {"Supply air", "°F", 60, 160, 0, false, {}, Energy::Heat},
            {"Blower", "rpm", 0, 1400, 0, false, {}, Energy::Volts120},
            {"R–C", "V", 0, 32, 1, false, {}, Energy::Volts24}};
}

std::array<float, kLaneCount> sample_of(const furnace::Model& model, const bench::World& world,
                                        furnace::Workspace& workspace) {
    const furnace::Signals& s = world.state.signals;
    const auto f = [](double value) { return static_cast<float>(value); };
    return {f(rad_s_to_rpm(s.draft.inducer_speed_rad_s)),
            f(pa_to_inwc(s.draft.switch_suction_pa)),
            f(k_to_fahrenheit(world.state.heat.temperature.igniter)),
            f(pa_to_inwc(s.gas.manifold_tap_pa)),
            f(1e6 * s.power.flame_current_a),
            f(k_to_fahrenheit(s.heat.supply_air_k)),
            f(rad_s_to_rpm(s.air.blower_speed_rad_s)),
            volts_between(model, world, workspace, "board.R", "board.C")};
}

std::optional<std::string> flag_of(const bench::Milestone& milestone) {
    for (const ShortName& name : kShortNames) {
        if (milestone.text == name.milestone) {
            return name.flag.empty() ? std::nullopt : std::optional<std::string>(name.flag);
        }
    }
    if (milestone.text.starts_with("board, ")) {
        return std::nullopt;
    }
    return milestone.text;
}

} // namespace lightoff::explore
