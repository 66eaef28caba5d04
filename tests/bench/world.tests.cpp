// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/difference.hpp"
#include "lesson/replay.hpp"
#include "support/rig.hpp"
#include "units/field_checks.hpp"

#include <bit>
#include <set>
#include <type_traits>

// The World is one plain value, and its field list misses nothing.

using lightoff::bench::World;
using lightoff::test::Rig;
namespace furnace = lightoff::furnace;
namespace units = lightoff::units;

namespace {

/// Flips the lowest bit of the scalar number `index`; false if there are not so many.
bool flip(World& world, std::size_t index) {
    std::size_t at = 0;
    bool done = false;
    units::for_each_value(world, [&](auto& value) {
        if (at++ != index)
            return;
        done = true;
        using T = std::remove_reference_t<decltype(value)>;
        if constexpr (std::is_same_v<T, double>)
            value = std::bit_cast<double>(std::bit_cast<std::uint64_t>(value) ^ 1U);
        else if constexpr (std::is_same_v<T, float>)
            value = std::bit_cast<float>(std::bit_cast<std::uint32_t>(value) ^ 1U);
        else if constexpr (std::is_same_v<T, bool>)
            value = !value;
        else
            value = static_cast<T>(static_cast<std::uint64_t>(value) ^ 1U);
    });
    return done;
}

template <class Part>
void check_bytes(const char* name) {
    INFO(name);
    CHECK(std::is_trivially_copyable_v<Part>);
    CHECK(units::visited_bytes(Part{}) == sizeof(Part));
}

} // namespace

TEST_CASE("a World is plain, small and has no byte that its field list misses") {
    CHECK(sizeof(World) <= 16 * 1024);
    check_bytes<World>("World");
    check_bytes<lightoff::bench::Onset>("Onset");
    check_bytes<lightoff::bench::Hands>("Hands");
    check_bytes<lightoff::bench::Action>("Action");
    check_bytes<furnace::State>("State");
    check_bytes<furnace::Condition>("Condition");
    check_bytes<furnace::Inputs>("Inputs");
    check_bytes<furnace::Signals>("Signals");
    check_bytes<furnace::Power>("Power");
    check_bytes<lightoff::electrical::Condition>("electrical Condition");
    check_bytes<lightoff::electrical::RelayCondition>("relay Condition");
    check_bytes<lightoff::electrical::RelayState>("relay State");
    check_bytes<lightoff::electrical::FuseState>("fuse State");
    check_bytes<lightoff::electrical::Attachment>("Attachment");
    check_bytes<lightoff::draft::State>("draft State");
    check_bytes<lightoff::draft::Condition>("draft Condition");
    check_bytes<lightoff::draft::Outputs>("draft Outputs");
    check_bytes<lightoff::gas::State>("gas State");
    check_bytes<lightoff::gas::Condition>("gas Condition");
    check_bytes<lightoff::gas::Outputs>("gas Outputs");
    check_bytes<lightoff::combustion::State>("combustion State");
    check_bytes<lightoff::combustion::Condition>("combustion Condition");
    check_bytes<lightoff::combustion::Outputs>("combustion Outputs");
    check_bytes<lightoff::air::State>("air State");
    check_bytes<lightoff::air::Condition>("air Condition");
    check_bytes<lightoff::air::Outputs>("air Outputs");
    check_bytes<lightoff::heat::State>("heat State");
    check_bytes<lightoff::heat::Condition>("heat Condition");
    check_bytes<lightoff::heat::Outputs>("heat Outputs");
    check_bytes<lightoff::control::BoardState>("board State");
    check_bytes<lightoff::control::BoardCondition>("board Condition");
    check_bytes<lightoff::control::ThermostatState>("thermostat State");
    check_bytes<lightoff::control::ThermostatCondition>("thermostat Condition");
}

TEST_CASE("each number of the World has a name of its own, changes the hash, and is named when it differs") {
    Rig rig;
    rig.run(120.0);
    std::vector<std::string> paths;
    units::for_each_field(
        rig.world, [&](const std::string& path, std::string_view, const auto&) { paths.push_back(path); });
    CHECK(std::set<std::string>(paths.begin(), paths.end()).size() == paths.size());
    CHECK(paths.size() > 500);
    const std::uint64_t hash = lightoff::lesson::world_hash(rig.world);
    std::set<std::uint64_t> hashes{hash};
    for (std::size_t i = 0; i < paths.size(); ++i) {
        INFO(paths[i]);
        World changed = rig.world;
        REQUIRE(flip(changed, i));
        const bool is_new = hashes.insert(lightoff::lesson::world_hash(changed)).second;
        CHECK(is_new);
        const auto difference = lightoff::bench::first_difference(rig.world, changed);
        REQUIRE(difference);
        const std::string where =
            difference->field.empty() ? difference->part : difference->part + "." + difference->field;
        CHECK(where == paths[i]);
        CHECK(difference->left != difference->right);
    }
    World same = rig.world;
    CHECK_FALSE(flip(same, paths.size()));
    CHECK_FALSE(lightoff::bench::first_difference(rig.world, same));
}

TEST_CASE("a difference is told by tick, part, field and both values") {
    Rig rig;
    rig.run(60.0);
    World other = rig.world;
    other.state.draft.inducer.speed_rad_s = 1.5;
    const auto difference = lightoff::bench::first_difference(rig.world, other);
    REQUIRE(difference);
    CHECK(difference->tick == 1200);
    CHECK(difference->part == "state.draft");
    CHECK(difference->field == "inducer.speed");
    CHECK(difference->right == "1.5");
    const std::string text = lightoff::bench::describe(*difference);
    CHECK(text == "tick 1200, state.draft: inducer.speed is " + difference->left +
                      " rad/s in one and 1.5 rad/s in the other");
}

TEST_CASE("no number is ever infinite or not a number, whatever is wrong with the furnace") {
    const std::vector<std::pair<std::string, double>> faults{
        {"gas.cock_open", 0.0},
        {"gas.pipe_restriction", 1.0},
        {"gas.regulator_drift", -2000.0},
        {"gas.valve_leak_area", 1e-6},
        {"gas.supply_factor", 0.0},
        {"draft.path.vent_blockage", 1.0},
        {"draft.path.burner_blockage", 1.0},
        {"draft.path.exchanger_blockage", 1.0},
        {"draft.path.crack_area", 1e-4},
        {"draft.inducer.bearing_drag_added", 100.0},
        {"draft.inducer.wheel_slip", 1.0},
        {"draft.sense_line.hose_plug", 1.0},
        {"draft.sense_line.port_plug", 1.0},
        {"draft.sense_line.hose_off", 1.0},
        {"air.blower.bearing_drag_added", 100.0},
        {"air.blower.wheel_slip", 1.0},
        {"air.blower.removed", 1.0},
        {"air.ducts.registers_closed", 1.0},
        {"air.ducts.coil_blockage", 1.0},
        {"heat.igniter_crack_opens_above", 0.0},
        {"wiring/igniter.element/factor", 10.0},
        {"wiring/utility.source/series_resistance", 1e13},
        {"wiring/board.fuse/series_resistance", 1e13},
        {"wiring/blower_capacitor.element/factor", 0.0},
    };
    for (const auto& [path, value] : faults) {
        INFO(path << " = " << value);
        Rig rig;
        rig.run(30.0);
        rig.set(path, value);
        for (int i = 0; i < 30; ++i) {
            rig.run(60.0);
            const auto bad = units::first_nonfinite(rig.world);
            INFO("at " << rig.now_s() << " s: " << bad.value_or(""));
            REQUIRE_FALSE(bad.has_value());
        }
        // Set late, too: in the run.
        Rig running;
        running.run(300.0);
        running.set(path, value);
        running.run(900.0);
        CHECK_FALSE(units::first_nonfinite(running.world).has_value());
    }
}

TEST_CASE("no number goes bad in a day") {
    Rig rig(3);
    rig.run(86400.0);
    CHECK_FALSE(units::first_nonfinite(rig.world).has_value());
    CHECK(rig.count_of("limit opens") == 0);
    CHECK(rig.read("return air") == Approx(72.0).margin(2.0));
}
