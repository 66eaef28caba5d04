// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "scripts.hpp"
#include "units/fields.hpp"

// What proof is: the rules of docs/evidence.md, on the reference furnace. Which faults share a symptom is
// common practice, no source.

using namespace lightoff;
using namespace lightoff::test;
using evidence::Cause;
using evidence::Word;
using faults::Trigger;

namespace {

Call with(const std::string& id, double severity = 1.0, std::uint64_t seed = 0) {
    Call call;
    call.faults = {{id, severity, Trigger::from_start, 0}};
    call.seed = seed;
    return call;
}

Cause cause(const std::string& id) {
    return {fault_index(id), -1};
}

bool is_graded(const faults::Fault& fault) {
    const auto moves = [](const auto& list, auto least, auto most) {
        return std::any_of(list.begin(), list.end(), [&](const auto& c) { return c.*least != c.*most; });
    };
    return moves(fault.changes, &faults::Change::least, &faults::Change::most) ||
           moves(fault.bridges, &faults::BridgeChange::least_ohm, &faults::BridgeChange::most_ohm);
}

const std::vector<std::string> kHopscotch{"wait 10s",       "burner-door off", "manometer-a hose-tee-inducer",
                                          "disconnect off", "disconnect on",   "wait 15s"};
const std::vector<std::string> kOtherSide{"manometer-a hose-tee-switch", "disconnect off", "disconnect on",
                                          "wait 15s"};

} // namespace

TEST_CASE("a hypothesis furnace of the right cause is the real furnace, bit for bit") {
    for (const char* id : {"hose_plugged", "igniter_open", "polarity_reversed", "limit_wire_open"}) {
        INFO(id);
        const Visit visit(with(id));
        const evidence::Bank& bank = grid_bank(with(id));
        const evidence::Found& found = bank.furnaces()[bank.variants_of(cause(id)).front().low];
        CHECK(units::hash_fields(found.world) == units::hash_fields(visit.world));
    }
}

TEST_CASE("no round and no random work rules out the truth at a severity of the grid") {
    int visits = 0;
    int readings = 0;
    const auto& all = reference_site().catalogue.faults;
    for (std::size_t i = 0; i < all.size(); ++i)
        for (const double severity : evidence::kSeverities) {
            if (!is_graded(all[i]) && severity < 1.0)
                continue;
            Visit visit(with(all[i].id, severity));
            if (visits % 2 == 0) {
                do_what_is_possible(visit, thorough_round());
            } else {
                RandomHands hands = measuring_hands(i);
                for (int n = 0; n < 30; ++n)
                    if (const auto action = hands.any_action(reference_site()))
                        visit.try_act(*action);
            }
            INFO(all[i].id << " at " << severity);
            CHECK(visit.investigation.fits_at(cause(all[i].id), visit.world.tick));
            ++visits;
            readings += visit.last();
        }
    WARN(visits << " visits, " << readings << " readings");
    CHECK(readings > 5 * visits);
}

TEST_CASE("the truth between two severities of the grid fits if the bank knows it") {
    const Call call = with("filter_dirty", 0.9);
    evidence::Bank bank(reference_site(), begin_of(call),
                        std::vector<evidence::RealFault>{{fault_index("filter_dirty"), 0.9}});
    Visit visit(call, bank);
    do_what_is_possible(visit, thorough_round());
    CHECK(visit.fitting().count("filter_dirty") == 1);
}

TEST_CASE(
    "between two severities there is no furnace that does what only the one and what only the other does") {
    // A closed pressure switch and a board that waits for it: no switch that nearly closes gives both.
    Visit visit(with("pressure_input_dead"));
    visit.follow({"wait 10s", "burner-door off", "leads pressure_switch.out valve.common", "disconnect off"});
    CHECK(visit.fitting().count("pressure_switch_drifted") == 1);
    visit.follow({"disconnect on", "wait 25s"});
    CHECK(visit.fitting().count("pressure_input_dead") == 1);
    CHECK(visit.fitting().count("pressure_switch_drifted") == 0);
}

TEST_CASE("a hopscotch along the hose leaves the plugged hose") {
    Visit visit(with("hose_plugged"));
    const std::set<std::string> before = visit.fitting();
    for (const char* rival :
         {"port_plugged", "hose_off", "inducer_seized", "pressure_switch_stuck_open", "vent_blocked"})
        CHECK(before.count(rival) == 1);
    visit.follow(kHopscotch);
    CHECK(visit.fitting().count("hose_plugged") == 1);
    CHECK(visit.fitting().count("port_plugged") == 0);
    visit.follow(kOtherSide);
    CHECK(visit.fitting() == std::set<std::string>{"hose_plugged"});
    CHECK(visit.investigation.worth_of(visit.last()).word == Word::splitter);
    const auto step = visit.investigation.ruled_out_by(cause("pressure_switch_stuck_open"));
    REQUIRE(step);
    CHECK(step->reading == visit.last());
    CHECK(visit.investigation.group_of(cause("hose_plugged")) == std::vector<Cause>{cause("hose_plugged")});
}

TEST_CASE("a fuse that a short has blown is told from one that is merely open") {
    for (const char* id : {"cable_shorted_r_c", "valve_wire_chafed"}) {
        INFO(id);
        Visit visit(with(id));
        const std::vector<Cause> group = visit.investigation.group_of(cause(id));
        INFO(listed(group));
        CHECK(std::count(group.begin(), group.end(), cause(id)) == 1);
        CHECK(std::count(group.begin(), group.end(), cause("fuse_open")) == 0);
    }
}

TEST_CASE("the order of the readings that isolate does not matter") {
    Visit one(with("hose_plugged"));
    one.follow(kHopscotch);
    one.follow(kOtherSide);
    Visit other(with("hose_plugged"));
    other.follow({"wait 10s", "burner-door off"});
    other.follow(kOtherSide);
    other.follow({"manometer-a hose-tee-inducer", "disconnect off", "disconnect on", "wait 15s"});
    CHECK(one.fitting() == other.fitting());
}

TEST_CASE("the lamp alone splits by the step that it counts") {
    const std::set<std::string> one = Visit(with("hose_plugged")).fitting();
    const std::set<std::string> three = Visit(with("igniter_open")).fitting();
    CHECK(one.count("inducer_seized") == 1);
    CHECK(one.count("igniter_open") == 0);
    CHECK(three.count("gas_cock_shut") == 1);
    CHECK(three.count("rod_grounded") == 1);
    CHECK(three.count("inducer_seized") == 0);
    const std::set<std::string> dark = Visit(with("fuse_open")).fitting();
    CHECK(dark.count("transformer_primary_open") == 1);
    CHECK(dark.count("igniter_open") == 0);
}

TEST_CASE("furnaces perceived alike so far have equal sets") {
    for (const auto& [a, b] : {std::pair<const char*, const char*>{"hose_plugged", "pressure_input_dead"},
                               {"rod_grounded", "rod_lead_open"},
                               {"fuse_open", "transformer_primary_open"}}) {
        Visit one(with(a));
        Visit other(with(b));
        for (int s = 0; s < 60; ++s) {
            one.wait(0.5);
            other.wait(0.5);
            const bench::Percept p = bench::perceive(reference_site(), one.world);
            const bench::Percept q = bench::perceive(reference_site(), other.world);
            if (p.heard != q.heard || p.seen != q.seen || p.felt != q.felt)
                break;
            INFO(a << " and " << b << " after " << s / 2 << " s");
            CHECK(one.fitting() == other.fitting());
        }
    }
}

TEST_CASE("the same reading again is a repeat") {
    Visit visit(with("hose_plugged"));
    visit.follow({"wait 10s", "blower-door off", "door-switch on", "leads board.R board.C", "wait 4s",
                  "leads board.W board.C", "wait 4s", "leads board.R board.C", "wait 4s"});
    const auto& readings = visit.investigation.readings();
    REQUIRE(readings.back().where == "AC volts, red on board.R, black on board.C");
    REQUIRE(readings[readings.size() - 2].where != readings.back().where);
    const evidence::Worth worth = visit.investigation.worth_of(visit.last());
    CHECK(worth.pairs == 0);
    CHECK(worth.word == Word::repeat);
}

TEST_CASE("a carbon monoxide reading is never idle") {
    Visit visit(with("hose_plugged"));
    visit.act("wait 10s");
    REQUIRE(visit.last() >= 1);
    CHECK(visit.investigation.worth_of(1).word == Word::safety);
}

TEST_CASE("luck does not change what a reading was worth") {
    // The two differ in what the hose shows, and in nothing before it.
    Visit lucky(with("port_plugged"));
    Visit unlucky(with("pressure_switch_stuck_open"));
    for (Visit* visit : {&lucky, &unlucky})
        visit->follow({"wait 10s", "burner-door off", "manometer-a hose-tee-switch", "wait 4s"});
    REQUIRE(lucky.last() == unlucky.last());
    const evidence::Worth a = lucky.investigation.worth_of(lucky.last());
    const evidence::Worth b = unlucky.investigation.worth_of(unlucky.last());
    CHECK(lucky.fitting() != unlucky.fitting());
    CHECK(a.pairs == b.pairs);
    CHECK(a.best == b.best);
    CHECK(a.word == b.word);
}

TEST_CASE("a good reading does not rule out what comes and goes") {
    Visit visit({{{"w_wire_open", 1.0, Trigger::now_and_then, 0}}});
    visit.follow({"wait 30s", "blower-door off", "door-switch on", "leads board.W board.C", "wait 200s"});
    bool good = false;
    bool bad = false;
    for (const bench::Reading& r : visit.investigation.readings())
        if (const auto v = instruments::value_of(r.display); v.known && v.unit == "V") {
            good = good || v.value > 20.0;
            bad = bad || v.value < 2.0;
        }
    REQUIRE(good);
    REQUIRE(bad);
    CHECK(visit.fitting().count("w_wire_open") == 1);
    CHECK(visit.fitting().count("hose_plugged") == 0);
}

TEST_CASE("a dry hose is of one group with a hose where the water has not come yet") {
    Visit visit(Call{});
    visit.follow({"wait 10s", "burner-door off", "look pressure_hose"});
    CHECK(visit.fitting().count("hose_kinked") == 0);
    const std::vector<Cause> group = visit.investigation.group_of(evidence::kNothingWrong);
    CHECK(std::count(group.begin(), group.end(), cause("hose_water")) == 1);
    CHECK(std::count(group.begin(), group.end(), cause("filter_dirty")) == 0);
}

TEST_CASE("what comes and goes does not flicker") {
    // W open, R sound, W open again, in half a minute: no R wire that comes and goes every 90 s gives this.
    // The furnace is off, so nothing of it is a matter of what was before.
    Visit visit({{{"w_wire_open", 1.0, Trigger::now_and_then, 0}}});
    visit.follow({"disconnect off", "blower-door off", "lift board.R", "lift board.W", "thermostat-set 85F",
                  "meter ohms", "leads board.R.lug board.W.lug"});
    const auto is_open = [&] { return visit.world.bag.multimeter.display.has(instruments::kOverload); };
    for (int s = 0; s < 900 && is_open(); ++s)
        visit.wait(1.0);
    for (int s = 0; s < 900 && !is_open(); ++s)
        visit.wait(1.0);
    REQUIRE(is_open());
    visit.wait(4.0);
    CHECK(visit.fitting().count("r_wire_open") == 1);
    visit.follow({"leads board.R.lug board.C", "wait 4s", "leads board.R.lug board.W.lug", "wait 4s"});
    REQUIRE(is_open());
    CHECK(visit.fitting().count("r_wire_open") == 0);
    CHECK(visit.fitting().count("w_wire_open") == 1);
}

TEST_CASE("two faults at once are no single cause, and the pair fits") {
    Call call;
    call.faults = {{"hose_plugged", 1.0, Trigger::from_start, 0},
                   {"igniter_open", 1.0, Trigger::from_start, 0}};
    Visit visit(call);
    visit.follow(kHopscotch);
    visit.follow(kOtherSide);
    CHECK(visit.fitting() == std::set<std::string>{"hose_plugged"});
    CHECK_FALSE(visit.investigation.no_single_cause_fits(visit.world.tick));
    visit.follow({"take-off pressure_hose", "clean pressure_hose", "put-back pressure_hose",
                  "leads igniter_plug.line igniter_plug.neutral", "disconnect off", "disconnect on",
                  "wait 60s", "disconnect off", "unplug igniter_plug", "meter ohms",
                  "leads igniter_plug.line.lug igniter_plug.neutral.lug", "wait 4s"});
    CHECK(visit.investigation.no_single_cause_fits(visit.world.tick));
    CHECK(visit.fitting().count("hose_plugged+igniter_open") == 1);
}

TEST_CASE("what is asked meanwhile changes nothing") {
    Visit asked(with("igniter_open"));
    Visit silent(with("igniter_open"));
    const std::vector<std::string> script{
        "wait 7s",        "burner-door off", "leads igniter_plug.line igniter_plug.neutral",
        "disconnect off", "disconnect on",   "wait 33s",
        "wait 21s"};
    for (const std::string& line : script) {
        asked.act(line);
        silent.act(line);
        asked.fitting();
    }
    CHECK(asked.fitting() == silent.fitting());
    for (int r = 1; r <= silent.last(); ++r) {
        CHECK(asked.investigation.fitting_after(r) == silent.investigation.fitting_after(r));
        CHECK(asked.investigation.worth_of(r).pairs == silent.investigation.worth_of(r).pairs);
    }
}

TEST_CASE("the coach's way ends at the cause, and the best test is worth its name") {
    Visit visit(with("hose_plugged"));
    const evidence::Route route = visit.investigation.route_to(cause("hose_plugged"));
    CHECK(route.minutes > 0.2);
    CHECK(route.minutes < 30.0);
    CHECK(route.group == std::vector<Cause>{cause("hose_plugged")});
    const auto offers = visit.investigation.best_tests(5);
    REQUIRE(offers.size() == 5);
    for (const evidence::Offer& offer : offers) {
        CHECK(offer.meanings.size() >= 2);
        CHECK(offer.pairs_a_minute <= offers.front().pairs_a_minute);
    }
    CHECK(visit.investigation.expected_minutes() > 0.0);
}

TEST_CASE("the cheapest test between causes is the cheapest on offer, and there is none between like ones") {
    Visit visit(Call{});
    const std::uint64_t now = visit.world.tick;
    // A look at the filter, 15 s, tells a packed one from a fuse that is whole.
    const double look =
        visit.investigation.cheapest_between({cause("filter_dirty")}, {evidence::kNothingWrong}, now);
    CHECK(look == Approx(15.0 / 60.0));
    CHECK(visit.investigation.cheapest_between({cause("fuse_open")}, {cause("fuse_open")}, now) > 1e9);
    CHECK(visit.investigation.cheapest_between({}, {cause("fuse_open")}, now) > 1e9);
}
