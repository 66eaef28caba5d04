// SPDX-License-Identifier: MIT
//
// Each wire of the reference furnace deleted from its file in turn. Where that leaves a place that nothing
// but strays ties to anything, loading must say so; else every node must stand where ngspice says that it
// stands in the deck of the whole furnace with that conductor taken out. Tolerance 0.1 % or 1 mV.
#include "moments.hpp"
#include "support/deck_solver.hpp"
#include "support/ngspice_circuit.hpp"

#include "files/error.hpp"
#include "files/json_text.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <numeric>
#include <set>

using namespace lightoff;
using namespace lightoff::test;

namespace {

using files::Json;

void erase_if(Json& list, const std::function<bool(const Json&)>& goes) {
    for (std::size_t i = list.size(); i-- > 0;)
        if (goes(list[i]))
            list.erase(i);
}

/// The reference furnace's file without a wire and without what else names it.
Json without_wire(Json all, const std::string& wire) {
    Json& wiring = all["wiring"];
    erase_if(wiring["wires"], [&](const Json& w) { return w.at("name") == wire; });
    for (Json& cable : wiring["cables"])
        erase_if(cable["wires"], [&](const Json& w) { return w == wire; });
    erase_if(wiring["cables"], [](const Json& cable) { return cable.at("wires").size() < 2; });
    erase_if(all["readings"], [&](const Json& r) { return r.value("through", "") == wire; });
    if (wiring.value("call_wire", "") == wire)
        wiring.erase("call_wire");
    return all;
}

/// Elements of the whole furnace that go with a wire: itself and its capacitances to its neighbours.
std::vector<std::size_t> elements_of(const el::Netlist& net, const std::string& wire) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < net.element_names.size(); ++i) {
        const std::string& name = net.element_names[i];
        const bool couples =
            name.find('~') != std::string::npos && (name.find("." + wire + "~") != std::string::npos ||
                                                    name.find("~" + wire + ".") != std::string::npos);
        if (name == wire || couples)
            found.push_back(i);
    }
    return found;
}

/// Whether every touchable node hangs together with earth when some elements are left out.
bool holds_together(const el::Netlist& net, const std::vector<std::size_t>& left_out) {
    std::vector<std::size_t> group(net.node_names.size());
    std::iota(group.begin(), group.end(), std::size_t{0});
    const auto root = [&](std::size_t i) {
        while (group[i] != i)
            i = group[i];
        return i;
    };
    for (std::size_t i = 0; i < net.elements.size(); ++i)
        if (std::find(left_out.begin(), left_out.end(), i) == left_out.end())
            group[root(static_cast<std::size_t>(net.elements[i].a))] =
                root(static_cast<std::size_t>(net.elements[i].b));
    for (std::size_t i = 0; i < group.size(); ++i)
        if (net.is_field[i] == 0 && root(i) != root(el::kEarth))
            return false;
    return true;
}

std::string deck_without(const std::string& deck, const std::vector<std::size_t>& elements) {
    std::set<std::string> names;
    for (const std::size_t i : elements)
        for (const std::string what : {"R", "C"})
            for (const std::string tail : {"", "leak"})
                names.insert(what + "e" + std::to_string(i) + tail);
    std::istringstream text(deck);
    std::string kept;
    for (std::string line; std::getline(text, line);)
        if (names.count(line.substr(0, line.find(' '))) == 0)
            kept += line + "\n";
    return kept;
}

} // namespace

TEST_CASE("deleting a wire from the file is a load error or changes what ngspice says it must") {
    const Json whole = files::read_document(kReferenceEquipment).value();
    const el::Netlist& net = reference_model().wiring.netlist;
    const std::vector<Moment> moments = moments_of_a_call();
    NgspiceCircuit spice;
    int errors = 0;
    int compared = 0;
    for (const Json& wire : whole.at("wiring").at("wires")) {
        const auto name = wire.at("name").get<std::string>();
        INFO(name);
        const std::vector<std::size_t> gone = elements_of(net, name);
        const files::Document document(without_wire(whole, name), "changed.json");
        if (!holds_together(net, gone)) {
            ++errors;
            CHECK_THROWS_WITH(files::read_equipment(document),
                              Catch::Contains("is tied to nothing but strays"));
            continue;
        }
        const furnace::Model model = files::read_equipment(document);
        const el::Netlist& fewer = model.wiring.netlist;
        REQUIRE(fewer.node_names == net.node_names);
        REQUIRE(fewer.switch_names == net.switch_names);
        el::Workspace workspace(fewer);
        double most_moved_v = 0.0;
        for (const Moment& moment : moments) {
            const Solved ours = solve(fewer, workspace, {}, moment.inputs, moment.ports);
            const el::Condition as_drawn;
            const el::OperatingPoint point{as_drawn, moment.inputs, moment.ports, ours.flame_siemens,
                                           ours.flame_dc_a};
            const std::string deck = deck_without(el::spice_deck(net, point, el::Analysis::ac), gone);
            spice.load(deck);
            WorstNode worst = worst_node(ours, spice.ac(net.node_count()), true);
            if (worst.units > 1.0) { // a piece on picofarads: see wiring_ngspice.tests.cpp
                const DeckSolver solver(deck, true);
                std::vector<std::complex<double>> wide(1);
                for (int i = 1; i < net.node_count(); ++i)
                    wide.push_back(solver.volts("n" + std::to_string(i)));
                worst = worst_node(ours, wide, true);
            }
            INFO(moment.name << ": " << net.node_names[static_cast<std::size_t>(worst.node)] << " ours "
                             << worst.ours << " expected " << worst.ngspice);
            CHECK(worst.units <= 1.0);
            ++compared;

            el::Workspace as_built(net);
            const Solved before = solve(net, as_built, {}, moment.inputs, moment.ports);
            for (std::size_t i = 1; i < net.node_names.size(); ++i)
                most_moved_v = std::max(most_moved_v, abs(ours.ac_v[i] - before.ac_v[i]));
        }
        CHECK(most_moved_v > 1e-6); // no wire is idle decoration
    }
    WARN(errors << " wires are missed on loading, " << compared << " circuits compared");
    CHECK(errors > 0);
    CHECK(compared > 100);
}
