// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "broken.hpp"
#include "units/convert.hpp"

#include <algorithm>

// What puts a fault right and what does not, for every fault and every service of the catalogue. As built,
// with a seed: part values lie within their tolerances, and the right repair must bring back these, not the
// nominal ones.

using namespace lightoff;
using namespace lightoff::test;

namespace {

constexpr std::uint64_t kSeed = 42;
constexpr double kBroken_s = 600.0;

bool is_by_turns(const faults::ServiceRef& ref) {
    return catalogue().find_service(ref)->per_turn != 0.0;
}

std::vector<faults::ServiceRef> all_services() {
    std::vector<faults::ServiceRef> all;
    for (std::size_t part = 0; part < catalogue().parts.size(); ++part)
        for (const faults::Service& service : catalogue().parts[part].services)
            all.push_back({static_cast<int>(part), service.kind});
    return all;
}

bool contains(const std::vector<faults::ServiceRef>& list, const faults::ServiceRef& ref) {
    return std::find(list.begin(), list.end(), ref) != list.end();
}

/// A call from cold with this Condition: hash of everything that evolved.
std::uint64_t cold_run(const furnace::Condition& condition) {
    Rig rig(kSeed, call_with({}));
    rig.world.condition = condition;
    rig.run(300.0);
    return units::hash_fields(rig.world);
}

/// The faults that a fault is said to bring about, repaired as well.
void repair_damage(Rig& rig, const faults::Fault& fault) {
    for (const int damage : fault.damages)
        do_service(rig, catalogue().faults[static_cast<std::size_t>(damage)].repairs.front());
}

} // namespace

TEST_CASE("as built, a furnace of that seed heats") {
    Rig rig(kSeed, call_with({}));
    CHECK(hash_of(rig.world.condition) == hash_of(furnace::as_built(rig.model, kSeed)));
    CHECK(hash_of(rig.world.condition) != hash_of(furnace::Condition{}));
    CHECK(outcome_after(rig, kBroken_s).stops_in == "run");
}

TEST_CASE("the right repair brings the furnace back bit for bit, and it runs as if nothing had been") {
    const furnace::Condition as_built = furnace::as_built(reference_model(), kSeed);
    const std::uint64_t golden = cold_run(as_built);
    for (const faults::Fault& fault : catalogue().faults) {
        for (const double severity : {0.3, 1.0}) {
            Rig hurt = broken(fault.id, severity, kSeed);
            hurt.run(kBroken_s);
            for (const faults::ServiceRef& repair : fault.repairs) {
                if (is_by_turns(repair))
                    continue; // how far a screw is turned is up to the hand: below
                INFO(fault.id << " at " << severity << ": " << name_of(repair));
                Rig rig = hurt;
                do_service(rig, repair);
                if (hash_of(rig.world.condition) != hash_of(as_built))
                    repair_damage(rig, fault); // what else has broken by now is named in the catalogue
                CHECK(hash_of(rig.world.condition) == hash_of(as_built));
                CHECK(cold_run(rig.world.condition) == golden);
            }
        }
    }
}

TEST_CASE("a control that somebody left wrong is no defect: put right, nothing is left of it") {
    for (const faults::Fault& fault : catalogue().faults) {
        if (fault.controls.empty())
            continue;
        INFO(fault.id);
        Rig rig = broken(fault.id, 1.0, kSeed);
        const Rig sound(kSeed, call_with({}));
        CHECK(units::hash_fields(rig.world.inputs) != units::hash_fields(sound.world.inputs));
        CHECK(hash_of(rig.world.condition) == hash_of(sound.world.condition));
        for (const faults::ControlLeft& left : fault.controls)
            faults::set_control(left, true, rig.world.inputs);
        CHECK(units::hash_fields(rig.world.inputs) == units::hash_fields(sound.world.inputs));
    }
}

TEST_CASE("no other service of any part puts a fault right") {
    const std::vector<faults::ServiceRef> services = all_services();
    const furnace::Condition as_built = furnace::as_built(reference_model(), kSeed);
    int wrong = 0;
    for (const faults::Fault& fault : catalogue().faults) {
        if (!fault.controls.empty())
            continue;
        const Rig hurt = broken(fault.id, 1.0, kSeed);
        for (const faults::ServiceRef& service : services) {
            const faults::ServiceRef back{service.part, faults::ServiceKind::put_back};
            if (contains(fault.repairs, service) ||
                (service.kind == faults::ServiceKind::take_off && contains(fault.repairs, back)))
                continue;
            INFO(fault.id << ": " << name_of(service));
            Rig rig = hurt;
            do_service(rig, service);
            CHECK(hash_of(rig.world.condition) != hash_of(as_built));
            ++wrong;
        }
    }
    CHECK(wrong > 5000);
}

TEST_CASE("what only seems to repair a fault: the next call stops in the same place again") {
    for (const faults::Fault& fault : catalogue().faults) {
        if (fault.repairs.empty())
            continue;
        Rig hurt = broken(fault.id, 1.0, kSeed);
        const Outcome before = outcome_after(hurt, kBroken_s);
        for (const faults::ServiceRef& seeming : fault.seeming) {
            INFO(fault.id << ": " << name_of(seeming));
            do_service(hurt, seeming);
            Rig next_call(kSeed, call_with({}));
            next_call.world.condition = hurt.world.condition;
            const Outcome again = outcome_after(next_call, kBroken_s);
            CHECK(again.stops_in == before.stops_in);
            CHECK(hash_of(next_call.world.condition) != hash_of(furnace::as_built(hurt.model, kSeed)));
        }
    }
}

TEST_CASE("a regulator that drifted is set right by turning its screw to the plate's pressure") {
    for (const char* id : {"regulator_low", "regulator_high"})
        for (const double severity : {0.2, 0.8}) {
            INFO(id << " at " << severity);
            Rig rig = broken(id, severity);
            rig.run(300.0);
            const auto valve = catalogue().find_part("gas_valve");
            const faults::Service& screw = *catalogue().find_service({valve, faults::ServiceKind::adjust});
            REQUIRE(screw.per_turn > 0.0); // clockwise raises the pressure
            const double wrong_pa = units::inwc_to_pa(rig.read("manifold pressure") - 3.5);
            CHECK(std::abs(wrong_pa) > 10.0);
            faults::turn(screw, -wrong_pa / screw.per_turn, rig.world.condition);
            rig.run(10.0);
            CHECK(rig.read("manifold pressure") == Approx(3.5).margin(0.02));
        }
}

TEST_CASE("pulling the hose off lets its water out: measuring heals") {
    Rig rig = broken("hose_water");
    rig.run(30.0);
    CHECK_FALSE(rig.senses("pressure_switch"));
    do_service(rig, {catalogue().find_part("pressure_hose"), faults::ServiceKind::take_off});
    CHECK(hash_of(rig.world.condition) == hash_of(furnace::Condition{}));
    CHECK(rig.run_until(200.0, [](const Rig& r) { return r.board_state() == "run"; }));
}

TEST_CASE("a new fuse on a short melts again; with the short gone it holds") {
    for (const char* id : {"cable_shorted_r_c", "valve_wire_chafed"}) {
        INFO(id);
        Rig rig = broken(id);
        rig.run(120.0);
        CHECK(rig.count_of("control fuse melts") == 1);
        do_service(rig, {catalogue().find_part("board_fuse"), faults::ServiceKind::replace});
        rig.run(120.0);
        CHECK(rig.count_of("control fuse melts") == 2);
        do_service(rig, fault(id).repairs.front());
        do_service(rig, {catalogue().find_part("board_fuse"), faults::ServiceKind::replace});
        CHECK(rig.run_until(600.0, [](const Rig& r) { return r.board_state() == "run"; }));
        CHECK(rig.count_of("control fuse melts") == 2);
    }
}
