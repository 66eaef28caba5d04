// SPDX-License-Identifier: MIT
#pragma once
#include "against_ngspice.hpp"
#include "electrical/netlist_builder.hpp"
#include "units/pinned_math.hpp"
#include <random>
#include <string>
#include <vector>

namespace lightoff::test {

/// Wiring without meaning but with everything in it: mains, transformers, motors, an igniter, a
/// flame, contacts, islands held by strays only, attachments, bridges, cut and burnt elements.
class RandomNetwork {
public:
    explicit RandomNetwork(unsigned seed) : random_(seed) {}

    Case make() {
        const int nodes = whole(12, 70);
        for (int i = 1; i <= nodes; ++i)
            nodes_.push_back(b_.node("node " + std::to_string(i)));
        b_.resistor(name(), nodes_[0], el::kEarth, decade(0.01, 1.0));
        const double quadrature =
            uniform(-20.0, 20.0); // drawn one by one: compilers order arguments differently
        const double dc = uniform(-2.0, 2.0);
        const double ohm = decade(0.02, 0.5);
        const double reactance = decade(0.01, 0.2);
        b_.source(name(), nodes_[1], nodes_[0], {120.0, quadrature}, dc, ohm, reactance);
        for (int i = 0; i < 6; ++i)
            switches_.push_back(b_.switch_bit("switch " + std::to_string(i)));
        const int hot = b_.thermal_group("hot");
        for (int i = 2; i < nodes; ++i) // one in eight stays an island
            if (whole(0, 7) != 0)
                two_ended(nodes_[static_cast<std::size_t>(i)],
                          nodes_[static_cast<std::size_t>(whole(0, i - 1))]);
        for (int i = 0; i < nodes / 2; ++i) {
            const auto [p, q] = two_nodes();
            two_ended(p, q);
        }
        for (int t = whole(0, 2); t > 0; --t)
            transformer(hot);
        for (int m = whole(0, 2); m > 0; --m)
            motor(hot);
        const auto [ip, iq] = two_nodes();
        b_.igniter(name(), ip, iq);
        const auto [fp, fq] = two_nodes();
        b_.flame(name(), fp, fq);

        Case c{b_.build(), {}, {}, {}};
        c.inputs.switches = static_cast<std::uint64_t>(whole(0, 63));
        c.inputs.group_temperature_k[0] = uniform(270.0, 420.0);
        c.inputs.source_factor[0] = uniform(0.8, 1.1);
        for (std::size_t i = 0; i < 4; ++i) {
            const auto [p, q] = two_nodes();
            c.condition.bridges[i] = {static_cast<std::int16_t>(p), static_cast<std::int16_t>(q),
                                      static_cast<float>(decade(0.05, 1e7))};
            const auto [r, s] = two_nodes();
            c.inputs.attachments[i] = {r, s, decade(0.01, 1e7), i == 1 ? 1.0 : 0.0, i == 2 ? 1.5 : 0.0};
        }
        for (int i = 0; i < c.netlist.element_count(); ++i) {
            const auto at = static_cast<std::size_t>(i);
            if (whole(0, 9) == 0)
                c.condition.series_ohm[at] = static_cast<float>(decade(0.1, 1e4));
            if (whole(0, 14) == 0)
                c.condition.series_ohm[at] = el::kOpenOhm;
            if (whole(0, 9) == 0)
                c.condition.factor[at] = static_cast<float>(uniform(0.3, 3.0));
        }
        for (std::size_t i = 0; i < c.netlist.motors.size(); ++i)
            c.ports.rotor_rad_s[i] = c.netlist.motors[i].synchronous_rad_s * uniform(-0.2, 1.1);
        c.ports.igniter_ohm.fill(decade(20.0, 100.0));
        c.ports.flame_forward_siemens.fill(decade(1e-8, 1e-6));
        c.ports.flame_reverse_siemens.fill(decade(1e-10, 1e-9));
        return c;
    }

private:
    int whole(int low, int high) {
        return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
    }
    double uniform(double low, double high) {
        return low + (high - low) * static_cast<double>(random_()) / 4294967295.0;
    }
    double decade(double low, double high) {
        return low * units::exp(uniform(0.0, 1.0) * units::log(high / low));
    }
    std::string name() { return "element " + std::to_string(++named_); }
    std::pair<int, int> two_nodes() {
        const int p = whole(0, static_cast<int>(nodes_.size()) - 1);
        int q = whole(0, static_cast<int>(nodes_.size()) - 1);
        if (q == p)
            q = (p + 1) % static_cast<int>(nodes_.size());
        return {nodes_[static_cast<std::size_t>(p)], nodes_[static_cast<std::size_t>(q)]};
    }
    void two_ended(int a, int b) {
        switch (whole(0, 6)) {
        case 0:
        case 1:
            b_.resistor(name(), a, b, decade(0.005, 0.1));
            break;
        case 2:
            b_.resistor(name(), a, b, decade(1.0, 1e6));
            break;
        case 3: {
            const double ohm = decade(5.0, 500.0);
            const double henry = decade(0.01, 3.0);
            b_.coil(name(), a, b, ohm, henry);
            break;
        }
        case 4:
            b_.capacitor(name(), a, b, decade(20e-12, 20e-6));
            break;
        case 5: {
            const int bit = switches_[static_cast<std::size_t>(whole(0, 5))];
            const el::Rest rest = whole(0, 1) == 0 ? el::Rest::open : el::Rest::closed;
            b_.contact(name(), a, b, bit, rest);
            break;
        }
        default:
            b_.fuse(name(), a, b, decade(0.01, 0.1));
            break;
        }
    }
    void transformer(int hot) {
        const int core = b_.transformer_core(name(), 3000.0, 6000.0);
        const auto [p, q] = two_nodes();
        const auto [r, s] = two_nodes();
        b_.winding(name(), p, q, core, el::Axis::main, 1.0, 11.0, 6.0, hot);
        b_.winding(name(), r, s, core, el::Axis::main, 0.23, 0.6, 0.3, hot);
    }
    void motor(int hot) {
        const int core =
            b_.motor_core(name(), {decade(20.0, 80.0), decade(3.0, 15.0), decade(2.0, 8.0), 900.0, 125.66});
        const auto [p, q] = two_nodes();
        const auto [r, s] = two_nodes();
        const auto [t, u] = two_nodes();
        b_.winding(name(), p, q, core, el::Axis::main, 1.0, 2.5, 3.0, hot);
        b_.winding(name(), q == r ? p : q, r, core, el::Axis::main, 0.3, 1.0, 0.8, hot);
        b_.winding(name(), t, u, core, el::Axis::start, 1.4, 12.0, 6.0, hot);
        b_.capacitor(name(), u, s == u ? t : s, 10e-6);
    }

    std::mt19937 random_;
    el::NetlistBuilder b_;
    std::vector<int> nodes_;
    std::vector<int> switches_;
    int named_ = 0;
};

} // namespace lightoff::test
