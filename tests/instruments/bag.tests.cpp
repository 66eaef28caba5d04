// SPDX-License-Identifier: MIT
//
// The bag as a part of the World: plain bytes, same bits however it is stepped, no influence but its leads.
#include "desk.hpp"
#include "units/field_checks.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>

using namespace lightoff;
using namespace lightoff::test;

namespace {

/// Every instrument in use.
void unpack(Desk& desk) {
    Bag& bag = desk.bag;
    desk.leads(Function::ac_volts, "board.R", "board.C");
    bag.clamp.setting = {desk.element("blower.lead_common"), 1};
    bag.wattmeter.setting = at_furnace_supply(desk.rig.model);
    bag.tachometer.setting = {Spot::blower_wheel, 1, 0};
    bag.manometer.setting = {Spot::manifold_tap, Spot::room, 1, 0, 0};
    bag.thermometer.setting = {Spot::supply_duct, Spot::return_duct, 1, 0};
    bag.analyser.setting = {Spot::vent_connector, AnalyserFuel::natural_gas, 1, 0};
    bag.gas_detector.setting = {Spot::gas_union, 1, 0};
    bag.leak_solution.setting = {Spot::gas_union, 1, 0};
    bag.voltage_tester.setting = {desk.node("board.line"), 1};
    bag.dial_watch.setting = {1, 1, 1, 0};
    bag.co_alarm.setting = {1, 0};
}

void use_every_function(Desk& desk) {
    for (std::uint32_t f = 1; f < static_cast<std::uint32_t>(Function::count); ++f) {
        desk.leads(static_cast<Function>(f), "board.R", "board.C");
        desk.seconds(1.7);
    }
}

} // namespace

TEST_CASE("every byte of the bag stands in its field list, and no number is missing or not a number") {
    Bag bag;
    CHECK(units::visited_bytes(bag) == sizeof(Bag));
    Desk desk(60.0);
    unpack(desk);
    desk.seconds(60.0);
    CHECK_FALSE(units::first_nonfinite(desk.bag).has_value());
    std::set<std::string> paths;
    units::for_each_field(
        desk.bag, [&](const std::string& path, std::string_view, const auto&) { paths.insert(path); });
    CHECK(paths.count("analyser.efficiency.mantissa") == 1);
    CHECK(paths.size() > 200);
}

TEST_CASE("an unused bag shows nothing and stays as it was") {
    Desk desk;
    const std::uint64_t before = units::hash_fields(desk.bag);
    desk.seconds(30.0);
    CHECK(units::hash_fields(desk.bag) == before);
    for (const NamedDisplay& named : displays(desk.bag))
        CHECK(text(*named.display).empty());
}

TEST_CASE("in use every window shows something") {
    Desk desk(300.0);
    unpack(desk);
    desk.seconds(60.0);
    std::set<std::string_view> names;
    for (const NamedDisplay& named : displays(desk.bag)) {
        INFO(named.name);
        CHECK_FALSE(text(*named.display).empty());
        names.insert(named.name);
    }
    CHECK(names.size() == displays(desk.bag).size());
}

TEST_CASE("the same bits with a cold workspace, copied in the middle") {
    Desk one(3.0);
    Desk two(3.0);
    unpack(one);
    unpack(two);
    use_every_function(one);
    for (std::uint32_t f = 1; f < static_cast<std::uint32_t>(Function::count); ++f) {
        two.leads(static_cast<Function>(f), "board.R", "board.C");
        for (int i = 0; i < 34; ++i) { // 1.7 s tick by tick, a fresh workspace for each
            two.rig.workspace = furnace::Workspace(two.rig.model);
            const Bag copy = two.bag;
            two.bag = copy;
            two.ticks(1);
        }
    }
    CHECK(units::hash_fields(one.bag) == units::hash_fields(two.bag));
    CHECK(units::hash_fields(one.rig.world.state) == units::hash_fields(two.rig.world.state));
}

TEST_CASE("another attempt's instruments read otherwise, within their accuracy") {
    std::set<std::string> seen;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        Desk desk(3.0, seed);
        const Value v = desk.measure(Function::ac_volts, "board.R", "board.C");
        seen.insert(desk.window());
        CHECK(fits(v, desk.rig.volts("board.R", "board.C")));
    }
    CHECK(seen.size() > 3);
}

TEST_CASE("instruments change nothing of the furnace but through the meter's leads") {
    Desk bare(3.0);
    Desk busy(3.0);
    unpack(busy);
    busy.bag.multimeter.setting = {};
    bare.seconds(90.0);
    busy.seconds(90.0);
    CHECK(units::hash_fields(bare.rig.world.state) == units::hash_fields(busy.rig.world.state));
    CHECK(units::hash_fields(bare.rig.world.condition) == units::hash_fields(busy.rig.world.condition));
}

TEST_CASE("spots and functions have names that find them again") {
    for (const SpotRow& row : spots()) {
        CHECK(find_spot(row.id) == row.spot);
        CHECK(row.takes != 0);
        CHECK_FALSE(row.title.empty());
    }
    CHECK(find_spot("nowhere") == Spot::count);
    for (const FunctionRow& row : functions())
        CHECK(find_function(row.id) == row.function);
    CHECK(find_function("x") == Function::count);
    CHECK(spot_row(Spot::inlet_tap).where == furnace::Place::Where::burner_compartment);
    CHECK(spot_row(Spot::vent_connector).where == furnace::Place::Where::outside);
}
