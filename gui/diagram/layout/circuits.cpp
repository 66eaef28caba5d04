// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/circuits.hpp"

#include "gui/diagram/layout/lengths.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>

namespace lightoff::diagram {
namespace {

using electrical::ElementKind;

/// How much a link says of what a circuit is for.
int worth_of(const furnace::Model& model, const Link& link) {
    if (link.kind != LinkKind::part)
        return 0;
    if (is_sensing(model, link))
        return -1;
    switch (model.wiring.netlist.elements[static_cast<std::size_t>(link.element)].kind) {
    case ElementKind::winding:
        return is_start_winding(model, link) ? -5 : 10;
    case ElementKind::coil:
    case ElementKind::igniter:
    case ElementKind::flame:
        return 10;
    case ElementKind::contact:
    case ElementKind::fuse:
        return 3;
    case ElementKind::capacitor:
        return -5;
    default:
        return 1;
    }
}

// ---- what a circuit is ----

/// Which rails some links touch.
class Touched {
public:
    Touched(const Circuits& circuits, const std::vector<int>& links) {
        for (const int l : links)
            for (const int v : {circuits.link(l).a, circuits.link(l).b})
                rails_[static_cast<std::size_t>(circuits.rails.of(v))] = true;
    }
    [[nodiscard]] bool has(Rail rail) const { return rails_[static_cast<std::size_t>(rail)]; }
    /// The first of some rails; none if it touches none of them.
    [[nodiscard]] Rail first_of(std::initializer_list<Rail> rails) const {
        const auto* const it = std::find_if(rails.begin(), rails.end(), [&](Rail rail) { return has(rail); });
        return it == rails.end() ? Rail::none : *it;
    }

private:
    std::array<bool, kRails + 1> rails_{};
};

/// A circuit of some links, without runs.
Circuit circuit_of(const furnace::Model& model, const Circuits& circuits, const std::vector<int>& links) {
    Circuit circuit;
    for (const int l : links) {
        const Link& link = circuits.link(l);
        if (is_transformer_winding(model, link))
            circuit.winding = l;
        if (link.kind == LinkKind::wire && (circuit.first_wire < 0 || link.element < circuit.first_wire))
            circuit.first_wire = link.element;
    }
    const Touched touched(circuits, links);
    circuit.low_voltage = !touched.has(Rail::line) && !touched.has(Rail::neutral);
    circuit.left = touched.first_of({Rail::line, Rail::feed});
    circuit.right = touched.first_of({Rail::neutral, Rail::common, Rail::ground});
    if (circuit.left == Rail::none && touched.has(Rail::ground) && circuit.right != Rail::ground)
        circuit.left = Rail::ground;
    circuit.is_secondary = circuit.winding >= 0 && circuit.low_voltage;
    return circuit;
}

void order(std::vector<Circuit>& circuits) {
    const auto rank = [](const Circuit& c) {
        const int place = c.first_wire < 0 ? 100000 : c.first_wire;
        const bool last = c.winding >= 0 && !c.low_voltage; // next to its secondary
        return (c.low_voltage ? 1000000 : 0) + (c.is_secondary ? -1 : last ? 500000 : place);
    };
    std::stable_sort(circuits.begin(), circuits.end(),
                     [&](const Circuit& x, const Circuit& y) { return rank(x) < rank(y); });
}

// ---- which way round a run lies ----

/// Longest way to each vertex from the left, as far as runs are known.
std::vector<float> distances(const furnace::Model& model, const Circuits& circuits, const Circuit& circuit) {
    std::vector<float> x(circuits.graph.vertices.size(), 0.0F);
    for (std::size_t pass = 0; pass < x.size(); ++pass)
        for (const Run& run : circuit.runs)
            for (std::size_t i = 0; i < run.links.size(); ++i) {
                const auto left = static_cast<std::size_t>(run.vertices[i]);
                const auto right = static_cast<std::size_t>(run.vertices[i + 1]);
                const float from = circuits.is_rail(run.vertices[i]) ? 0 : x[left];
                x[right] = std::max(x[right], from + least_length(model, circuits.link(run.links[i])));
            }
    return x;
}

/// Left end first: a hot rail is left, a return rail right; between two vertices the one that lies farther
/// left in what is drawn already.
Run oriented(const furnace::Model& model, const Circuits& circuits, const Circuit& circuit, Run run) {
    const Rail end = circuits.rails.of(run.vertices.back());
    const bool hot = end == Rail::line || end == Rail::feed;
    run.right = end;
    if (end == Rail::none) {
        const std::vector<float> x = distances(model, circuits, circuit);
        const auto at = [&](int v) { return x[static_cast<std::size_t>(v)]; };
        return at(run.vertices.back()) < at(run.vertices.front()) ? reversed(std::move(run)) : run;
    }
    return hot || (end == Rail::ground && circuit.left == Rail::ground) ? reversed(std::move(run)) : run;
}

/// A chain that leads nowhere goes left if it ends in the part that the hot rail is of, else right.
Run as_stub(const Circuits& circuits, const Circuit& circuit, Run run) {
    run.stub = true;
    const int left = circuits.rail_vertex(circuit.left);
    const bool ends_at_left =
        left >= 0 && circuits.vertex(run.vertices.back()).owner == circuits.vertex(left).owner;
    const Rail start = circuits.rails.of(run.vertices.front());
    const bool from_return = start == Rail::neutral || start == Rail::common;
    if (from_return || ends_at_left) {
        run = reversed(std::move(run));
        run.right = from_return ? start : Rail::none;
    } else {
        run.left = start;
    }
    return run;
}

// ---- taking ----

/// Takes one run after the other from the graph.
class Taker {
public:
    Taker(const furnace::Model& model, Circuits& out)
        : model_(model), out_(out), untaken_(out.graph, out.rails) {
        for (const Link& link : out.graph.links)
            worth_.push_back(worth_of(model, link));
    }

    void take_supply() {
        const Link* source = find_source(model_, out_.graph);
        if (source == nullptr)
            return;
        untaken_.take(static_cast<int>(source - out_.graph.links.data()));
        const auto conducts = [this](const Link& link) { return passes_supply(model_, link); };
        const auto grounds = [this](const Link& link) {
            return link.kind != LinkKind::part || is_part(model_, link, ElementKind::resistor);
        };
        // Each is taken before the next is looked for: what two of them share is drawn once.
        untaken_.take(out_.line = untaken_.shortest(source->a, out_.rail_vertex(Rail::line), conducts));
        untaken_.take(out_.neutral = untaken_.shortest(source->b, out_.rail_vertex(Rail::neutral), conducts));
        untaken_.take(out_.ground = untaken_.shortest(source->b, out_.rail_vertex(Rail::ground), grounds));
    }

    void take_circuits() {
        for (int l = 0; l < static_cast<int>(out_.graph.links.size()); ++l)
            if (untaken_.has(l))
                take_circuit(untaken_.together_with(l));
    }

private:
    void take_circuit(const std::vector<int>& links) {
        Circuit circuit = circuit_of(model_, out_, links);
        keep(circuit, main_run(circuit, links));
        while (take_branch(circuit, links)) {
        }
        out_.circuits.push_back(std::move(circuit));
    }

    /// The chain that best shows what a circuit is for: from rail to rail through the loads.
    [[nodiscard]] Run main_run(const Circuit& circuit, const std::vector<int>& links) const {
        const bool backwards = circuit.left == Rail::none && circuit.right != Rail::none;
        const int start = circuit.left != Rail::none    ? out_.rail_vertex(circuit.left)
                          : circuit.right != Rail::none ? out_.rail_vertex(circuit.right)
                                                        : out_.link(links.front()).a;
        const int goal = backwards ? -1 : out_.rail_vertex(circuit.right);
        Run run = untaken_.best_from(start, goal, links, worth_);
        run.stub = goal < 0;
        if (backwards)
            run = reversed(std::move(run));
        run.left = circuit.left;
        run.right = circuit.right;
        return run;
    }

    bool take_branch(Circuit& circuit, const std::vector<int>& links) {
        const std::vector<int> from = inner_vertices(circuit);
        for (const int v : from)
            if (take_tap(circuit, v))
                return true;
        for (const int v : from)
            if (Run run = untaken_.parallel_from(v, links); !run.links.empty())
                return keep(circuit, oriented(model_, out_, circuit, std::move(run)));
        for (const int v : from)
            if (take_stub(circuit, v, links))
                return true;
        for (const int l : links) // what hangs between rails beside the main run
            if (untaken_.has(l))
                return take_stub(circuit, out_.is_rail(out_.link(l).a) ? out_.link(l).a : out_.link(l).b,
                                 links);
        return false;
    }

    [[nodiscard]] std::vector<int> inner_vertices(const Circuit& circuit) const {
        std::vector<int> inner;
        for (const Run& run : circuit.runs)
            for (const int v : run.vertices)
                if (!out_.is_rail(v) && std::find(inner.begin(), inner.end(), v) == inner.end())
                    inner.push_back(v);
        return inner;
    }

    bool take_tap(Circuit& circuit, int v) {
        for (const int l : out_.graph.at(v))
            if (untaken_.has(l) && is_sensing(model_, out_.link(l)) &&
                out_.is_rail(out_.link(l).other_end(v))) {
                untaken_.take(l);
                circuit.taps.push_back(v);
                return true;
            }
        return false;
    }

    bool take_stub(Circuit& circuit, int v, const std::vector<int>& links) {
        Run run = untaken_.best_from(v, -1, links, worth_);
        return !run.links.empty() && keep(circuit, as_stub(out_, circuit, std::move(run)));
    }

    bool keep(Circuit& circuit, Run run) {
        untaken_.take(run);
        circuit.runs.push_back(std::move(run));
        return true;
    }

    const furnace::Model& model_;
    Circuits& out_;
    Untaken untaken_;
    std::vector<int> worth_; ///< by link
};

} // namespace

std::string Circuits::board() const {
    const int common = rail_vertex(Rail::common);
    return common < 0 ? "" : vertex(common).owner;
}

Circuits read_circuits(const furnace::Model& model) {
    Circuits out;
    out.graph = read_graph(model);
    out.rails = find_rails(model, out.graph);
    Taker taker(model, out);
    taker.take_supply();
    taker.take_circuits();
    order(out.circuits);
    return out;
}

std::vector<int> edge_of(const Circuits& circuits, const Run& run, Side side) {
    const bool left = side == Side::left;
    const std::size_t n = run.vertices.size();
    const auto nth = [&](std::size_t i) { return run.vertices[left ? i : n - 1 - i]; };
    const Rail rail = left ? run.left : run.right;
    const std::string& owner = circuits.vertex(nth(0)).owner;
    const bool at_rail = rail != Rail::none && rail != Rail::ground;
    const bool parked = run.stub && left && rail == Rail::none && owner == circuits.board();
    std::vector<int> edge;
    if (!at_rail && !parked)
        return edge;
    const std::size_t first = at_rail ? 1 : 0;
    for (std::size_t i = first; i < n; ++i) {
        const Vertex& v = circuits.vertex(nth(i));
        if (v.owner != owner || v.lug || circuits.is_rail(nth(i)))
            break;
        edge.push_back(nth(i));
    }
    return edge.size() + first == n ? std::vector<int>{} : edge;
}

} // namespace lightoff::diagram
