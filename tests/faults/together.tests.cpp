// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "broken.hpp"

// Several faults at once, faults that set in later, when hot or now and then, and causes with their
// consequences. Common practice, no source.

using namespace lightoff;
using namespace lightoff::test;
using faults::Trigger;

namespace {

Rig with(const std::vector<lesson::FaultUse>& faults, std::uint64_t seed = 0) {
    return Rig(seed, call_with(faults));
}

} // namespace

TEST_CASE("two faults at once: the first in the sequence shows, the second behind it") {
    Rig rig = with({{"hose_plugged"}, {"igniter_open"}});
    CHECK(outcome_after(rig, 600.0).stops_in == "draft_rest");
    do_service(rig, fault("hose_plugged").repairs.front());
    CHECK(hash_of(rig.world.condition) == hash_of(broken("igniter_open").world.condition));
    rig.act("breaker off");
    rig.act("breaker on");
    const Outcome next = outcome_after(rig, 600.0);
    CHECK(next.stops_in == "trial_failed");
    CHECK(next.count == 3);
    do_service(rig, fault("igniter_open").repairs.front());
    rig.act("breaker off");
    rig.act("breaker on");
    CHECK(outcome_after(rig, 600.0).stops_in == "run");
}

TEST_CASE("dirty filter, limit cycling, tired limit: a new filter alone is not enough, a new limit neither") {
    const std::vector<lesson::FaultUse> both{{"filter_dirty", 0.8}, {"limit_weak", 0.5}};
    Rig rig = with(both);
    CHECK(outcome_after(rig, 900.0).stops_in == "limit_open");
    Rig new_filter = with(both);
    do_service(new_filter, fault("filter_dirty").repairs.front());
    CHECK(outcome_after(new_filter, 1500.0).stops_in == "limit_open");
    Rig new_limit = with(both);
    do_service(new_limit, fault("limit_weak").repairs.front());
    CHECK(outcome_after(new_limit, 1500.0).stops_in == "limit_open");
    do_service(new_limit, fault("filter_dirty").repairs.front());
    do_service(new_limit, {catalogue().find_part("board"), faults::ServiceKind::adjust}); // harmless
    new_limit.act("breaker off");
    new_limit.act("breaker on");
    new_limit.run(600.0);
    CHECK(outcome_after(new_limit, 1500.0).stops_in == "run");
    const auto& damages = fault("filter_dirty").damages;
    CHECK(std::find(damages.begin(), damages.end(), catalogue().find_fault("limit_weak")) != damages.end());
}

TEST_CASE("a fault that sets in at a time does nothing before it") {
    Rig rig = with({{"valve_coil_open", 1.0, Trigger::at_tick, 6000}});
    rig.run(299.0);
    CHECK(rig.board_state() == "run");
    CHECK(hash_of(rig.world.condition) == hash_of(furnace::Condition{}));
    rig.run(5.0);
    CHECK(rig.board_state() != "run");
    CHECK(hash_of(rig.world.condition) == hash_of(broken("valve_coil_open").world.condition));
}

TEST_CASE("a short that sets in at a time melts the fuse then; repaired, nothing of it is left") {
    Rig rig = with({{"cable_shorted_r_c", 1.0, Trigger::at_tick, 6000}});
    rig.run(299.0);
    CHECK(rig.board_state() == "run");
    rig.run(5.0);
    CHECK(rig.count_of("control fuse melts") == 1);
    do_service(rig, fault("cable_shorted_r_c").repairs.front());
    do_service(rig, fault("fuse_open").repairs.front());
    CHECK(hash_of(rig.world.condition) == hash_of(furnace::Condition{}));
}

TEST_CASE("a fault that comes when hot is not there cold") {
    Rig rig = with({{"blower_winding_open", 1.0, Trigger::when_hot, 0}});
    rig.run(110.0);
    CHECK(rig.read("blower speed") > 900.0);
    CHECK(outcome_after(rig, 2400.0).stops_in == "limit_open");
    CHECK(rig.world.state.heat.temperature.blower_winding > 310.0);
}

TEST_CASE("a fault that comes and goes does so by the seed, and the same way each time") {
    const auto stops = [](std::uint64_t seed) {
        Rig rig = with({{"w_wire_open", 1.0, Trigger::now_and_then, 0}}, seed);
        rig.run(1800.0);
        return std::pair<int, std::uint64_t>(rig.count_of("board, burner: Post-purge"),
                                             units::hash_fields(rig.world.state));
    };
    CHECK(stops(7).first > 0);
    CHECK(stops(7) == stops(7));
    CHECK(stops(7).second != stops(8).second);
}

TEST_CASE("a service knows what it has to do with") {
    Rig rig = broken("cable_shorted_r_c");
    const faults::Service& cable = *catalogue().find_service(fault("cable_shorted_r_c").repairs.front());
    const std::uint64_t first = faults::bridge_field(0);
    for (std::uint64_t i = 0; i < 3; ++i)
        CHECK(faults::touches(catalogue(), cable, rig.world.condition, first + i));
    CHECK_FALSE(faults::touches(catalogue(), cable, rig.world.condition, first + 3));
    CHECK(faults::bridge_field(0) == furnace::condition_field(rig.model, "wiring.bridges[0].a"));
    CHECK(faults::bridge_field(3) + 2 == furnace::condition_field(rig.model, "wiring.bridges[3].resistance"));
    const faults::Service& fuse = *catalogue().find_service(fault("fuse_open").repairs.front());
    CHECK(faults::touches(catalogue(), fuse, rig.world.condition,
                          furnace::condition_field(rig.model, "wiring/board.fuse/series_resistance")));
    CHECK_FALSE(faults::touches(catalogue(), fuse, rig.world.condition, first));
}

TEST_CASE("shorts and onsets have room for a handful of faults, and say so when they have not") {
    std::vector<lesson::FaultUse> many;
    for (int i = 0; i < 8; ++i)
        many.push_back({"polarity_reversed"});
    CHECK_NOTHROW(with(many));
    many.push_back({"polarity_reversed"});
    CHECK_THROWS_AS(with(many), std::invalid_argument);
    CHECK_THROWS_AS(with({{"no_such_fault"}}), std::invalid_argument);
    CHECK_THROWS_AS(with({{"filter_dirty", 1.0, Trigger::now_and_then, 0}}), std::invalid_argument);
}
