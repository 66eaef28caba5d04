// SPDX-License-Identifier: MIT
#include "electrical/netlist_builder.hpp"
#include "electrical/network.hpp"
#include "support/sample_wiring.hpp"
#include <catch2/catch.hpp>
#include <complex>
#include <vector>

using namespace lightoff;
using namespace lightoff::electrical;
using complexd = std::complex<double>;

namespace {

/// A motor on the bench: `line` feeds one tap.
struct Bench {
    Netlist netlist;
    Workspace workspace;
    Condition condition{};
    NetworkInputs inputs{};
    double synchronous_rpm;
    explicit Bench(Netlist net, double synchronous)
        : netlist(std::move(net)), workspace(netlist), synchronous_rpm(synchronous) {}
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    struct Reading {
        double torque, slope, line_a, line_w, start_a, rpm;
    };
    Reading at(double rpm) {
        workspace.set(condition, inputs);
        PortInputs ports;
        ports.rotor_rad_s[0] = units::rpm_to_rad_s(rpm);
        const AcSolution s = workspace.solve_ac(ports);
        const Complex line = workspace.ac_sense(s, netlist.sense("line"));
        const Complex volts = workspace.ac_sense(s, netlist.sense("volts"));
        return {s.torque[0].nm,
                s.torque[0].slope_nm_s_rad,
                abs(line),
                (volts * conj(line)).re,
                abs(workspace.ac_sense(s, netlist.sense("start"))),
                rpm};
    }
    double volts_at(const std::string& node, double rpm) {
        workspace.set(condition, inputs);
        PortInputs ports;
        ports.rotor_rad_s[0] = units::rpm_to_rad_s(rpm);
        const AcSolution s = workspace.solve_ac(ports);
        AcVoltages v;
        workspace.node_voltages(s, v);
        return abs(v[static_cast<std::size_t>(netlist.node(node))]);
    }
    /// Where torque meets a load that grows with the square of the speed (a fan), from above.
    Reading running(double load_nm, double load_rpm) {
        double low = 0.2 * synchronous_rpm;
        double high = synchronous_rpm;
        const auto spare = [&](double rpm) {
            return at(rpm).torque - load_nm * rpm * rpm / (load_rpm * load_rpm);
        };
        for (double rpm = high; rpm > low; rpm -= 0.01 * synchronous_rpm)
            if (spare(rpm) > 0.0) {
                low = rpm;
                break;
            } else
                high = rpm;
        for (int i = 0; i < 40; ++i)
            (spare(0.5 * (low + high)) > 0.0 ? low : high) = 0.5 * (low + high);
        return at(low);
    }
};

enum class Tap { high, medium_high, medium_low, low };

Netlist blower_bench(Tap tap, double volts = 120.0) {
    NetlistBuilder b;
    test::BlowerTaps t{};
    t.common = b.node("common");
    t.high = b.node("high");
    t.medium_high = b.node("medium high");
    t.medium_low = b.node("medium low");
    t.low = b.node("low");
    t.start = b.node("start");
    b.resistor("bond", t.common, kEarth, 0.001);
    const int live = tap == Tap::high          ? t.high
                     : tap == Tap::medium_high ? t.medium_high
                     : tap == Tap::medium_low  ? t.medium_low
                                               : t.low;
    const int line = b.node("line");
    b.source("mains", line, t.common, {volts}, 0.0, 0.001);
    const int wire = b.resistor("wire", line, live, 0.001);
    test::add_blower(b, t);
    b.sense_current("line", wire);
    b.sense_voltage("volts", line, t.common);
    b.sense_current("start", b.find_element("blower start"));
    return b.build();
}

Netlist inducer_bench() {
    NetlistBuilder b;
    const int n = b.node("N");
    const int l = b.node("L");
    const int hot = b.node("hot");
    const int start = b.node("start");
    b.resistor("bond", n, kEarth, 0.001);
    b.source("mains", l, n, {120.0}, 0.0, 0.001);
    const int wire = b.resistor("wire", l, hot, 0.001);
    test::add_inducer(b, hot, n, start);
    b.sense_current("line", wire);
    b.sense_voltage("volts", l, n);
    b.sense_current("start", b.find_element("inducer start"));
    return b.build();
}

std::vector<complexd> solve(std::vector<std::vector<complexd>> a) {
    const std::size_t n = a.size();
    for (std::size_t c = 0; c < n; ++c) {
        std::size_t best = c;
        for (std::size_t r = c; r < n; ++r)
            if (std::abs(a[r][c]) > std::abs(a[best][c]))
                best = r;
        std::swap(a[c], a[best]);
        for (std::size_t r = 0; r < n; ++r) {
            if (r == c)
                continue;
            const complexd k = a[r][c] / a[c][c];
            for (std::size_t m = c; m <= n; ++m)
                a[r][m] -= k * a[c][m];
        }
    }
    std::vector<complexd> x;
    for (std::size_t r = 0; r < n; ++r)
        x.push_back(a[r][n] / a[r][r]);
    return x;
}

/// The inducer bench by loop equations with four rotating-field EMFs as unknowns:
/// main: V = Zm Im + Em, start: V = (Za + Zc) Ia + k Ea; iron takes Ei = E/Rfe from each axis; the
/// rest of each axis' ampere-turns splits in fields: forward M+ = Fm - j Fa, backward M- = Fm + j Fa,
/// E+- = M+- Zf,b / 2 with Zf = jXm || (Rr/s + jXr); Em = E+ + E-, Ea = j (E+ - E-).
struct Independent {
    complexd line_a;
    complexd start_a;
    double torque_nm;
};
Independent inducer_by_loops(double rpm, double capacitor_farad) {
    const MotorCore m = test::inducer_core();
    const complexd j(0.0, 1.0);
    const double s = 1.0 - rpm / 3600.0;
    const double turns = 1.45;
    const auto field = [&](double slip) {
        const complexd rotor = m.rotor_ohm / slip + j * m.rotor_reactance_ohm;
        return j * m.magnetising_ohm * rotor / (j * m.magnetising_ohm + rotor);
    };
    const complexd zf = field(s);
    const complexd zb = field(2.0 - s);
    const complexd z_main = 22.0 + 20.0 * j + 0.002;
    const complexd z_start = 70.0 + 40.0 * j + 0.002 + 1.0 / (j * 2.0 * units::pi * 60.0 * capacitor_farad);
    // unknowns Im, Ia, E+, E-
    const complexd em_p = 1.0, em_b = 1.0, ea_p = j, ea_b = -j;
    const double g = 1.0 / m.iron_loss_ohm;
    std::vector<std::vector<complexd>> a(4, std::vector<complexd>(5));
    a[0] = {z_main, 0.0, em_p, em_b, 120.0};
    a[1] = {0.0, z_start, turns * ea_p, turns * ea_b, 120.0};
    // M+ = (Im - g Em) - j (k Ia - g Ea) = 2 E+ / Zf
    a[2] = {1.0, -j * turns, -g * em_p + j * g * ea_p - 2.0 / zf, -g * em_b + j * g * ea_b, 0.0};
    a[3] = {1.0, j * turns, -g * em_p - j * g * ea_p, -g * em_b - j * g * ea_b - 2.0 / zb, 0.0};
    const auto x = solve(a);
    const double synchronous = 3600.0 * 2.0 * units::pi / 60.0;
    // air-gap power of a field: rotor current squared times Rr/s, twice over (two axes), E+- on Zf/2
    const auto gap_w = [&](complexd e, double slip) {
        const complexd i = 2.0 * e / (m.rotor_ohm / slip + j * m.rotor_reactance_ohm);
        return std::norm(i) * m.rotor_ohm / slip / 2.0;
    };
    return {x[0] + x[1], x[1], (gap_w(x[2], s) - gap_w(x[3], 2.0 - s)) / synchronous};
}

} // namespace

TEST_CASE("torque, line and start-winding current agree with loop equations solved anew") {
    // Source: double revolving field theory, Fitzgerald et al., Electric Machinery (from memory).
    Bench bench(inducer_bench(), 3600.0);
    for (const double rpm : {1e-6, 400.0, 1200.0, 2000.0, 2800.0, 3100.0, 3400.0, 3590.0, 3700.0}) {
        const auto ours = bench.at(rpm);
        const Independent theirs = inducer_by_loops(rpm, 3e-6);
        INFO("rpm " << rpm);
        CHECK(ours.line_a == Approx(std::abs(theirs.line_a)).epsilon(1e-4));
        CHECK(ours.start_a == Approx(std::abs(theirs.start_a)).epsilon(1e-4));
        CHECK(ours.torque == Approx(theirs.torque_nm).epsilon(1e-4));
    }
}

TEST_CASE("shaft power, copper, rotor and iron losses add up to the power taken from the line") {
    Bench bench(inducer_bench(), 3600.0);
    const double rpm = 3000.0;
    const auto r = bench.at(rpm);
    PortInputs ports;
    ports.rotor_rad_s[0] = units::rpm_to_rad_s(rpm);
    const AcSolution s = bench.workspace.solve_ac(ports);
    AcVoltages v;
    bench.workspace.node_voltages(s, v);
    const MotorCore core = test::inducer_core();
    double losses = (norm(s.port_v[0]) + norm(s.port_v[1])) / core.iron_loss_ohm;
    const auto copper = [&](const std::string& name, double ohm) {
        const int e = bench.netlist.element(name);
        losses += norm(bench.workspace.element_current(s, v, e)) * ohm;
    };
    copper("inducer main", 22.0);
    copper("inducer start", 70.0);
    copper("wire", 0.001);
    // Power into the rotor: both fields' air-gap power; the part that is not shaft power heats the rotor.
    const Complex p0 = s.port_v[0] * conj(s.port_a[0]);
    const Complex p1 = s.port_v[1] * conj(s.port_a[1]);
    CHECK(losses + p0.re + p1.re == Approx(r.line_w).epsilon(1e-5));
    CHECK(r.torque * ports.rotor_rad_s[0] < p0.re + p1.re);
    CHECK(r.torque * ports.rotor_rad_s[0] > 0.5 * (p0.re + p1.re));
}

TEST_CASE("the slope of torque is its derivative at held field voltages") {
    const MotorCore core = test::blower_core();
    const Complex m{50.0, 20.0};
    const Complex a{-15.0, 60.0};
    for (const double speed : {0.0, 60.0, 110.0, 130.0}) {
        const double h = 1e-4;
        const double numeric = (motor_torque(core, motor_admittance(core, speed + h), m, a).nm -
                                motor_torque(core, motor_admittance(core, speed - h), m, a).nm) /
                               (2.0 * h);
        CHECK(motor_torque(core, motor_admittance(core, speed), m, a).slope_nm_s_rad ==
              Approx(numeric).epsilon(1e-6).margin(1e-9));
    }
}

TEST_CASE("the blower meets the reference furnace's targets") {
    // Common practice, no source: heating speed 4.3-5.8 A and 480-620 W near 1075 rpm, locked rotor 12-16 A,
    // nameplate 7.0 A for the highest speed.
    Bench heating(blower_bench(Tap::medium_low), 1200.0);
    const auto at_1075 = heating.at(1075.0);
    CHECK(at_1075.line_a > 4.3);
    CHECK(at_1075.line_a < 5.8);
    CHECK(at_1075.line_w > 480.0);
    CHECK(at_1075.line_w < 620.0);
    const auto locked = heating.at(0.0);
    CHECK(locked.line_a > 12.0);
    CHECK(locked.line_a < 16.0);
    CHECK(locked.torque > 0.2); // it starts a fan by itself
    Bench high(blower_bench(Tap::high), 1200.0);
    CHECK(high.running(2.95, 1075.0).line_a < 7.0);
}

TEST_CASE("each speed tap runs the wheel slower than the one above, idle taps carry 60-150 V") {
    // Common practice, no source.
    double above = 1200.0;
    for (const Tap tap : {Tap::high, Tap::medium_high, Tap::medium_low, Tap::low}) {
        Bench bench(blower_bench(tap), 1200.0);
        const auto r = bench.running(2.95, 1075.0);
        CHECK(r.rpm < above - 10.0);
        above = r.rpm;
    }
    Bench heating(blower_bench(Tap::medium_low), 1200.0);
    const double rpm = heating.running(2.95, 1075.0).rpm;
    for (const char* idle : {"high", "medium high", "low"}) {
        CHECK(heating.volts_at(idle, rpm) > 60.0);
        CHECK(heating.volts_at(idle, rpm) < 150.0);
    }
}

TEST_CASE("motor signs that a technician knows") {
    // Common practice, no source: table of signs in the trade notes.
    Bench bench(blower_bench(Tap::medium_low), 1200.0);
    const auto sound = bench.running(2.95, 1075.0);
    const auto light = bench.running(0.7 * 2.95, 1075.0); // dirty filter, closed registers, packed wheel
    CHECK(light.line_a < sound.line_a);
    CHECK(light.rpm > sound.rpm);
    const auto drag = bench.running(1.25 * 2.95, 1075.0);
    CHECK(drag.line_a > sound.line_a);
    CHECK(drag.rpm < sound.rpm);

    const auto capacitor = static_cast<std::size_t>(bench.netlist.element("blower capacitor"));
    bench.condition.factor[capacitor] = 0.6F; // weak
    const auto weak = bench.running(2.95, 1075.0);
    CHECK(weak.start_a < 0.7 * sound.start_a);
    CHECK(weak.line_a == Approx(sound.line_a).epsilon(0.10));
    CHECK(weak.rpm < sound.rpm);
    const double shaft_ratio = weak.torque * weak.rpm / (sound.torque * sound.rpm);
    CHECK(weak.line_w / sound.line_w > shaft_ratio); // more of it stays in the windings

    bench.condition.factor[capacitor] = 1.0F;
    bench.condition.series_ohm[capacitor] = kOpenOhm;
    const auto stalled = bench.at(0.0);
    CHECK(std::abs(stalled.torque) < 1e-6); // hums
    CHECK(stalled.line_a > 2.0 * sound.line_a);
    CHECK(stalled.line_a < 3.0 * sound.line_a);
    CHECK(bench.at(600.0).torque > 1.0);   // runs if spun by hand,
    CHECK(bench.at(-600.0).torque < -1.0); // either way round
}

TEST_CASE("the inducer runs at 3000-3200 rpm on less than 1.5 A") { // common practice, no source
    Bench bench(inducer_bench(), 3600.0);
    const auto r = bench.running(0.0975, 3100.0);
    CHECK(r.rpm > 3000.0);
    CHECK(r.rpm < 3200.0);
    CHECK(r.line_a < 1.5);
    CHECK(bench.at(0.0).torque > 0.03);
}

TEST_CASE("a motor drags line voltage down and slows with it") {
    Bench sound(blower_bench(Tap::medium_low), 1200.0);
    Bench low(blower_bench(Tap::medium_low, 102.0), 1200.0);
    CHECK(low.running(2.95, 1075.0).rpm < sound.running(2.95, 1075.0).rpm);
}
