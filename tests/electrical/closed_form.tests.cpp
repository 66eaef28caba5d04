// SPDX-License-Identifier: MIT
#include "electrical/netlist_builder.hpp"
#include "electrical/network.hpp"
#include "support/sample_wiring.hpp"
#include <catch2/catch.hpp>
#include <complex>

using namespace lightoff::electrical;
using namespace lightoff::test;
using std::complex;

namespace {

constexpr double omega = 2.0 * 3.14159265358979323846 * 60.0;

/// Solves one netlist as drawn.
struct Solved {
    Netlist netlist;
    NetworkInputs inputs{};
    Condition condition{};
    AcVoltages ac{};
    DcVoltages dc{};
    AcSolution ac_solution{};
    Workspace workspace;

    explicit Solved(Netlist net) : netlist(std::move(net)), workspace(netlist) { again(); }
    Solved(const Solved&) = delete;
    Solved& operator=(const Solved&) = delete;
    void again() {
        workspace.set(condition, inputs);
        ac_solution = workspace.solve_ac({});
        const DcSolution d = workspace.solve_dc({});
        workspace.node_voltages(ac_solution, ac);
        workspace.node_voltages(d, dc);
    }
    [[nodiscard]] double volts(const std::string& a, const std::string& b) const {
        return abs(ac[static_cast<std::size_t>(netlist.node(a))] -
                   ac[static_cast<std::size_t>(netlist.node(b))]);
    }
    [[nodiscard]] double amps(const std::string& element) const {
        return abs(workspace.element_current(ac_solution, ac, netlist.element(element)));
    }
};

Netlist transformer_bench(double load_ohm) {
    NetlistBuilder b;
    const int n = b.node("N");
    const int l = b.node("L");
    const int c = b.node("C");
    const int r = b.node("24");
    b.resistor("bond", n, kEarth, 0.01);
    b.resistor("C bond", c, kEarth, 0.01);
    b.source("mains", l, n, {120.0}, 0.0, 0.001);
    add_transformer(b, l, n, r, c);
    b.resistor("load", r, c, load_ohm);
    return b.build();
}

} // namespace

TEST_CASE("a divider divides, at 60 Hz and at DC") { // Ohm's law
    NetlistBuilder b;
    const int top = b.node("top");
    const int middle = b.node("middle");
    b.source("source", top, kEarth, {100.0}, 10.0, 1.0);
    b.resistor("upper", top, middle, 29.0);
    b.resistor("lower", middle, kEarth, 70.0);
    const Solved s(b.build());
    CHECK(s.volts("middle", "earth") == Approx(70.0).epsilon(1e-7));
    CHECK(s.dc[2] == Approx(7.0).epsilon(1e-7));
    CHECK(s.amps("lower") == Approx(1.0).epsilon(1e-7));
}

TEST_CASE("R, L and C in series resonate by the textbook formula") { // V_C = V / |1 - w^2 LC + j w RC|
    NetlistBuilder b;
    const int top = b.node("top", {0.0, 1e15});
    const int one = b.node("one", {0.0, 1e15});
    b.source("source", top, kEarth, {100.0}, 0.0, 1.0);
    b.coil("coil", top, one, 9.0, 0.5);
    b.capacitor("capacitor", one, kEarth, 10e-6, 1e15);
    const Solved s(b.build());
    const complex<double> j(0.0, 1.0);
    const double wanted = 100.0 / std::abs(1.0 - omega * omega * 0.5 * 10e-6 + j * omega * 10.0 * 10e-6);
    CHECK(s.volts("one", "earth") == Approx(wanted).epsilon(1e-9));
    CHECK(s.dc[2] == Approx(0.0).margin(1e-9));
}

TEST_CASE("capacitance by amps and volts: uF = 2652.58 A/V") { // 1e6 / (2 pi 60); the trade rounds to 2652
    NetlistBuilder b;
    const int top = b.node("top", {0.0, 1e15});
    b.source("source", top, kEarth, {120.0}, 0.0, 0.001);
    b.capacitor("capacitor", top, kEarth, 10e-6);
    const Solved s(b.build());
    CHECK(2652.58 * s.amps("capacitor") / s.volts("top", "earth") == Approx(10.0).epsilon(1e-5));
}

TEST_CASE("the 40 VA transformer holds the reference furnace's control voltage") {
    // Common practice, no source: 27 V open, 24-25 V at 40 VA, 30-80 mA magnetising, about 1.5 ohm and 18 A.
    const Solved open(transformer_bench(1e9));
    CHECK(open.volts("24", "C") == Approx(27.0).margin(0.5));
    CHECK(open.amps("transformer primary") > 0.030);
    CHECK(open.amps("transformer primary") < 0.080);
    const Solved full(transformer_bench(24.0 * 24.0 / 40.0));
    CHECK(full.volts("24", "C") > 24.0);
    CHECK(full.volts("24", "C") < 25.0);
    const Solved shorted(transformer_bench(0.001));
    CHECK(shorted.amps("load") == Approx(18.0).margin(0.6));
    CHECK(open.volts("24", "C") / shorted.amps("load") == Approx(1.5).margin(0.05));
    const Solved cable(
        transformer_bench(2.0 * 15.0 * 0.02095)); // 18 AWG: 20.95 mohm/m, wire tables, from memory
    CHECK(cable.amps("load") > 12.0);
    CHECK(cable.amps("load") < 13.0);
}

TEST_CASE("a transformer obeys the equivalent circuit of the textbooks") {
    // Primary impedance, magnetising branch, secondary impedance and load referred by the ratio squared.
    const double load = 14.4;
    const Solved s(transformer_bench(load));
    const complex<double> j(0.0, 1.0);
    const double n = 0.229;
    const complex<double> primary = 0.001 + 13.8 + 5.3 * j;
    const complex<double> magnetising = 1.0 / (1.0 / (2400.0 * j) + 1.0 / 5760.0);
    const complex<double> secondary = (0.70 + 0.27 * j + load) / (n * n);
    const complex<double> inner = 1.0 / (1.0 / magnetising + 1.0 / secondary);
    const complex<double> e = 120.0 * inner / (primary + inner);
    const double wanted = std::abs(n * e * load / (0.70 + 0.27 * j + load));
    CHECK(s.volts("24", "C") == Approx(wanted).epsilon(1e-6));
    CHECK(s.amps("transformer primary") == Approx(std::abs(120.0 / (primary + inner))).epsilon(1e-6));
}

TEST_CASE("copper follows its temperature by 0.393 % per kelvin at 20 C") { // IEC 60028
    NetlistBuilder b;
    const int top = b.node("top");
    const int hot = b.thermal_group("hot");
    b.source("source", top, kEarth, {}, 10.0, 1e-6);
    b.resistor("winding", top, kEarth, 10.0, hot);
    Solved s(b.build());
    s.inputs.group_temperature_k[0] = 293.15 + 100.0;
    s.again();
    CHECK(10.0 / s.workspace.element_current(DcSolution{}, s.dc, 1) == Approx(13.93).epsilon(1e-6));
}

TEST_CASE("a bad terminal, a bridge and a jumper act where they are") {
    NetlistBuilder b;
    const int top = b.node("top");
    const int middle = b.node("middle");
    b.source("source", top, kEarth, {27.0}, 0.0, 0.001);
    b.resistor("joint", top, middle, 0.002);
    b.resistor("load", middle, kEarth, 20.0);
    Solved s(b.build());
    CHECK(s.volts("middle", "earth") == Approx(27.0).epsilon(2e-4));
    s.condition.series_ohm[1] = 20.0F; // burnt: collapses under load
    s.again();
    CHECK(s.volts("middle", "earth") == Approx(13.5).epsilon(2e-4));
    s.inputs.attachments[0] = {top, middle, 0.05, 0.0, 0.0}; // jumper heals it
    s.again();
    CHECK(s.volts("middle", "earth") == Approx(27.0 * 20.0 / 20.05).epsilon(2e-4));
    const double both = 1.0 / (1.0 / 0.05 + 1.0 / 20.002); // a little still goes through the burnt joint
    CHECK(abs(s.workspace.ac_attachment_a(s.ac_solution, 0)) ==
          Approx(27.0 / (20.001 + both) * both / 0.05).epsilon(1e-5));
    s.condition.bridges[0] = {static_cast<std::int16_t>(middle), 0, 20.0F};
    s.again();
    CHECK(s.volts("middle", "earth") == Approx(27.0 * 10.0 / 10.05).epsilon(2e-4));
}

TEST_CASE("an ohmmeter reads a coil's resistance and not its impedance") {
    NetlistBuilder b;
    const int p = b.node("p");
    const int q = b.node("q");
    b.coil("coil", p, q, 40.0, 0.12);
    b.resistor("bond", q, kEarth, 0.01);
    Solved s(b.build());
    s.inputs.attachments[0] = {p, q, 1000.0, 0.0, 1.0}; // 1 V behind 1 kohm
    s.again();
    const DcSolution d = s.workspace.solve_dc({});
    const double v = s.workspace.dc_attachment_v(d, 0);
    const double i = -s.workspace.dc_attachment_a(d, 0);
    CHECK(v / i == Approx(40.0).epsilon(1e-6));
}

TEST_CASE("ghost volts: a floating conductor beside a live one") {
    // Common practice, no source: 5-60 V on 10 Mohm beside 120 V, 3-15 V beside 24 V, under 1 V on 3 kohm.
    // 15 m of cable, 60 pF/m between neighbouring conductors of either kind (teaching value).
    struct Cable {
        double volts, farad_per_m, to_ground_farad_per_m, low, high;
    };
    for (const Cable c : {Cable{120.0, 60e-12, 60e-12, 5.0, 60.0}, Cable{27.0, 60e-12, 60e-12, 3.0, 15.0}}) {
        NetlistBuilder b;
        const int live = b.node("live");
        const int dead = b.node("dead");
        b.source("source", live, kEarth, {c.volts}, 0.0, 0.1);
        b.capacitor("pair", live, dead, 15.0 * c.farad_per_m);
        b.capacitor("ground", dead, kEarth, 15.0 * c.to_ground_farad_per_m);
        Solved s(b.build());
        s.inputs.attachments[0] = {dead, kEarth, 10e6, 0.0, 0.0};
        s.again();
        CHECK(s.volts("dead", "earth") > c.low);
        CHECK(s.volts("dead", "earth") < c.high);
        s.inputs.attachments[0] = {dead, kEarth, 3e3, 0.0, 0.0};
        s.again();
        CHECK(s.volts("dead", "earth") < 1.0);
    }
}

TEST_CASE("an open neutral is no ghost: its broken side stays at line voltage through the loads") {
    // Common practice, no source: trade rule "50 V or more on low impedance".
    NetlistBuilder b;
    const int l = b.node("L");
    const int n = b.node("board N");
    b.source("mains", l, kEarth, {120.0}, 0.0, 0.1);
    const int open = b.resistor("neutral", n, kEarth, 0.05);
    b.resistor("loads", l, n, 800.0);
    Solved s(b.build());
    s.condition.series_ohm[static_cast<std::size_t>(open)] = kOpenOhm;
    s.inputs.attachments[0] = {n, kEarth, 10e6, 0.0, 0.0};
    s.again();
    CHECK(s.volts("board N", "earth") > 115.0);
    CHECK(s.volts("L", "board N") < 1.0);
    s.inputs.attachments[0].ohm = 3e3;
    s.again();
    CHECK(s.volts("board N", "earth") > 50.0);
}
