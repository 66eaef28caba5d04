// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"
#include "units/convert.hpp"

#include <cmath>
#include <functional>
#include <string>
#include <vector>

// One thing is changed, the whole furnace runs from cold on a call for heat, and every reading must move the
// right way by at least what a field instrument shows: 0.01 in. w.c., 0.1 A, 5 rpm, 1 F, 0.1 % O2, 0.1 uA.
// All signs and times are common practice without a single published source (CP), unless one is named.

using lightoff::test::Rig;
namespace units = lightoff::units;

namespace {

using Change = std::function<void(Rig&)>;

Change number(const std::string& path, double value) {
    return [=](Rig& r) { r.set(path, value); };
}

struct Readings {
    double return_static, supply_static, amps, rpm, rise, airflow, start_a, winding_k;
    double suction, oxygen, carbon_monoxide, flue, flame_ua, input, manifold, inlet, inducer_rpm, inducer_a;
};

Readings read_all(Rig& r) {
    const auto all = lightoff::bench::readouts(r.model, r.world, r.workspace);
    const auto of = [&](const char* name) { return lightoff::bench::readout(all, name); };
    return {of("return static"),
            of("supply static"),
            of("blower current"),
            of("blower speed"),
            of("temperature rise"),
            of("airflow"),
            of("blower start winding"),
            r.world.state.heat.temperature.blower_winding,
            of("suction at the port"),
            of("oxygen"),
            of("carbon monoxide air-free"),
            of("flue gas over room"),
            of("flame current"),
            of("input rate"),
            of("manifold pressure"),
            of("gas inlet pressure"),
            of("inducer speed"),
            of("inducer current")};
}

Readings after(double seconds, const Change& change) {
    Rig r;
    change(r);
    r.run(seconds);
    return read_all(r);
}

constexpr double kRun_s = 600.0;
constexpr double kPurge_s = 24.0; // inducer up to speed, no fire yet

const Readings& healthy() {
    static const Readings sound = after(kRun_s, [](Rig&) {});
    return sound;
}

const Readings& healthy_purge() {
    static const Readings sound = after(kPurge_s, [](Rig&) {});
    return sound;
}

/// Seconds from first flame until the limit opens, if it does within `limit_s`.
std::optional<double> limit_opens_after(double limit_s, const Change& change) {
    Rig r;
    change(r);
    r.run_until(limit_s, [](const Rig& rig) { return rig.world.state.heat.limit_open != 0; });
    r.run(0.1);
    const auto lit = r.time_of("first burner lights");
    if (!r.time_of("limit opens") || !lit)
        return std::nullopt;
    return *r.time_of("limit opens") - *lit;
}

} // namespace

// ---- air side ---------------------------------------------------------------------------------------------

TEST_CASE("sign: dirty filter (CP)") {
    const Readings r = after(kRun_s, number("air.ducts.filter_loading", 10.0));
    CHECK(r.return_static < healthy().return_static - 0.20);
    CHECK(r.supply_static < healthy().supply_static - 0.05);
    CHECK(r.amps < healthy().amps - 0.3);
    CHECK(r.rpm > healthy().rpm + 15.0);
    CHECK(r.rise > healthy().rise + 8.0);
    CHECK(r.airflow < 0.85 * healthy().airflow);

    const auto opens = limit_opens_after(1800.0, number("air.ducts.filter_loading", 25.0));
    REQUIRE(opens.has_value());
    CHECK(*opens > 180.0); // "after minutes"
    CHECK(*opens < 900.0);
}

TEST_CASE("sign: closed registers, dirty coil (CP)") {
    for (const char* path : {"air.ducts.registers_closed", "air.ducts.coil_blockage"}) {
        INFO(path);
        const Readings r = after(kRun_s, number(path, 0.7));
        CHECK(r.return_static > healthy().return_static + 0.03);
        CHECK(r.supply_static > healthy().supply_static + 0.20);
        CHECK(r.amps < healthy().amps - 0.3);
        CHECK(r.rpm > healthy().rpm + 15.0);
        CHECK(r.rise > healthy().rise + 5.0);
    }
}

TEST_CASE("sign: packed wheel (CP)") {
    const Readings r = after(kRun_s, number("air.blower.wheel_packing", 0.6));
    CHECK(r.return_static > healthy().return_static + 0.03);
    CHECK(r.supply_static < healthy().supply_static - 0.05);
    CHECK(r.amps < healthy().amps - 0.5);
    CHECK(r.rpm > healthy().rpm + 20.0);
    CHECK(r.rise > healthy().rise + 5.0);
    CHECK(limit_opens_after(1800.0, number("air.blower.wheel_packing", 1.0)).has_value());
}

TEST_CASE("sign: blower door or filter off hides a restriction (CP)") {
    const Change door_off = [](Rig& r) {
        r.world.inputs.blower_door_on = 0;
        r.world.inputs.door_switch_held = 1;
    };
    const Change filter_out = [](Rig& r) { r.world.inputs.filter_in = 0; };
    for (const Change& change : {door_off, filter_out}) {
        const Readings r = after(kRun_s, change);
        CHECK(r.amps > healthy().amps + 0.1);
        CHECK(r.rpm < healthy().rpm - 5.0);
        CHECK(r.rise < healthy().rise - 1.0);
        CHECK(r.return_static > healthy().return_static + 0.05);
    }
    const Change dirty = number("air.ducts.filter_loading", 25.0);
    CHECK(limit_opens_after(1800.0, dirty).has_value());
    CHECK_FALSE(limit_opens_after(1800.0, [&](Rig& r) {
                    dirty(r);
                    door_off(r);
                }).has_value());
    CHECK_FALSE(limit_opens_after(1800.0, [&](Rig& r) {
                    dirty(r);
                    filter_out(r);
                }).has_value());
}

TEST_CASE("sign: weak capacitor (CP)") {
    const Readings r = after(kRun_s, number("wiring/blower_capacitor.element/factor", 0.5));
    CHECK(r.return_static > healthy().return_static + 0.005);
    CHECK(r.supply_static < healthy().supply_static - 0.01);
    CHECK(r.start_a < 0.6 * healthy().start_a);
    CHECK(r.amps == Approx(healthy().amps).epsilon(0.15)); // line current little changed
    CHECK(r.rpm < healthy().rpm - 15.0);
    CHECK(r.rise > healthy().rise + 1.0);
    CHECK(r.winding_k > healthy().winding_k + 3.0);
}

TEST_CASE("sign: open capacitor: hum, 2-3 times the current, starts if spun; overload (CP)") {
    Rig r;
    r.open("blower_capacitor.element");
    r.run(85.0);
    CHECK(r.drives("blower_heat"));
    const Readings hum = read_all(r);
    CHECK(hum.rpm == 0.0);
    CHECK(hum.amps > 2.0 * healthy().amps);
    CHECK(hum.amps < 3.0 * healthy().amps);
    CHECK(std::fabs(hum.return_static) < 0.005);
    CHECK(std::fabs(hum.supply_static) < 0.005);
    CHECK(hum.start_a < 0.01);

    Rig spun = r;
    spun.world.state.air.blower.speed_rad_s = 0.3 * 125.7; // by hand, and it runs on
    spun.run(10.0);
    CHECK(spun.read("blower speed") > 900.0);

    r.run(3000.0);
    const auto opens = r.time_of("blower motor's overload opens");
    const auto closes = r.time_of("blower motor's overload closes");
    REQUIRE(opens.has_value());
    REQUIRE(closes.has_value());
    CHECK(*closes - *opens > 20.0 * 60.0);
    CHECK(*closes - *opens < 40.0 * 60.0);
}

TEST_CASE("sign: capacitor measured under load, uF = 2652 A/V (from 1/(2 pi 60 Hz))") {
    for (const double factor : {1.0, 0.7}) {
        Rig r;
        r.set("wiring/blower_capacitor.element/factor", factor);
        r.run(300.0);
        const double micro_f =
            2652.0 * r.amps("blower.lead_capacitor_a") / r.volts("blower_capacitor.a", "blower_capacitor.b");
        CHECK(micro_f == Approx(15.0 * factor).epsilon(0.01));
    }
}

TEST_CASE("sign: dragging bearing (CP)") {
    const Readings r = after(kRun_s, number("air.blower.bearing_drag_added", 0.6));
    CHECK(r.return_static > healthy().return_static + 0.01);
    CHECK(r.supply_static < healthy().supply_static - 0.01);
    CHECK(r.amps > healthy().amps + 0.3);
    CHECK(r.rpm < healthy().rpm - 15.0);
    CHECK(r.rise > healthy().rise + 1.0);
    CHECK(r.winding_k > healthy().winding_k + 3.0);
}

TEST_CASE("sign: loose blower wheel: motor fast and light, little air (CP)") {
    const Readings r = after(250.0, number("air.blower.wheel_slip", 0.5));
    const Readings sound = after(250.0, [](Rig&) {});
    CHECK(r.rpm > sound.rpm + 30.0);
    CHECK(r.amps < sound.amps - 1.0);
    CHECK(r.airflow < 0.7 * sound.airflow);
    CHECK(r.supply_static < sound.supply_static - 0.1);
    CHECK(r.return_static > sound.return_static + 0.05);
}

TEST_CASE("sign: cooling openings packed: hot winding at ordinary current (CP)") {
    const Readings r = after(1200.0, number("heat.blower_openings_blocked", 0.9));
    const Readings sound = after(1200.0, [](Rig&) {});
    CHECK(r.winding_k > sound.winding_k + 15.0);
    CHECK(r.amps == Approx(sound.amps).epsilon(0.03));
}

// ---- gas and fire -----------------------------------------------------------------------------------------

TEST_CASE("sign: overfire, manifold at 4.5 (CP; input by the square root, orifice equation)") {
    const Readings r =
        after(kRun_s, number("gas.regulator_adjust", units::inwc_to_pa(4.5) - units::inwc_to_pa(3.5)));
    CHECK(r.manifold == Approx(4.5).margin(0.03));
    CHECK(r.input == Approx(healthy().input * std::sqrt(4.5 / 3.5)).epsilon(0.01));
    CHECK(r.rise > healthy().rise + 4.0);
    CHECK(r.oxygen < healthy().oxygen - 1.5);
    CHECK(r.flue > healthy().flue + 30.0);
}

TEST_CASE("sign: regulator drifted down, underfire (CP)") {
    const Readings r = after(kRun_s, number("gas.regulator_drift", -units::inwc_to_pa(1.0)));
    CHECK(r.manifold == Approx(2.5).margin(0.03));
    CHECK(r.input == Approx(healthy().input * std::sqrt(2.5 / 3.5)).epsilon(0.01));
    CHECK(r.rise < healthy().rise - 4.0);
    CHECK(r.oxygen > healthy().oxygen + 1.5);
    CHECK(r.flue < healthy().flue - 30.0);
    CHECK(r.inlet >= healthy().inlet);
}

TEST_CASE("sign: one orifice partly plugged: manifold right, meter slow (CP)") {
    const Readings r = after(kRun_s, number("gas.orifice_plugging[2]", 0.3));
    CHECK(r.manifold == Approx(3.5).margin(0.03));
    CHECK(r.input < 0.95 * healthy().input);
    CHECK(r.oxygen > healthy().oxygen + 0.5);
    CHECK(r.rise < healthy().rise - 2.0);
}

TEST_CASE("sign: dirty burners light across late, and burn with more CO (CP)") {
    const auto spread_s = [](const Change& change) {
        Rig r;
        change(r);
        r.run(90.0);
        const auto first = r.time_of("first burner lights");
        const auto all = r.time_of("all burners are lit");
        REQUIRE(first.has_value());
        REQUIRE(all.has_value());
        return *all - *first;
    };
    const double sound_s = spread_s([](Rig&) {});
    CHECK(sound_s < 2.0);
    CHECK(spread_s(number("combustion.crossover_blockage[1]", 0.7)) > sound_s + 0.5);
    const Readings r = after(kRun_s, [](Rig& rig) {
        for (int i = 0; i < 4; ++i)
            rig.set("combustion.primary_blockage[" + std::to_string(i) + "]", 0.7);
    });
    CHECK(r.carbon_monoxide > healthy().carbon_monoxide + 50.0);
    CHECK(r.oxygen == Approx(healthy().oxygen).margin(0.1)); // the draft has not changed
}

TEST_CASE("sign: low inlet under load: static well, flowing low, manifold down (CP)") {
    Rig r;
    r.set("gas.pipe_restriction", 0.9);
    r.run(30.0);
    CHECK(r.read("gas inlet pressure") == Approx(7.1).margin(0.2));
    r.run(kRun_s - 30.0);
    const Readings flowing = read_all(r);
    CHECK(flowing.inlet < 4.0);
    CHECK(flowing.manifold < 3.0);
    CHECK(flowing.oxygen > healthy().oxygen + 1.0);
    CHECK(flowing.rise < healthy().rise - 3.0);
}

TEST_CASE("sign: another appliance on an undersized pipe pulls the inlet down (CP)") {
    const auto inlet = [](double other_m3_s) {
        Rig r;
        r.set("gas.supply_factor", 0.8);
        r.world.inputs.other_gas_m3_s = other_m3_s;
        r.run(300.0);
        return r.read("gas inlet pressure");
    };
    CHECK(inlet(units::cfh_to_m3s(200.0)) < inlet(0.0) - 0.1);
}

// ---- draft ------------------------------------------------------------------------------------------------

TEST_CASE("sign: vent restricted, downstream of the port (CP)") {
    const Readings part = after(kRun_s, number("draft.path.vent_blockage", 0.8));
    CHECK(part.suction < healthy().suction - 0.10);
    CHECK(part.oxygen < healthy().oxygen - 1.0);
    CHECK(part.carbon_monoxide < 50.0); // up only near the break

    int between = 0;
    for (const double blockage : {0.83, 0.84, 0.85, 0.86}) {
        Rig r;
        r.set("draft.path.vent_blockage", blockage);
        r.run(44.0);
        const double cold = r.read("suction at the port");
        INFO("blockage " << blockage << ", cold suction " << cold);
        if (cold < 0.62 || cold > 0.70)
            continue;
        ++between;
        CHECK(r.senses("pressure_switch"));
        r.run(1200.0);
        CHECK(r.count_of("pressure switch opens") >= 1); // starts cold, drops out hot
        CHECK(r.count_of("first burner lights") >= 1);
    }
    CHECK(between >= 2);
}

TEST_CASE("sign: exchanger restricted, upstream of the port (CP)") {
    const Readings some = after(kRun_s, number("draft.path.exchanger_blockage", 0.2));
    const Readings more = after(kRun_s, number("draft.path.exchanger_blockage", 0.3));
    CHECK(some.suction > healthy().suction + 0.02);
    CHECK(more.suction > some.suction + 0.02);
    CHECK(some.oxygen < healthy().oxygen - 1.0);
    CHECK(more.oxygen < some.oxygen - 1.0);
    CHECK(more.carbon_monoxide > healthy().carbon_monoxide + 100.0);
    CHECK(more.carbon_monoxide > some.carbon_monoxide);

    Rig extreme;
    extreme.set("draft.path.exchanger_blockage", 0.7);
    extreme.run(120.0);
    CHECK(extreme.count_of("rollout switch opens") == 1);
    CHECK(extreme.count_of("pressure switch opens") == 0); // the switch does not catch it
}

TEST_CASE("sign: cracked exchanger, when the blower starts (CP)") {
    struct Step {
        double oxygen, suction, flame_ua;
    };
    const auto step = [](double crack_m2) {
        Rig r;
        r.set("draft.path.crack_area", crack_m2);
        REQUIRE(r.run_until(120.0, [](const Rig& rig) { return rig.drives("blower_heat"); }));
        const Readings before = read_all(r);
        r.run(10.0);
        const Readings then = read_all(r);
        return Step{then.oxygen - before.oxygen, then.suction - before.suction,
                    then.flame_ua - before.flame_ua};
    };
    const Step sound = step(0.0);
    const Step cracked = step(4e-4);
    CHECK(std::fabs(sound.flame_ua) < 0.1);
    CHECK(cracked.oxygen > sound.oxygen + 0.1);
    CHECK(cracked.suction < sound.suction);
    CHECK(cracked.flame_ua < -0.5);
}

TEST_CASE("sign: slow inducer: less suction, less oxygen (CP)") {
    struct Slow {
        const char* path;
        double value;
        bool slower, more_amps;
    };
    for (const Slow& slow : {Slow{"draft.inducer.bearing_drag_added", 0.03, true, true},
                             {"wiring/inducer_capacitor.element/factor", 0.4, true, true},
                             {"draft.inducer.wheel_slip", 0.1, false, false},
                             {"draft.inducer.wheel_effectiveness", 0.8, false, false}}) {
        INFO(slow.path);
        const Readings r = after(kRun_s, number(slow.path, slow.value));
        CHECK(r.suction < healthy().suction - 0.02);
        CHECK(r.oxygen < healthy().oxygen - 0.2);
        CHECK((r.inducer_rpm < healthy().inducer_rpm) == slow.slower);
        CHECK((r.inducer_a > healthy().inducer_a) == slow.more_amps);
    }
}

TEST_CASE("sign: hose: dirt only delays; full plug, leak, water change the reading (CP)") {
    const auto closes_s = [](const Change& change) {
        Rig r;
        change(r);
        r.run(100.0);
        return r.time_of("pressure switch closes");
    };
    const auto sound_s = closes_s([](Rig&) {});
    const auto dirty_s = closes_s(number("draft.sense_line.hose_plug", 0.93));
    REQUIRE(sound_s.has_value());
    REQUIRE(dirty_s.has_value());
    CHECK(*dirty_s > *sound_s + 0.3);
    Rig dirty;
    dirty.set("draft.sense_line.hose_plug", 0.93);
    dirty.run(kRun_s);
    CHECK(units::pa_to_inwc(dirty.world.state.signals.draft.switch_side_suction_pa) ==
          Approx(healthy().suction).margin(0.01));
    CHECK_FALSE(closes_s(number("draft.sense_line.hose_plug", 1.0)).has_value());
    CHECK_FALSE(closes_s(number("draft.sense_line.hose_off", 1.0)).has_value());

    Rig water;
    water.set("draft.sense_line.water_slug", 0.006);
    water.run(kPurge_s);
    CHECK(healthy_purge().suction -
              units::pa_to_inwc(water.world.state.signals.draft.switch_side_suction_pa) ==
          Approx(0.006 / 0.0254).margin(0.03)); // 6 mm of water are 0.24 in. w.c. (definition)
}

// ---- electricity and flame sensing ------------------------------------------------------------------------

TEST_CASE("sign: low line voltage slows both motors, cools the igniter, lowers 24 V (CP)") {
    const auto at = [](double line_v) {
        Rig r;
        r.world.inputs.line_voltage_v = line_v;
        r.run(44.0);
        const double igniter_f = r.read("igniter surface");
        r.run(kRun_s - 44.0);
        return std::pair<Readings, std::pair<double, double>>{read_all(r),
                                                              {igniter_f, r.read("control, R-C")}};
    };
    const auto sound = at(120.0);
    const auto low = at(100.0);
    CHECK(low.second.first < sound.second.first - 200.0);
    CHECK(low.second.second < 0.9 * sound.second.second);
    CHECK(low.first.rpm < sound.first.rpm - 30.0);
    CHECK(low.first.amps > sound.first.amps); // an induction motor on a fan slips more and draws more
    CHECK(low.first.suction < sound.first.suction - 0.03);
    CHECK(low.first.rise > sound.first.rise + 2.0);
}

TEST_CASE(
    "sign: igniter current rises as it heats; an aged one stays low (CP: 3-4.5 A, aged below 2.5-3 A)") {
    const auto in_warm_up = [](double factor) {
        Rig r;
        r.set("heat.igniter_resistance_factor", factor);
        REQUIRE(r.run_until(60.0, [](const Rig& rig) { return rig.drives("igniter"); }));
        r.run(0.5);
        const double cold_a = r.read("igniter current");
        r.run(18.0);
        return std::pair<double, double>{cold_a, r.read("igniter current")};
    };
    const auto sound = in_warm_up(1.0);
    CHECK(sound.second > sound.first + 0.5);
    CHECK(sound.second > 3.0);
    CHECK(sound.second < 4.5);
    CHECK(in_warm_up(1.5).second < 2.5);
}

TEST_CASE("sign: what lowers the flame current (CP: 2-6 uA sound, drop-out 0.5-1)") {
    const double sound = healthy().flame_ua;
    CHECK(sound > 2.0);
    CHECK(sound < 6.0);
    const auto in_trial = [](const Change& change) {
        Rig r;
        change(r);
        r.run_until(120.0, [](const Rig& rig) {
            return rig.board_state() == "trial_dark" || rig.board_state() == "stabilise";
        });
        r.run(1.0);
        CHECK(r.count_of("all burners are lit") == 1);
        return r.read("flame current");
    };
    const double coated_a_little = in_trial(number("wiring/rod.surface/series_resistance", 5e6));
    const double coated = in_trial(number("wiring/rod.surface/series_resistance", 1e8));
    CHECK(coated_a_little < sound - 0.3);
    CHECK(coated_a_little > 1.0);
    CHECK(coated > 0.1);
    CHECK(coated < 0.5);
    CHECK(in_trial([](Rig& r) { r.bridge("rod.tip", "cabinet.metal", 1.0); }) < 0.1);  // touches ground
    CHECK(in_trial([](Rig& r) { r.bridge("rod.lead", "cabinet.metal", 3e5); }) < 0.3); // cracked insulator
    CHECK(in_trial([](Rig& r) { r.open("harness.flame"); }) < 0.05);                   // lead off
    CHECK(in_trial([](Rig& r) { r.open("burner.ground"); }) < 0.1);                    // no return
    CHECK(in_trial(number("gas.regulator_drift", -units::inwc_to_pa(2.0))) < sound - 0.5); // weak flame
}

TEST_CASE("sign: thermostat that does not call, however the furnace is (CP)") {
    struct Fault {
        const char* path;
        double value;
    };
    for (const Fault& fault : {Fault{"thermostat.battery", 1.5},
                               {"thermostat.sensor_offset", 8.0},
                               {"thermostat.heat_contact", 1.0}}) {
        INFO(fault.path);
        Rig r;
        r.set(fault.path, fault.value);
        r.run(300.0);
        CHECK(r.board_state() == "standby");
        CHECK(r.lamp() == "wink");
        CHECK(r.read("control, R-C") > 24.0);
        CHECK(r.read("call, W-C") < 1.0);
        r.act("blower-door off");
        r.act("tape on");
        r.act("jumper board.R board.W"); // at the board: it runs
        CHECK(r.run_until(120.0, [](const Rig& rig) { return rig.board_state() == "run"; }));
    }
}
