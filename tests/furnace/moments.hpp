// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/flame_rectifier.hpp"
#include "electrical/network.hpp"
#include "electrical/spice_deck.hpp"
#include "support/rig.hpp"

#include <complex>
#include <string>
#include <vector>

/// The wiring of the reference furnace as it stands at a moment of a call, solved by the project's own solver
/// and written out for ngspice.
namespace lightoff::test {

namespace el = lightoff::electrical;

struct Moment {
    std::string name;
    el::Condition condition;
    el::NetworkInputs inputs;
    el::PortInputs ports;
};

inline Moment moment_of(const std::string& name, Rig& rig) {
    furnace::solve_ac(rig.model, rig.world.state, rig.world.condition, rig.world.inputs, rig.workspace);
    return {name, rig.world.condition.wiring, rig.workspace.inputs,
            furnace::port_inputs(rig.model, rig.world.state)};
}

/// Standby, igniter warm-up, trial for ignition, run with the blower on.
inline std::vector<Moment> moments_of_a_call() {
    Rig rig;
    std::vector<Moment> moments;
    const auto keep = [&](const std::string& name, double at_s) {
        rig.run(at_s - rig.now_s());
        moments.push_back(moment_of(name, rig));
    };
    keep("standby", 3.0);
    keep("warm-up", 40.0);
    keep("trial", *rig.run_until(60.0, [](const Rig& r) { return r.board_state() == "trial_lit"; }) + 0.3);
    keep("run", 240.0);
    return moments;
}

/// Every node of one netlist by the solver.
struct Solved {
    el::AcVoltages ac_v{};
    el::DcVoltages dc_v{};
    std::array<double, el::kMaxPorts> flame_siemens{};
    std::array<double, el::kMaxPorts> flame_dc_a{};
};

inline Solved solve(const el::Netlist& netlist, el::Workspace& workspace, const el::Condition& condition,
                    const el::NetworkInputs& inputs, const el::PortInputs& ports) {
    Solved s;
    workspace.set(condition, inputs);
    const el::AcSolution ac = workspace.solve_ac(ports);
    const el::DcSolution dc = workspace.solve_dc(ports);
    workspace.node_voltages(ac, s.ac_v);
    workspace.node_voltages(dc, s.dc_v);
    for (std::size_t k = 0; k < netlist.ports.size(); ++k) {
        if (netlist.ports[k].kind != el::PortKind::flame)
            continue;
        // As a resistor, so that every deck has the same elements; no flame: one that carries nothing.
        const double volts = abs(ac.port_v[k]);
        s.flame_siemens[k] = std::max(1e-18, volts > 0.0 ? abs(ac.port_a[k]) / volts : 0.0);
        s.flame_dc_a[k] = dc.port_a[k];
    }
    return s;
}

/// The worst node: difference in units of max(0.1 %, 1 mV), so that at most 1 is wanted.
struct WorstNode {
    double units = 0.0;
    int node = 0;
    std::complex<double> ours;
    std::complex<double> ngspice;
    void look_at(int i, std::complex<double> mine, std::complex<double> theirs) {
        const double off = std::abs(mine - theirs) / std::max(1e-3, 1e-3 * std::abs(theirs));
        if (off >= units || std::isnan(off))
            *this = {std::isnan(off) ? 1e9 : off, i, mine, theirs};
    }
};

inline WorstNode worst_node(const Solved& ours, const std::vector<std::complex<double>>& ngspice, bool ac) {
    WorstNode worst;
    for (std::size_t i = 1; i < ngspice.size(); ++i)
        worst.look_at(static_cast<int>(i),
                      ac ? std::complex<double>(ours.ac_v[i].re, ours.ac_v[i].im) : ours.dc_v[i], ngspice[i]);
    return worst;
}

} // namespace lightoff::test
