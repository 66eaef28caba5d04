// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/graph.hpp"

#include "bench/wires_by_hand.hpp"
#include "gui/diagram/names.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

using electrical::Element;
using electrical::ElementKind;
using furnace::Driver;

constexpr double kSensing_ohm = 500.0; ///< a resistor on a board from this on reads; under it, it carries

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

bool contains(const std::vector<int>& list, int value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

const Element& element_of(const furnace::Model& model, const Link& link) {
    return model.wiring.netlist.elements[index(link.element)];
}

/// Makes the vertices first, then the links between them.
class GraphReader {
public:
    explicit GraphReader(const furnace::Model& model) : model_(model), net_(model.wiring.netlist) {}

    Graph read() {
        for (int node = 0; node < net_.node_count(); ++node)
            out_.vertices.push_back({node, -1, false, std::string(owner_of(name_of(node)))});
        for (std::size_t i = 0; i < model_.wiring.terminals.size(); ++i)
            add_terminal(static_cast<int>(i));
        const std::vector<int> capacitors = bench::run_capacitors(model_);
        for (int e = 0; e < net_.element_count(); ++e)
            // Other capacitors lie between the wires of a cable.
            if (net_.elements[index(e)].kind != ElementKind::capacitor || contains(capacitors, e))
                add_element(e);
        list_links();
        return std::move(out_);
    }

private:
    /// The terminal's node is its pin's vertex if it has the pin's name; else the pin hangs on it by a track.
    void add_terminal(int number) {
        const furnace::Terminal& t = model_.wiring.terminals[index(number)];
        const std::string owner(owner_of(t.name));
        const bool own_pin = name_of(t.pin) == t.name + ".pin";
        const int pin = own_pin ? t.pin : static_cast<int>(out_.vertices.size());
        if (!own_pin)
            out_.vertices.push_back({});
        out_.vertices[index(pin)] = {t.pin, number, false, owner};
        out_.vertices[index(t.lug)] = {t.lug, number, true, owner};
        pin_vertex_.push_back(pin);
        if (!own_pin)
            out_.links.push_back({LinkKind::track, -1, pin, t.pin, owner});
    }

    void add_element(int e) {
        const Element& element = net_.elements[index(e)];
        if (element.a == electrical::kEarth || element.b == electrical::kEarth) {
            out_.earthed.push_back(element.a == electrical::kEarth ? element.b : element.a);
            return;
        }
        Link link{LinkKind::part, e, element.a, element.b,
                  std::string(owner_of(net_.element_names[index(e)]))};
        if (contains(model_.wiring.wires, e)) {
            link.kind = LinkKind::wire;
        } else if (const int terminal = terminal_of_joint(e); terminal >= 0) {
            link.kind = LinkKind::joint;
            link.a = model_.wiring.terminals[index(terminal)].lug;
            link.b = pin_vertex_[index(terminal)];
        }
        out_.links.push_back(std::move(link));
    }

    [[nodiscard]] int terminal_of_joint(int element) const {
        const auto& terminals = model_.wiring.terminals;
        for (std::size_t i = 0; i < terminals.size(); ++i)
            if (terminals[i].joint == element)
                return static_cast<int>(i);
        return -1;
    }

    void list_links() {
        out_.links_at.resize(out_.vertices.size());
        for (std::size_t i = 0; i < out_.links.size(); ++i)
            for (const int v : {out_.links[i].a, out_.links[i].b})
                out_.links_at[index(v)].push_back(static_cast<int>(i));
    }

    [[nodiscard]] const std::string& name_of(int node) const { return net_.node_names[index(node)]; }

    const furnace::Model& model_;
    const electrical::Netlist& net_;
    Graph out_;
    std::vector<int> pin_vertex_; ///< by terminal; its lug's vertex is the lug's node
};

} // namespace

Graph read_graph(const furnace::Model& model) {
    return GraphReader(model).read();
}

bool is_part(const furnace::Model& model, const Link& link, ElementKind kind) {
    return link.kind == LinkKind::part && element_of(model, link).kind == kind;
}

bool is_sensing(const furnace::Model& model, const Link& link) {
    if (!is_part(model, link, ElementKind::resistor))
        return false;
    const Element& element = element_of(model, link);
    const int common = model.wiring.common;
    return element.ohm >= kSensing_ohm && (element.a == common || element.b == common) &&
           link.owner == owner_of(model.wiring.netlist.node_names[index(common)]);
}

bool is_transformer_winding(const furnace::Model& model, const Link& link) {
    if (!is_part(model, link, ElementKind::winding))
        return false;
    const auto& cores = model.wiring.netlist.cores;
    const auto core = std::find_if(cores.begin(), cores.end(), [&](const electrical::Core& c) {
        return c.field_m == element_of(model, link).field;
    });
    return core != cores.end() && core->motor < 0;
}

bool is_start_winding(const furnace::Model& model, const Link& link) {
    const auto& cores = model.wiring.netlist.cores;
    return is_part(model, link, ElementKind::winding) &&
           std::any_of(cores.begin(), cores.end(), [&](const electrical::Core& core) {
               return core.motor >= 0 && core.field_a == element_of(model, link).field;
           });
}

bool passes_supply(const furnace::Model& model, const Link& link) {
    if (link.kind != LinkKind::part || is_part(model, link, ElementKind::fuse))
        return true;
    if (!is_part(model, link, ElementKind::contact))
        return false;
    const Driver driver = model.wiring.switches[index(element_of(model, link).switch_bit)].driver;
    return driver != Driver::board && driver != Driver::relay;
}

} // namespace lightoff::diagram
