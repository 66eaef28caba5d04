// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/flame_rectifier.hpp"
#include "electrical/network.hpp"
#include "electrical/spice_deck.hpp"
#include "ngspice.hpp"
#include <algorithm>
#include <complex>

namespace lightoff::test {

namespace el = lightoff::electrical;

/// The worst node: difference in units of max(0.1 %, 1 mV), so that at most 1 is wanted.
struct Worst {
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

struct Case {
    el::Netlist netlist;
    el::Condition condition{};
    el::NetworkInputs inputs{};
    el::PortInputs ports{};
};

/// Solves by both, AC and DC, and compares every node.
inline std::pair<Worst, Worst> compare_with_ngspice(const Case& c) {
    el::Workspace workspace(c.netlist);
    workspace.set(c.condition, c.inputs);
    const el::AcSolution ac = workspace.solve_ac(c.ports);
    const el::DcSolution dc = workspace.solve_dc(c.ports);
    el::AcVoltages ac_v;
    el::DcVoltages dc_v;
    workspace.node_voltages(ac, ac_v);
    workspace.node_voltages(dc, dc_v);

    el::OperatingPoint point{c.condition, c.inputs, c.ports, {}, {}};
    for (std::size_t k = 0; k < c.netlist.ports.size(); ++k) {
        if (c.netlist.ports[k].kind != el::PortKind::flame)
            continue;
        if (abs(ac.port_v[k]) > 0.0)
            point.flame_siemens[k] = abs(ac.port_a[k]) / abs(ac.port_v[k]);
        point.flame_dc_a[k] = dc.port_a[k];
    }
    const int n = c.netlist.node_count();
    std::pair<Worst, Worst> worst;
    const auto ac_spice = node_voltages_by_ngspice(spice_deck(c.netlist, point, el::Analysis::ac), n);
    const auto dc_spice = node_voltages_by_ngspice(spice_deck(c.netlist, point, el::Analysis::dc), n);
    for (int i = 1; i < n; ++i) {
        const auto at = static_cast<std::size_t>(i);
        worst.first.look_at(i, {ac_v[at].re, ac_v[at].im}, ac_spice[at]);
        worst.second.look_at(i, {dc_v[at], 0.0}, dc_spice[at]);
    }
    return worst;
}

} // namespace lightoff::test
