// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/hazards.hpp"
#include "support/rig.hpp"

#include <algorithm>

// Situations of the trade's safety rules (trade practice; NFPA 70E's "test before touch", from memory) and
// what the watch makes of them. Each has a twin that does the same thing properly.

using lightoff::bench::Hazard;
using lightoff::test::Rig;
namespace bench = lightoff::bench;

namespace {

/// A furnace with somebody watching over the shoulder.
class Watched {
public:
    explicit Watched(bench::SchoolRules rules = {}) : rig(0), notebook(rig.site), watch(rig.site, rules) {}

    void run(double seconds) {
        for (int i = 0; i < static_cast<int>(seconds * 20.0 + 0.5); ++i) {
            rig.run(0.05);
            notebook.observe(rig.world);
            watch.observe(rig.world, notebook, rig.workspace);
        }
    }
    void act(const std::string& text) {
        INFO(text);
        while (rig.world.hands.busy != 0)
            run(0.05);
        const bench::Action action = bench::parse_action(rig.site, text);
        const bench::Verdict verdict = bench::check(rig.site, rig.world, action);
        if (!verdict.allowed)
            FAIL(text << ": " << verdict.reason);
        watch.before(rig.world, action, rig.workspace);
        bench::begin(rig.site, rig.world, action);
        while (rig.world.hands.busy != 0)
            run(0.05);
    }
    [[nodiscard]] int count(Hazard hazard) const {
        return static_cast<int>(std::count_if(watch.events().begin(), watch.events().end(),
                                              [&](const auto& e) { return e.hazard == hazard; }));
    }
    void prove_dead() {
        act("leads board.line board.neutral");
        run(4.0); // live
        act("disconnect off");
        run(4.0); // dead
        act("leads-off");
    }

    Rig rig;
    bench::Notebook notebook;
    bench::HazardWatch watch;
};

} // namespace

TEST_CASE("a 120 V wire lifted live is a hazard; a 24 V wire and the rod's lead are normal work") {
    Watched w;
    w.act("blower-door off");
    w.act("door-switch on");
    w.run(2.0);
    w.act("door-switch off"); // both hands are needed: tape it
    w.act("tape on");
    w.run(2.0);
    w.act("lift board.W");
    w.act("seat board.W");
    CHECK(w.count(Hazard::worked_live) == 0);
    w.act("lift board.line");
    CHECK(w.count(Hazard::worked_live) >= 1);
}

TEST_CASE("hands in after live, dead: proved; without it: not proved") {
    Watched careless;
    careless.act("blower-door off");
    careless.act("disconnect off");
    careless.act("lift board.line");
    CHECK(careless.count(Hazard::not_proved_dead) == 1);
    CHECK(careless.count(Hazard::worked_live) == 0);

    Watched careful;
    careful.act("blower-door off");
    careful.act("tape on");
    careful.run(2.0);
    careful.prove_dead();
    CHECK(careful.watch.proved_dead());
    careful.act("lift board.line");
    CHECK(careful.count(Hazard::not_proved_dead) == 0);
    careful.act("seat board.line");
    careful.act("disconnect on");
    CHECK_FALSE(careful.watch.proved_dead()); // what was proved is over
}

TEST_CASE("a dead meter proves nothing") {
    Watched w;
    w.act("blower-door off");
    w.act("disconnect off");
    w.act("leads board.line board.neutral"); // never saw a live place
    w.run(5.0);
    CHECK_FALSE(w.watch.proved_dead());
}

TEST_CASE("the door open alone leaves the supply side of the door switch live") {
    Watched w;
    w.act("blower-door off");
    w.act("lift door_switch.in");
    CHECK(w.count(Hazard::worked_live) == 1);
}

TEST_CASE("spinning the wheel with the board powered") {
    Watched w;
    w.act("blower-door off");
    w.act("tape on");
    w.run(3.0);
    w.act("spin blower");
    CHECK(w.count(Hazard::motor_can_start) == 1);

    Watched off;
    off.act("blower-door off");
    off.act("tape on");
    off.run(2.0);
    off.prove_dead();
    off.act("spin blower");
    CHECK(off.count(Hazard::motor_can_start) == 0);
    CHECK(off.count(Hazard::not_proved_dead) == 0);
}

TEST_CASE("a capacitor lifted while it runs stays charged until it is discharged") {
    Watched w;
    w.act("thermostat-fan on");
    w.act("blower-door off");
    w.act("tape on");
    w.run(20.0);
    REQUIRE(w.rig.read("blower speed") > 500.0);
    w.act("lift blower_capacitor.a"); // live, and a hazard of its own
    CHECK(w.rig.world.handiwork.capacitor_v[0] >
          200.0); // above the line's crest: the start winding adds to it
    w.act("disconnect off");
    w.run(60.0);
    w.act("seat blower_capacitor.a");
    CHECK(w.count(Hazard::charged_capacitor) == 1);
}

TEST_CASE(
    "the meter feels a charge that is left in a capacitor, whichever way its leads are, till it is gone") {
    Watched w;
    w.act("thermostat-fan on");
    w.act("blower-door off");
    w.act("tape on");
    w.run(20.0);
    w.act("lift blower_capacitor.a");
    w.act("disconnect off");
    const auto& meter = w.rig.world.bag.multimeter;
    w.act("leads blower_capacitor.a blower_capacitor.b");
    CHECK(static_cast<double>(meter.stored_v) == Approx(w.rig.world.handiwork.capacitor_v[0]));
    w.act("leads blower_capacitor.b.lug blower_capacitor.a"); // on the wire that is still on
    CHECK(static_cast<double>(meter.stored_v) == Approx(-w.rig.world.handiwork.capacitor_v[0]));
    w.act("leads blower_capacitor.a.lug blower_capacitor.b"); // on the wire that hangs free
    CHECK(meter.stored_v == 0.0F);
    w.act("leads blower_capacitor.a blower_capacitor.b");
    const auto charged = w.rig.world;
    w.act("discharge blower_capacitor");
    CHECK(meter.stored_v == 0.0F);
    w.rig.world = charged;
    w.act("replace blower_capacitor"); // a new one is empty
    CHECK(meter.stored_v == 0.0F);
    CHECK(w.rig.world.handiwork.capacitor_v[0] == 0.0);

    Watched open; // an open capacitor takes no charge
    open.rig.open("blower_capacitor.element");
    open.act("thermostat-fan on");
    open.act("blower-door off");
    open.act("tape on");
    open.run(20.0);
    open.act("lift blower_capacitor.a");
    CHECK(open.rig.world.handiwork.capacitor_v[0] == 0.0);
}

TEST_CASE("a jumper from R to W is no bypass; across the rollout switch it stops work") {
    Watched call;
    call.act("blower-door off");
    call.act("tape on");
    call.act("jumper board.R board.W");
    call.run(150.0);
    CHECK(call.rig.board_state() == "run");
    CHECK(call.count(Hazard::rollout_bypassed) == 0);
    CHECK(call.count(Hazard::burner_on_bypass) == 0);

    Watched rollout;
    rollout.act("burner-door off");
    rollout.act("jumper rollout.in rollout.out");
    rollout.run(2.0);
    CHECK(rollout.count(Hazard::rollout_bypassed) == 1);
}

TEST_CASE("a limit bridged for a moment is work; a burner kept on it is a hazard") {
    Watched w;
    w.act("burner-door off");
    w.act("jumper limit.in limit.out");
    w.run(70.0);
    CHECK(w.count(Hazard::burner_on_bypass) == 0);
    w.run(120.0);
    CHECK(w.count(Hazard::burner_on_bypass) == 1);
    CHECK(w.count(Hazard::rollout_bypassed) == 0);
}

TEST_CASE("ohms on a live circuit, and amps across a voltage") {
    Watched w;
    w.act("blower-door off");
    w.act("tape on");
    w.act("meter ohms");
    w.act("leads board.R board.C");
    w.run(5.0);
    CHECK(w.count(Hazard::ohms_on_live) == 1);
    w.act("meter ac-volts");
    w.act("leads board.line board.neutral");
    w.act("meter ac-amps");
    w.run(5.0);
    CHECK(w.count(Hazard::meter_fuse_blown) == 1);
}

TEST_CASE("what a school forbids is a slip, and only there") {
    Watched strict({false, false});
    strict.act("blower-door off");
    strict.act("tape on");
    strict.act("leads board.R board.C");
    CHECK(strict.count(Hazard::live_testing_forbidden) == 0); // 24 V
    strict.act("leads board.line board.neutral");
    strict.act("jumper board.R board.W");
    CHECK(strict.count(Hazard::live_testing_forbidden) == 1);
    CHECK(strict.count(Hazard::jumper_forbidden) == 1);
    Watched free;
    free.act("blower-door off");
    free.act("tape on");
    free.act("leads board.line board.neutral");
    free.act("jumper board.R board.W");
    CHECK(free.watch.events().empty());
}

TEST_CASE("what is left behind shows at the signature") {
    Watched w;
    w.act("blower-door off");
    w.act("tape on");
    w.act("jumper board.R board.W");
    w.act("blower-door on");
    w.act("burner-door off");
    w.act("sign-off");
    CHECK(w.count(Hazard::left_bypass) == 1);
    CHECK(w.count(Hazard::left_open) == 1);
    Watched tidy;
    tidy.act("blower-door off");
    tidy.act("blower-door on");
    tidy.act("sign-off");
    CHECK(tidy.watch.events().empty());
}

TEST_CASE("a switch thrown while gas is smelt") {
    Watched w;
    w.rig.world.state.gas.room.raw_gas_fraction = 0.02;
    w.act("gas-cock off"); // right
    CHECK(w.count(Hazard::switch_in_gas) == 0);
    w.act("burner-door off");
    CHECK(w.count(Hazard::switch_in_gas) == 0);
    w.act("disconnect off");
    CHECK(w.count(Hazard::switch_in_gas) == 1);
    w.act("blower-door off"); // the door lets its switch go
    CHECK(w.count(Hazard::switch_in_gas) == 2);
    w.act("tape on");
    CHECK(w.count(Hazard::switch_in_gas) == 3);
    w.act("jumper board.R board.W");
    CHECK(w.count(Hazard::switch_in_gas) == 4);
    w.act("appliances off");
    CHECK(w.count(Hazard::switch_in_gas) == 5);
    w.act("look filter");
    CHECK(w.count(Hazard::switch_in_gas) == 5);
}

TEST_CASE("a gas valve changed with the cock open, and a joint that nobody tests") {
    Watched w;
    if (w.rig.site.catalogue.find_part("gas_valve") < 0)
        FAIL("the catalogue is not loaded");
    w.act("disconnect off");
    w.act("burner-door off");
    w.act("replace gas_valve");
    CHECK(w.count(Hazard::gas_open_apart) == 1);
    w.act("burner-door on");
    w.act("sign-off");
    CHECK(w.count(Hazard::left_leak_untested) == 1);

    Watched good;
    good.act("disconnect off");
    good.act("gas-cock off");
    good.act("burner-door off");
    good.act("replace gas_valve");
    CHECK(good.count(Hazard::gas_open_apart) == 0);
    good.act("gas-cock on");
    good.act("bubbles gas-valve");
    good.run(15.0);
    good.act("burner-door on");
    good.act("disconnect on");
    good.act("sign-off");
    CHECK(good.count(Hazard::left_leak_untested) == 0);
}

TEST_CASE("bare hands on the igniter that has just glowed") {
    Watched w;
    w.act("burner-door off");
    w.run(70.0); // lit, igniter off again
    w.act("replace igniter");
    CHECK(w.count(Hazard::hot_surface) == 1);
}
