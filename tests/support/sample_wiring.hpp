// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/netlist_builder.hpp"
#include "units/convert.hpp"
#include <string>
#include <vector>

namespace lightoff::test {

namespace el = lightoff::electrical;

/// Values of the reference parts (teaching values chosen to meet the settled targets in the tests).
inline el::MotorCore blower_core() {
    return {42.0, 3.7, 2.9, 260.0, units::rpm_to_rad_s(1200.0)};
}
inline el::MotorCore inducer_core() {
    return {190.0, 58.0, 22.0, 2200.0, units::rpm_to_rad_s(3600.0)};
}

struct BlowerTaps {
    int common, high, medium_high, medium_low, low, start; ///< nodes
};

/// Four-speed motor: main winding in four segments on one axis, start winding behind the run
/// capacitor from the high tap.
inline void add_blower(el::NetlistBuilder& b, const BlowerTaps& t, int group = -1) {
    const int core = b.motor_core("blower", blower_core());
    const auto segment = [&](const std::string& name, int p, int q, double turns) {
        b.winding("blower " + name, p, q, core, el::Axis::main, turns, 1.75 * turns,
                  turns == 1.0 ? 2.0 : turns, group);
    };
    segment("main", t.high, t.common, 1.0);
    segment("medium high", t.medium_high, t.high, 0.09);
    segment("medium low", t.medium_low, t.medium_high, 0.09);
    segment("low", t.low, t.medium_low, 0.20);
    b.winding("blower start", t.start, t.common, core, el::Axis::start, 1.6, 16.0, 8.0, group);
    b.capacitor("blower capacitor", t.high, t.start, 10e-6);
}

inline void add_inducer(el::NetlistBuilder& b, int hot, int neutral, int start, int group = -1) {
    const int core = b.motor_core("inducer", inducer_core());
    b.winding("inducer main", hot, neutral, core, el::Axis::main, 1.0, 22.0, 20.0, group);
    b.winding("inducer start", start, neutral, core, el::Axis::start, 1.45, 70.0, 40.0, group);
    b.capacitor("inducer capacitor", hot, start, 3e-6);
}

/// 40 VA, 120 to 24 V.
inline void add_transformer(el::NetlistBuilder& b, int p, int q, int s, int t, int group = -1) {
    const int core = b.transformer_core("transformer", 2400.0, 5760.0);
    b.winding("transformer primary", p, q, core, el::Axis::main, 1.0, 13.8, 5.3, group);
    b.winding("transformer secondary", s, t, core, el::Axis::main, 0.229, 0.70, 0.27, group);
}

/// A made-up furnace-like wiring of about 110 nodes: mains, 24 V loop with taps, board relays, two
/// motors, igniter, flame, cables with capacitance. Every wire is pin, lug, conductor, lug, pin.
class SampleWiring {
public:
    el::Netlist build() {
        const int ground = b.node("cabinet");
        b.resistor("cabinet ground wire", ground, el::kEarth, 0.05);
        b.resistor("gas pipe bond", ground, el::kEarth, 2.0);
        const int panel_n = b.node("panel N");
        const int panel_l = b.node("panel L");
        b.resistor("panel bond", panel_n, el::kEarth, 0.01);
        b.source("mains", panel_l, panel_n, {120.0}, 0.0, 0.08, 0.05);
        const int breaker = b.node("breaker out");
        b.contact("breaker", panel_l, breaker, b.switch_bit("breaker"), el::Rest::closed);
        const int box_l = wire("line L", breaker, 0.06);
        const int box_n = wire("line N", panel_n, 0.06);
        b.capacitor("line cable", box_l, box_n, 1.2e-9);
        b.capacitor("line cable L-G", box_l, ground, 1.2e-9);
        const int door = b.node("door switch out");
        b.contact("door switch", box_l, door, b.switch_bit("door"), el::Rest::closed, 0.01);
        const int l = wire("board L", door, 0.01);
        const int n = wire("board N", box_n, 0.01);

        const int tp = wire("transformer L", l, 0.02);
        const int tn = wire("transformer N", n, 0.02);
        const int ts = b.node("transformer 24");
        const int tc = b.node("transformer C");
        add_transformer(b, tp, tn, ts, tc);
        const int c = wire("board C", tc, 0.02);
        b.resistor("C to cabinet", c, ground, 0.02);
        const int fuse_in = wire("board 24", ts, 0.02);
        const int r = b.node("R");
        b.fuse("control fuse", fuse_in, r, 0.04);
        b.resistor("board supply", r, c, 400.0);

        const int stat_r = wire("thermostat R", r, 0.32);
        const int stat_c = wire("thermostat C", c, 0.32);
        const int stat_w = b.node("thermostat W");
        b.contact("thermostat heat", stat_r, stat_w, b.switch_bit("heat call"), el::Rest::open, 0.05);
        const int w = wire("thermostat W wire", stat_w, 0.32);
        const int g = b.node("G");
        const int stat_g = wire("thermostat G wire", g, 0.32);
        b.capacitor("cable R-W", stat_r, stat_w, 0.9e-9);
        b.capacitor("cable W-G", stat_w, stat_g, 0.9e-9);
        b.capacitor("cable G-C", stat_g, stat_c, 0.9e-9);
        b.resistor("W input", w, c, 2200.0);
        b.resistor("G input", g, c, 10000.0);

        int chain = r;
        for (const std::string name : {"rollout", "limit", "pressure switch"}) {
            const int in = wire(name + " feed", chain, 0.02);
            const int out = b.node(name + " out");
            b.contact(name, in, out, b.switch_bit(name),
                      name == "pressure switch" ? el::Rest::open : el::Rest::closed, 0.02);
            chain = wire(name + " return", out, 0.02);
            b.resistor(name + " tap", chain, c, 10000.0);
            b.sense_voltage(name + " tap", chain, c);
        }
        const int valve_out = b.node("valve relay out");
        b.contact("valve relay", chain, valve_out, b.switch_bit("valve relay"), el::Rest::open, 0.02);
        const int valve = wire("valve hot", valve_out, 0.02);
        const int valve_c = wire("valve common", c, 0.02);
        b.coil("gas valve", valve, valve_c, 40.0, 0.12);
        b.sense_voltage("gas valve", valve, valve_c);
        b.sense_voltage("R", r, c);
        b.sense_voltage("W", w, c);
        b.sense_voltage("G", g, c);
        b.sense_current("fuse current", b_element("control fuse"));

        for (const std::string name : {"inducer relay", "igniter relay", "blower relay"}) {
            const int coil = b.node(name + " coil");
            b.contact(name + " driver", r, coil, b.switch_bit(name + " driver"), el::Rest::open, 0.5);
            b.coil(name + " coil", coil, c, 300.0, 1.0);
            b.sense_voltage(name + " coil", coil, c);
        }
        const int blower_group = b.thermal_group("blower");
        const int ind = relay_out("inducer relay", l);
        const int ind_hot = wire("inducer hot", ind, 0.02);
        const int ind_n = wire("inducer neutral", n, 0.02);
        add_inducer(b, ind_hot, ind_n, b.node("inducer start node"));
        b.sense_current("inducer current", b_element("inducer main"));
        const int ign = relay_out("igniter relay", l);
        const int igniter_hot = wire("igniter hot", ign, 0.02);
        const int igniter_neutral = wire("igniter neutral", n, 0.02);
        b.igniter("igniter", igniter_hot, igniter_neutral);
        const int blo = relay_out("blower relay", l);
        BlowerTaps taps{};
        taps.common = wire("blower common", n, 0.02);
        taps.medium_low = wire("blower medium low", blo, 0.02);
        taps.high = b.node("tap high");
        taps.medium_high = b.node("tap medium high");
        taps.low = b.node("tap low");
        taps.start = b.node("blower start node");
        add_blower(b, taps, blower_group);
        b.sense_current("blower start current", b_element("blower start"));
        b.sense_current("blower current", b_element("blower medium low conductor"));

        const int sense = b.node("flame sense");
        b.resistor("flame sense resistance", l, sense, 3.3e6);
        const int lead = wire("flame lead", sense, 0.02);
        const int tip = b.node("rod tip");
        const int burner = b.node("burner");
        b.resistor("rod", lead, tip, 10.0);
        b.resistor("burner to cabinet", burner, ground, 0.1);
        b.flame("flame", tip, burner);
        b.sense_current("flame current", b_element("flame sense resistance"));
        return b.build();
    }

private:
    int b_element(const std::string& name) const { return b.find_element(name); }
    int relay_out(const std::string& name, int from) {
        const int out = b.node(name + " out");
        b.contact(name, from, out, b.switch_bit(name), el::Rest::open, 0.01);
        return out;
    }
    /// From a terminal to the node at the far end.
    int wire(const std::string& name, int from, double ohm) {
        const int lug = b.node(name + " lug");
        const int far = b.node(name + " far lug");
        const int pin = b.node(name + " far pin");
        b.resistor(name + " joint", from, lug, 0.002);
        b.resistor(name + " conductor", lug, far, ohm);
        b.resistor(name + " far joint", far, pin, 0.002);
        return pin;
    }

    el::NetlistBuilder b;
};

} // namespace lightoff::test
