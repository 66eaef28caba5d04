// SPDX-License-Identifier: MIT
#include "cli/circuit.hpp"

#include "cli/exit_codes.hpp"
#include "cli/json_output.hpp"
#include "cli/playthrough.hpp"
#include "cli/text_layout.hpp"
#include "cli/usage_error.hpp"
#include "electrical/spice_deck.hpp"
#include "files/disk.hpp"

#include <vector>

namespace lightoff::cli {
namespace {

using electrical::ElementKind;
using electrical::Netlist;
using units::Complex;

/// The network at one moment; at DC the imaginary parts are 0.
struct Solved {
    std::vector<Complex> volts; ///< by node
    std::vector<Complex> amps;  ///< by element
    electrical::AcSolution ac;
    electrical::DcSolution dc;
};

std::string_view word(ElementKind kind) {
    switch (kind) {
    case ElementKind::resistor:
        return "resistor";
    case ElementKind::fuse:
        return "fuse";
    case ElementKind::coil:
        return "coil";
    case ElementKind::capacitor:
        return "capacitor";
    case ElementKind::contact:
        return "contact";
    case ElementKind::source:
        return "source";
    case ElementKind::winding:
        return "winding";
    case ElementKind::igniter:
        return "igniter";
    case ElementKind::flame:
        return "flame";
    }
    return "";
}

template <class Voltages, class Solution>
void read_out(Playthrough& run, const Solution& solution, Solved& solved) {
    const Netlist& netlist = run.model().wiring.netlist;
    Voltages volts{};
    run.workspace().network.node_voltages(solution, volts);
    for (int i = 0; i < netlist.node_count(); ++i)
        solved.volts.emplace_back(volts[static_cast<std::size_t>(i)]);
    for (int e = 0; e < netlist.element_count(); ++e)
        solved.amps.emplace_back(run.workspace().network.element_current(solution, volts, e));
}

Solved solve(Playthrough& run, bool dc) {
    Solved solved;
    const bench::World& world = run.world();
    solved.ac = furnace::solve_ac(run.model(), world.state, world.condition, world.inputs, run.workspace());
    if (dc) {
        solved.dc = run.workspace().network.solve_dc(furnace::port_inputs(run.model(), world.state));
        read_out<electrical::DcVoltages>(run, solved.dc, solved);
    } else {
        read_out<electrical::AcVoltages>(run, solved.ac, solved);
    }
    return solved;
}

std::string deck(Playthrough& run, const Solved& solved, const CircuitOptions& options) {
    const Netlist& netlist = run.model().wiring.netlist;
    const bench::World& world = run.world();
    const electrical::PortInputs ports = furnace::port_inputs(run.model(), world.state);
    electrical::OperatingPoint point{world.condition.wiring, run.workspace().inputs, ports, {}, {}};
    for (std::size_t k = 0; k < netlist.ports.size(); ++k) {
        if (netlist.ports[k].kind != electrical::PortKind::flame)
            continue;
        if (units::abs(solved.ac.port_v[k]) > 0.0)
            point.flame_siemens[k] = units::abs(solved.ac.port_a[k]) / units::abs(solved.ac.port_v[k]);
        point.flame_dc_a[k] = solved.dc.port_a[k];
    }
    std::string text = "* " + run.model().name + " at " + fixed(seconds_of(world.tick), 2) + " s\n";
    for (int i = 1; i < netlist.node_count(); ++i)
        text += "* n" + std::to_string(i) + " is " + netlist.node_names[static_cast<std::size_t>(i)] + "\n";
    return text + electrical::spice_deck(netlist, point,
                                         options.dc ? electrical::Analysis::dc : electrical::Analysis::ac);
}

bool is_place(const Netlist& netlist, std::size_t node) {
    return netlist.is_field[node] == 0;
}

double angle_deg(Complex phasor) {
    return phasor == Complex{} ? 0.0 : units::atan2(phasor.im, phasor.re) * 180.0 / units::pi;
}

OrderedJson to_json(Playthrough& run, const files::LoadedBundle& bundle, const Solved& solved, bool dc) {
    const Netlist& netlist = run.model().wiring.netlist;
    OrderedJson json;
    json["scenario"] = bundle.name;
    json["time_s"] = seconds_of(run.world().tick);
    json["solution"] = dc ? "dc" : "60 Hz";
    json["nodes"] = OrderedJson::array();
    for (std::size_t i = 0; i < solved.volts.size(); ++i) {
        if (!is_place(netlist, i))
            continue;
        OrderedJson node{{"node", netlist.node_names[i]}, {"spice", i == 0 ? "0" : "n" + std::to_string(i)}};
        if (dc) {
            node["voltage_V"] = solved.volts[i].re;
        } else {
            node["voltage_V"] = units::abs(solved.volts[i]);
            node["angle_deg"] = angle_deg(solved.volts[i]);
        }
        json["nodes"].push_back(std::move(node));
    }
    json["elements"] = OrderedJson::array();
    for (std::size_t e = 0; e < solved.amps.size(); ++e) {
        const electrical::Element& element = netlist.elements[e];
        json["elements"].push_back({{"element", netlist.element_names[e]},
                                    {"kind", word(element.kind)},
                                    {"from", netlist.node_names[static_cast<std::size_t>(element.a)]},
                                    {"to", netlist.node_names[static_cast<std::size_t>(element.b)]},
                                    {"current_A", dc ? solved.amps[e].re : units::abs(solved.amps[e])}});
    }
    return json;
}

void write_tables(Output& out, Playthrough& run, const files::LoadedBundle& bundle, const Solved& solved,
                  bool dc) {
    const Netlist& netlist = run.model().wiring.netlist;
    out.line(out.heading(bundle.scenario.title) + ", " + fixed(seconds_of(run.world().tick), 2) + " s, " +
             (dc ? "DC" : "60 Hz r.m.s."));
    out.line();
    out.line(out.heading("Nodes") + " against earth");
    Table nodes({{"node", false}, {"volts", true}, {dc ? "" : "angle °", true}});
    for (std::size_t i = 0; i < solved.volts.size(); ++i)
        if (is_place(netlist, i))
            nodes.row({netlist.node_names[i], fixed(dc ? solved.volts[i].re : units::abs(solved.volts[i]), 3),
                       dc ? "" : fixed(angle_deg(solved.volts[i]), 1)});
    nodes.write(out);
    out.line();
    out.line(out.heading("Elements"));
    Table elements({{"element", false}, {"kind", false}, {"amps", true}});
    for (std::size_t e = 0; e < solved.amps.size(); ++e)
        elements.row({netlist.element_names[e], std::string(word(netlist.elements[e].kind)),
                      fixed(dc ? solved.amps[e].re : units::abs(solved.amps[e]), 6)});
    elements.write(out);
}

} // namespace

int circuit(Output& out, const CircuitOptions& options) {
    const std::uint64_t seed = whole_number_in("--seed", options.seed);
    const std::uint64_t tick = ticks_in("--at", options.at_s);
    const files::LoadedBundle bundle = files::load_bundle(options.scenario);
    Playthrough run(bundle, seed);
    run.run_to(tick);
    const Solved solved = solve(run, options.dc);
    if (!options.spice.empty())
        files::replace_file(options.spice, deck(run, solved, options));
    if (options.json)
        out.line(json_text(to_json(run, bundle, solved, options.dc)));
    else
        write_tables(out, run, bundle, solved, options.dc);
    return kDone;
}

} // namespace lightoff::cli
