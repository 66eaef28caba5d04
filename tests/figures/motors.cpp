// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"

#include "support/rig.hpp"
#include "units/convert.hpp"

#include <cmath>

namespace lightoff::figures {
namespace {

/// One motor of the reference furnace, its speed taken by hand through the whole range while everything else
/// stands as a long run has left it.
struct Subject {
    std::string name;
    std::string file;
    std::string capacitor; ///< element
    std::string current;   ///< readout
    double synchronous_rpm;
    double most_nm;
    double nm_step;
    int nm_decimals;
    double most_a;
    double a_step;
    int a_decimals;
    double locked_low_a; ///< common practice; 0: none
    double locked_high_a;
    double running_low_a;
    double running_high_a;
    std::string practice;
};

enum class Which { blower, inducer };

double& speed_of(test::Rig& rig, Which which) {
    return which == Which::blower ? rig.world.state.air.blower.speed_rad_s
                                  : rig.world.state.draft.inducer.speed_rad_s;
}

double torque_nm(test::Rig& rig, Which which) {
    const furnace::Wiring& wiring = rig.model.wiring;
    const int motor = which == Which::blower ? wiring.blower_motor : wiring.inducer_motor;
    const electrical::AcSolution ac =
        furnace::solve_ac(rig.model, rig.world.state, rig.world.condition, rig.world.inputs, rig.workspace);
    return ac.torque[static_cast<std::size_t>(motor)].nm;
}

struct Sweep {
    std::vector<Point> torque;
    std::vector<Point> current;
};

Sweep sweep(const test::Rig& settled, Which which, const Subject& subject, double line_v, bool capacitor) {
    test::Rig rig = settled;
    rig.world.inputs.line_voltage_v = line_v;
    if (!capacitor)
        rig.open(subject.capacitor);
    Sweep out;
    for (const double rpm : every(0.0, subject.synchronous_rpm, subject.synchronous_rpm / 80.0)) {
        speed_of(rig, which) = units::rpm_to_rad_s(rpm);
        out.torque.push_back({rpm, torque_nm(rig, which)});
        out.current.push_back({rpm, rig.read(subject.current)});
    }
    return out;
}

/// What wheel and bearings ask: the settled torque, going with the square of the speed but for the bearings.
std::vector<Point> load(double settled_nm, double drag_nm, double settled_rpm, double up_to_rpm) {
    std::vector<Point> out;
    for (const double rpm : every(0.0, up_to_rpm, up_to_rpm / 60.0)) {
        const double part = rpm / settled_rpm;
        out.push_back({rpm, drag_nm + (settled_nm - drag_nm) * part * part});
    }
    return out;
}

Drawing motor(const test::Rig& settled, Which which, const Subject& s) {
    test::Rig now = settled;
    const double rpm = units::rad_s_to_rpm(speed_of(now, which));
    const furnace::Signals& signals = now.world.state.signals;
    const double shaft_w = which == Which::blower ? signals.air.shaft_power_w : signals.draft.shaft_power_w;
    const double shaft_nm = shaft_w / speed_of(now, which);
    const double drag_nm = which == Which::blower ? now.model.air.blower.bearing_drag_nm
                                                  : now.model.draft.inducer.bearing_drag_nm;
    const double running_a = now.read(s.current);

    Figure figure(
        s.name, 500.0,
        "Double revolving field theory with the winding data of the reference profile (teaching values); "
        "held to loop equations solved anew in tests/electrical/motor.tests.cpp. Dots: 10 minutes into a "
        "call, " +
            number(rpm, 0) + " rpm, " + number(running_a, 2) + " A. " + s.practice);
    const Axis speed{"", 0.0, s.synchronous_rpm, every(0.0, s.synchronous_rpm, s.synchronous_rpm / 6.0)};
    Axis quiet = speed;
    quiet.numbers = false;
    Axis named = speed;
    named.title = "speed, rpm";
    Chart torque(figure.svg, figure.box(76, 24, 4, 268), quiet,
                 {"torque, N m", 0.0, s.most_nm, every(0.0, s.most_nm, s.nm_step), s.nm_decimals});
    Chart current(figure.svg, figure.box(76, 24, 256, 54), named,
                  {"line current, A", 0.0, s.most_a, every(0.0, s.most_a, s.a_step), s.a_decimals});
    const double range = s.synchronous_rpm;
    if (s.locked_high_a > 0.0)
        current.block(0.0, 0.012 * range, s.locked_low_a, s.locked_high_a, kRule, 0.8);
    current.block(rpm - 0.008 * range, rpm + 0.008 * range, s.running_low_a, s.running_high_a, kRule, 0.8);

    const Sweep sound = sweep(settled, which, s, 120.0, true);
    const Sweep low = sweep(settled, which, s, 100.0, true);
    const Sweep open = sweep(settled, which, s, 120.0, false);
    torque.curve(load(shaft_nm, drag_nm, rpm, range), {kAir, 2.0});
    torque.curve(open.torque, {kHeat, 2.0, "3 3"});
    torque.curve(low.torque, {kVolts120, 2.0, "8 4"});
    torque.curve(sound.torque, {kInk, 2.4});
    torque.dot({rpm, shaft_nm}, kInk);
    current.curve(open.current, {kHeat, 2.0, "3 3"});
    current.curve(low.current, {kVolts120, 2.0, "8 4"});
    current.curve(sound.current, {kInk, 2.4});
    current.dot({rpm, running_a}, kInk);

    torque.key(10.0, 16.0, "sound, 120 V", {kInk, 2.4});
    torque.key(154.0, 16.0, "100 V", {kVolts120, 2.0, "8 4"});
    torque.key(262.0, 16.0, "capacitor open", {kHeat, 2.0, "3 3"});
    torque.key(424.0, 16.0, "wheel and bearings", {kAir, 2.0});
    return {s.file, figure.finish()};
}

} // namespace

std::vector<Drawing> motor_figures() {
    test::Rig settled;
    settled.run(600.0);
    const Subject blower{"Blower motor, heating speed",
                         "blower-motor.svg",
                         "blower_capacitor.element",
                         "blower current",
                         1200.0,
                         6.0,
                         1.0,
                         0,
                         16.0,
                         4.0,
                         0,
                         12.0,
                         16.0,
                         4.3,
                         5.8,
                         "Grey: common practice, 4.3 to 5.8 A running, 12 to 16 A locked."};
    const Subject inducer{"Inducer motor",
                          "inducer-motor.svg",
                          "inducer_capacitor.element",
                          "inducer current",
                          3600.0,
                          0.2,
                          0.05,
                          2,
                          2.0,
                          0.5,
                          1,
                          0.0,
                          0.0,
                          0.0,
                          1.5,
                          "Grey: common practice, below 1.5 A running."};
    return {motor(settled, Which::blower, blower), motor(settled, Which::inducer, inducer)};
}

} // namespace lightoff::figures
