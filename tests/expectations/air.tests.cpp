// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include <catch2/catch.hpp>

// Blower, ducts, filter; limit and rollout.

using namespace lightoff::test;

namespace {

/// A warm furnace with its doors on, instruments left inside at the blower.
struct AirSheet {
    double return_static, supply_static, amps, rpm, rise;
};

constexpr std::string_view kBlowerInstruments = "clamp blower.lead_common; tachometer blower-shaft";

AirSheet read_air(Technician& t) {
    AirSheet sheet{};
    t.drive("manometer-a return-static");
    sheet.return_static = t.reading("manometer");
    t.drive("manometer-a supply-static");
    sheet.supply_static = t.reading("manometer");
    sheet.amps = t.shows("clamp ammeter");
    sheet.rpm = t.shows("tachometer");
    sheet.rise = t.shows("thermometer T1 - T2");
    return sheet;
}

/// The same furnace with something done to it while the power is off.
AirSheet air_with(const std::vector<Broken>& faults, std::string_view done = "blower-door on") {
    Technician t = with(faults);
    t.drive("disconnect off; blower-door off").drive(kBlowerInstruments).drive(done);
    t.drive("probe-1 supply-duct; probe-2 return-duct").drive(kCall);
    t.await("Blower: a steady whirr");
    t.drive("wait 8min");
    return read_air(t);
}

const AirSheet& sound_air() {
    static const AirSheet sheet = air_with({});
    return sheet;
}

/// Start winding's amps and the motor's shell after the same time.
struct Motor {
    double start_a, shell_f;
};
Motor motor_with(const std::vector<Broken>& faults) {
    Technician t = with(faults);
    t.drive("disconnect off; blower-door off; clamp blower.lead_capacitor_a; probe-1 blower-motor-shell");
    t.drive("blower-door on").drive(kCall);
    t.await("Blower: a steady whirr");
    t.drive("wait 15min");
    return {t.shows("clamp ammeter"), t.shows("thermometer T1")};
}
const Motor& sound_motor() {
    static const Motor motor = motor_with({});
    return motor;
}

} // namespace

// ---- signs of the air side; columns: return static, supply static, amps, rpm, rise

TEST_CASE("filter dirty: return static more negative, supply static down",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"filter_dirty", 0.45}});
    CHECK(r.return_static < sound_air().return_static - 0.20);
    CHECK(r.supply_static < sound_air().supply_static - 0.05);
}

TEST_CASE("filter dirty: amps DOWN, rpm up, rise up", "[air][common practice, no source]") {
    const AirSheet r = air_with({{"filter_dirty", 0.45}});
    CHECK(r.amps < sound_air().amps - 0.3);
    CHECK(r.rpm > sound_air().rpm + 15.0);
    CHECK(r.rise > sound_air().rise + 8.0);
}

TEST_CASE("registers closed: return static nearer zero, supply static UP",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"registers_closed", 0.6}});
    CHECK(r.return_static > sound_air().return_static + 0.03);
    CHECK(r.supply_static > sound_air().supply_static + 0.20);
}

TEST_CASE("registers closed: amps DOWN, rpm up, rise up", "[air][common practice, no source]") {
    const AirSheet r = air_with({{"registers_closed", 0.6}});
    CHECK(r.amps < sound_air().amps - 0.3);
    CHECK(r.rpm > sound_air().rpm + 15.0);
    CHECK(r.rise > sound_air().rise + 5.0);
}

TEST_CASE("coil dirty: return static nearer zero, supply static UP before it",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"coil_dirty", 0.45}});
    CHECK(r.return_static > sound_air().return_static + 0.03);
    CHECK(r.supply_static > sound_air().supply_static + 0.20);
}

TEST_CASE("coil dirty: amps DOWN, rpm up, rise up", "[air][common practice, no source]") {
    const AirSheet r = air_with({{"coil_dirty", 0.45}});
    CHECK(r.amps < sound_air().amps - 0.3);
    CHECK(r.rpm > sound_air().rpm + 15.0);
    CHECK(r.rise > sound_air().rise + 5.0);
}

TEST_CASE("wheel packed: return static nearer zero, supply static DOWN",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"wheel_packed", 0.4}});
    CHECK(r.return_static > sound_air().return_static + 0.03);
    CHECK(r.supply_static < sound_air().supply_static - 0.05);
}

TEST_CASE("wheel packed: amps DOWN, rpm up, rise up, with a clean filter",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"wheel_packed", 0.4}});
    CHECK(r.amps < sound_air().amps - 0.5);
    CHECK(r.rpm > sound_air().rpm + 15.0);
    CHECK(r.rise > sound_air().rise + 5.0);
    Technician t = found("packed-wheel");
    t.drive("look filter; disconnect off; blower-door off; look blower_wheel");
    CHECK(t.noticed("white, light shines through") == 1);
    CHECK(t.noticed("the cups are packed nearly flat") == 1);
}

TEST_CASE("blower door off: amps UP, rpm down, rise down", "[air][common practice, no source]") {
    const AirSheet r = air_with({}, "tape on");
    CHECK(r.amps > sound_air().amps + 0.1);
    CHECK(r.rpm < sound_air().rpm - 5.0);
    CHECK(r.rise < sound_air().rise - 1.0);
}

TEST_CASE("filter out: amps UP, rpm down, rise down", "[air][common practice, no source]") {
    const AirSheet r = air_with({}, "filter off; blower-door on");
    CHECK(r.amps > sound_air().amps + 0.1);
    CHECK(r.rpm < sound_air().rpm - 5.0);
    CHECK(r.rise < sound_air().rise - 1.0);
}

TEST_CASE("blower door off: hides a dirty filter, whose amps and rise read normal",
          "[air][common practice, no source]") {
    const AirSheet shown = air_with({{"filter_dirty", 0.5}});
    const AirSheet hidden = air_with({{"filter_dirty", 0.5}}, "tape on");
    CHECK(shown.amps < sound_air().amps - 0.3);
    CHECK(hidden.amps > sound_air().amps);
    CHECK(shown.rise > sound_air().rise + 8.0);
    CHECK(hidden.rise < sound_air().rise);
}

TEST_CASE("capacitor weak: statics a little nearer zero, rpm DOWN, rise up, line amps little changed",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"blower_capacitor_weak", 0.7}});
    CHECK(r.return_static > sound_air().return_static + 0.005);
    CHECK(r.supply_static < sound_air().supply_static - 0.01);
    CHECK(r.rpm < sound_air().rpm - 15.0);
    CHECK(r.rise > sound_air().rise + 0.5);
    CHECK(r.amps == Approx(sound_air().amps).epsilon(0.15));
}

TEST_CASE("capacitor weak: the start winding's amps are down and the motor hotter",
          "[air][common practice, no source]") {
    const Motor motor = motor_with({{"blower_capacitor_weak", 0.7}});
    CHECK(motor.start_a < 0.6 * sound_motor().start_a);
    CHECK(motor.shell_f > sound_motor().shell_f + 5.0);
}

TEST_CASE("bearing drags: statics nearer zero, amps UP, rpm DOWN, rise up",
          "[air][common practice, no source]") {
    const AirSheet r = air_with({{"blower_bearing_drags", 0.7}});
    CHECK(r.return_static > sound_air().return_static + 0.005);
    CHECK(r.supply_static < sound_air().supply_static - 0.01);
    CHECK(r.amps > sound_air().amps + 0.3);
    CHECK(r.rpm < sound_air().rpm - 15.0);
    CHECK(r.rise > sound_air().rise + 0.5);
}

TEST_CASE("bearing drags: the motor is hotter", "[air][common practice, no source]") {
    CHECK(motor_with({{"blower_bearing_drags", 0.7}}).shell_f > sound_motor().shell_f + 5.0);
}

TEST_CASE("motor felted with lint: hot at ordinary amps", "[air][common practice, no source]") {
    CHECK(motor_with({{"blower_motor_felted", 0.9}}).shell_f > sound_motor().shell_f + 30.0);
    CHECK(air_with({{"blower_motor_felted", 0.9}}).amps == Approx(sound_air().amps).epsilon(0.03));
}

TEST_CASE("low blower amps are no good motor's badge: filter, registers, coil and wheel each bring them down",
          "[air][common practice, no source]") {
    for (const char* fault : {"filter_dirty", "registers_closed", "coil_dirty", "wheel_packed"}) {
        INFO(fault);
        CHECK(air_with({{fault, 0.45}}).amps < sound_air().amps - 0.3);
    }
}

TEST_CASE("a running motor's idle speed taps carry 60 to 150 V, on low impedance too",
          "[air][common practice, no source]") {
    Technician t = sound(12.0);
    t.drive("blower-door off; tape on");
    t.await("Blower: a steady whirr");
    for (const char* tap : {"board.park_1", "board.park_2", "board.blower_cool"}) {
        INFO(tap);
        t.drive("meter ac-volts").drive(std::string("leads ") + tap + " board.neutral");
        CHECK(t.reading() >= 60.0);
        CHECK(t.reading() <= 150.0);
        t.drive("meter low-z-volts");
        CHECK(t.reading() >= 60.0);
    }
}

TEST_CASE(
    "two speed taps fed at once: far too many amps, then a smell of hot varnish, and the overload opens",
    "[air][common practice, no source]") {
    Technician t = sound();
    t.drive(kOffBoth)
        .drive("clamp blower.lead_common; jumper board.blower_heat board.blower_cool")
        .drive(kCall);
    t.await("Blower:", 300.0);
    t.drive("wait 10s");
    CHECK(t.shows("clamp ammeter") > 1.5 * sound_air().amps);
    t.await("hot varnish", 1800.0);
    t.await("clamp ammeter", below(0.1), 1800.0);
}

// ---- chain: capacitor open

TEST_CASE("capacitor open: a hum and no whirr, two to three times the amps, 0 rpm",
          "[air][common practice, no source]") {
    Technician t = with({{"blower_capacitor_open"}});
    t.drive("disconnect off; blower-door off").drive(kBlowerInstruments).drive("blower-door on").drive(kCall);
    t.await("Blower: a flat hum");
    t.drive("wait 5s");
    CHECK(t.shows("tachometer") == 0.0);
    CHECK(t.shows("clamp ammeter") >= 2.0 * sound_air().amps);
    CHECK(t.shows("clamp ammeter") <= 3.0 * sound_air().amps);
    CHECK(t.noticed("Blower: a whirr") == 0);
}

TEST_CASE("capacitor open: both statics 0, no air at the registers", "[air][common practice, no source]") {
    Technician t = with({{"blower_capacitor_open"}});
    t.drive("manometer-a return-static; thermostat-set 84F");
    t.await("Blower: a flat hum");
    CHECK(t.reading("manometer") == Approx(0.0).margin(0.01));
    t.drive("manometer-a supply-static");
    CHECK(t.reading("manometer") == Approx(0.0).margin(0.01));
    CHECK(t.noticed("At the registers:") == 0); // none has begun to move
}

TEST_CASE("capacitor open: the limit opens 90 to 150 s after the flame, and the lamp counts 5",
          "[limits][common practice, no source]") {
    Technician t = with({{"blower_capacitor_open"}});
    t.drive("thermostat-set 84F");
    t.await("burners light");
    const double opens_s = 1.5 + t.await("The burners' roar stops"); // a light-off is heard out for 1.5 s
    CHECK(opens_s >= 90.0);
    CHECK(opens_s <= 150.0);
    CHECK(t.lamp() == counts(5));
}

TEST_CASE("capacitor open: the wheel starts if it is spun by hand", "[air][common practice, no source]") {
    Technician t = with({{"blower_capacitor_open"}});
    t.drive(kOffBoth).drive("tachometer blower-shaft").drive(kCall);
    t.await("Blower: a flat hum");
    t.drive("spin blower; wait 15s");
    CHECK(t.shows("tachometer") > 900.0);
    CHECK(t.noticed("Blower: a steady whirr") == 1);
}

TEST_CASE("capacitor open: the motor's overload ends the hum, and it comes back in 20 to 40 min",
          "[air][common practice, no source]") {
    Technician t = with({{"blower_capacitor_open"}});
    t.drive("thermostat-fan on");
    t.await("Blower: a flat hum");
    t.await("Blower: the hum stops", 1200.0);
    CHECK(t.noticed("hot varnish") >= 1);
    const double back_s = t.await("Blower: a flat hum", 3600.0);
    CHECK(back_s >= 20.0 * 60.0);
    CHECK(back_s <= 40.0 * 60.0);
}

TEST_CASE("capacitor open: pulled and discharged, it has no microfarads",
          "[air][common practice, no source]") {
    Technician t = with({{"blower_capacitor_open"}});
    t.drive("disconnect off; blower-door off; lift blower_capacitor.a; discharge blower_capacitor");
    t.drive("meter capacitance; leads blower_capacitor.a blower_capacitor.b");
    CHECK(t.reading() < 0.1);
}

// ---- chains: dirty filter and packed wheel on the limit

TEST_CASE("filter dirty: the rise is over 70 F when the limit opens, some minutes after the start",
          "[limits][common practice, no source]") {
    Technician t = with({{"filter_dirty", 0.9}});
    t.drive("probe-1 supply-duct; probe-2 return-duct; thermostat-set 84F");
    t.await("burners light");
    CHECK(t.await("The burners' roar stops", 900.0) > 120.0);
    CHECK(t.shows("thermometer T1 - T2") > 70.0);
}

TEST_CASE("filter dirty, limit open: 24 V across the limit, 0 V across the pressure switch: its feed is gone",
          "[limits][common practice, no source]") {
    Technician t = with({{"filter_dirty", 0.9}});
    t.drive("burner-door off; leads limit.in limit.out; thermostat-set 84F");
    t.await("burners light");
    t.await("The burners' roar stops", 900.0);
    CHECK(t.reading() > 24.0);
    t.drive("leads pressure_switch.in pressure_switch.out");
    CHECK(t.reading() < 0.2);
    t.drive("leads pressure_switch.in valve.common");
    CHECK(t.reading() < 0.5);
}

TEST_CASE("filter dirty, limit open: inducer and blower run on, and it restarts by itself; the lamp counts 5",
          "[limits][common practice, no source]") {
    Technician t = with({{"filter_dirty", 0.9}});
    t.drive("thermostat-set 84F");
    t.await("burners light");
    t.await("The burners' roar stops", 900.0);
    t.forget();
    t.await("burners light", 600.0);
    CHECK(t.noticed("Inducer: runs down") + t.noticed("Blower: runs down") == 0);
    CHECK(t.lamp() == counts(5));
}

TEST_CASE("wheel packed: both statics low, the rise over 70 F when the limit opens",
          "[limits][common practice, no source]") {
    Technician t = with({{"wheel_packed"}});
    t.drive("probe-1 supply-duct; probe-2 return-duct; manometer-a return-static; thermostat-set 84F");
    t.await("burners light");
    t.drive("wait 3min");
    CHECK(t.shows("manometer") > -0.12);
    t.drive("manometer-a supply-static");
    CHECK(t.reading("manometer") < 0.22);
    t.await("The burners' roar stops", 1200.0);
    CHECK(t.shows("thermometer T1 - T2") > 70.0);
}

TEST_CASE(
    "wheel packed, limit open: 24 V across the limit, 0 V across the pressure switch, restarts, count 5",
    "[limits][common practice, no source]") {
    Technician t = with({{"wheel_packed"}});
    t.drive("burner-door off; leads limit.in limit.out; thermostat-set 84F");
    t.await("burners light");
    t.await("The burners' roar stops", 1500.0);
    CHECK(t.reading() > 24.0);
    t.drive("leads pressure_switch.in pressure_switch.out");
    CHECK(t.reading() < 0.2);
    CHECK(t.lamp() == counts(5));
    t.await("burners light", 600.0);
}

TEST_CASE("the limit reads closed by the time you arrive; the lamp's 5 and the filter are what is left",
          "[limits][common practice, no source]") {
    Technician t = with({{"filter_dirty", 0.95}}, 60.0);
    CHECK(t.lamp() == held(5));
    t.drive("burner-door off; leads limit.in limit.out");
    CHECK(t.reading() < 0.2);
    t.drive("leads limit.out valve.common; look filter");
    CHECK(t.reading() > 24.0); // fed, and closed
    CHECK(t.noticed("a mat of dust") == 1);
}

TEST_CASE("limit weak: it opens at an ordinary rise", "[limits][common practice, no source]") {
    Technician t = with({{"limit_weak", 0.6}});
    t.drive("probe-1 supply-duct; probe-2 return-duct; thermostat-set 84F");
    t.await("burners light");
    t.await("The burners' roar stops", 1200.0);
    CHECK(t.shows("thermometer T1 - T2") < 60.0);
    CHECK(t.lamp() == counts(5));
}

TEST_CASE("limit open for good: inducer and blower run, 24 V stand across it cold, no count above 1",
          "[limits][common practice, no source]") {
    Technician t = found("tired-limit");
    CHECK(t.lamp() == counts(1));
    t.drive("burner-door off; leads limit.in limit.out");
    CHECK(t.reading() > 24.0);
    CHECK(t.noticed("Inducer: a steady whirr") == 1);
    CHECK(t.noticed("Blower: a steady whirr") == 1);
}

TEST_CASE("blower relay dead: no volts at the motor, no hum, and the limit opens",
          "[limits][common practice, no source]") {
    Technician t = with({{"blower_relay_dead"}});
    t.drive(kOffBoth).drive("leads board.blower_heat board.neutral").drive(kCall);
    t.await("burners light");
    t.drive("wait 60s");
    CHECK(t.shows("multimeter") < 1.0);
    t.await("The burners' roar stops", 150.0);
    CHECK(t.noticed("Blower:") == 0);
}

TEST_CASE("blower relay welded: the blower runs at rest, and the lamp does not count it",
          "[air][common practice, no source]") {
    Technician t = with({{"blower_relay_welded"}});
    t.drive("wait 20s");
    CHECK(t.noticed("Blower: a steady whirr") == 1);
    CHECK(t.lamp() == kWink);
}

// ---- chain: rollout

namespace {

/// A blocked exchanger has rolled the flame out.
Technician rolled_out() {
    static const Technician there = [] {
        Technician t = with({{"exchanger_blocked", 0.9}});
        t.drive("burner-door off; leads rollout.in rollout.out; thermostat-set 84F");
        t.await("The burners' roar stops", 300.0);
        return t;
    }();
    return there;
}

} // namespace

TEST_CASE(
    "rollout: flame comes out of the openings, then the burners are off and 24 V stand across the switch",
    "[limits][common practice, no source]") {
    Technician t = rolled_out();
    CHECK(t.noticed("Flame comes out of the burner openings") == 1);
    CHECK(t.reading() > 24.0);
    t.drive("leads limit.in valve.common");
    CHECK(t.reading() < 0.5); // everything behind it is dead
}

TEST_CASE("rollout: the lamp counts 4 or 5, then the long glow", "[limits][common practice, no source]") {
    Technician t = rolled_out();
    t.drive("wait 5s");
    const std::string lamp = t.lamp();
    CHECK((lamp == held(4) || lamp == held(5)));
}

TEST_CASE("rollout: inducer and blower run for hours, till somebody resets the switch by hand",
          "[limits][common practice, no source]") {
    Technician t = rolled_out();
    t.await("Blower: a steady whirr");
    t.drive("wait 2h");
    CHECK(t.noticed("runs down") == 0);
    t.drive("reset rollout; wait 5s");
    CHECK(t.noticed("Inducer: runs down") == 1);
    CHECK(t.reading() < 0.2);
}

TEST_CASE("rollout: if it is only reset, it opens again", "[limits][common practice, no source]") {
    Technician t = rolled_out();
    t.drive("wait 5min; reset rollout; wait 20s; disconnect off; wait 20s; disconnect on");
    t.await("burners light");
    t.await("The burners' roar stops", 60.0);
    CHECK(t.reading() > 24.0);
}
