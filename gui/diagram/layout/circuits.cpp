// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/circuits.hpp"

#include "bench/wires_by_hand.hpp"
#include "gui/diagram/layout/lengths.hpp"
#include "gui/diagram/names.hpp"

#include <algorithm>
#include <functional>

namespace lightoff::diagram {
namespace {

using electrical::Element;
using electrical::ElementKind;
using furnace::Driver;

constexpr double kSensing_ohm = 500.0; ///< a resistor on a board from this on reads; under it, it carries
constexpr int kSearchSteps = 20000;    ///< of a search for the best chain; far more than any furnace needs

template <class T>
bool contains(const std::vector<T>& list, const T& value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

class Reader {
public:
    explicit Reader(const furnace::Model& model) : model_(model), net_(model.wiring.netlist) {}

    Circuits read() {
        add_vertices();
        add_links();
        used_.assign(out_.links.size(), false);
        placed_.assign(out_.vertices.size(), false);
        find_rails();
        take_supply();
        take_circuits();
        order_circuits();
        return std::move(out_);
    }

private:
    // ---- vertices and links ----

    void add_vertices() {
        for (int node = 0; node < net_.node_count(); ++node)
            out_.vertices.push_back({node, -1, false, std::string(owner_of(name_of(node)))});
        const auto& terminals = model_.wiring.terminals;
        for (std::size_t i = 0; i < terminals.size(); ++i) {
            const furnace::Terminal& t = terminals[i];
            const auto number = static_cast<int>(i);
            const std::string owner(owner_of(t.name));
            const bool own_pin = name_of(t.pin) == t.name + ".pin";
            const int pin = own_pin ? t.pin : static_cast<int>(out_.vertices.size());
            if (!own_pin)
                out_.vertices.push_back({});
            out_.vertices[index(pin)] = {t.pin, number, false, owner};
            out_.vertices[index(t.lug)] = {t.lug, number, true, owner};
            out_.pin_vertex.push_back(pin);
            out_.lug_vertex.push_back(t.lug);
            if (!own_pin)
                out_.links.push_back({LinkKind::track, -1, pin, t.pin, owner});
        }
    }

    void add_links() {
        const std::vector<int> capacitors = bench::run_capacitors(model_);
        for (int e = 0; e < net_.element_count(); ++e) {
            const Element& element = net_.elements[index(e)];
            if (element.kind == ElementKind::capacitor && !contains(capacitors, e))
                continue; // between the wires of a cable
            if (element.a == electrical::kEarth || element.b == electrical::kEarth) {
                out_.earthed.push_back(element.a == electrical::kEarth ? element.b : element.a);
                continue;
            }
            Link link{LinkKind::part, e, element.a, element.b,
                      std::string(owner_of(net_.element_names[index(e)]))};
            if (contains(model_.wiring.wires, e))
                link.kind = LinkKind::wire;
            else if (const int terminal = terminal_of_joint(e); terminal >= 0) {
                link.kind = LinkKind::joint;
                link.a = out_.lug_vertex[index(terminal)];
                link.b = out_.pin_vertex[index(terminal)];
            }
            out_.links.push_back(std::move(link));
        }
        at_.resize(out_.vertices.size());
        for (std::size_t i = 0; i < out_.links.size(); ++i) {
            at_[index(out_.links[i].a)].push_back(static_cast<int>(i));
            at_[index(out_.links[i].b)].push_back(static_cast<int>(i));
        }
    }

    [[nodiscard]] int terminal_of_joint(int element) const {
        const auto& terminals = model_.wiring.terminals;
        for (std::size_t i = 0; i < terminals.size(); ++i)
            if (terminals[i].joint == element)
                return static_cast<int>(i);
        return -1;
    }

    // ---- rails ----

    [[nodiscard]] bool passes(const Link& link) const {
        if (link.kind != LinkKind::part)
            return true;
        const Element& element = net_.elements[index(link.element)];
        if (element.kind == ElementKind::fuse)
            return true;
        if (element.kind != ElementKind::contact)
            return false;
        const Driver driver = model_.wiring.switches[index(element.switch_bit)].driver;
        return driver != Driver::board && driver != Driver::relay;
    }

    /// The vertex with most links among those that a start reaches through wires (and, on the hot side, fuses
    /// and switches that no control works): where the loads branch off. Of equals the last one met.
    [[nodiscard]] int branching_from(int start, bool hot) const {
        std::vector<int> reached{start};
        for (std::size_t i = 0; i < reached.size(); ++i)
            for (const int l : at_[index(reached[i])]) {
                const Link& link = out_.links[index(l)];
                const int next = other_end(l, reached[i]);
                if ((hot ? passes(link) : link.kind != LinkKind::part) && !contains(reached, next))
                    reached.push_back(next);
            }
        int most = start;
        for (const int v : reached)
            if (at_[index(v)].size() >= at_[index(most)].size())
                most = v;
        return most;
    }

    void find_rails() {
        for (const Link& link : out_.links)
            if (kind_of(link) == ElementKind::source && rail(Rail::line) < 0) {
                rail(Rail::line) = branching_from(link.a, true);
                rail(Rail::neutral) = branching_from(link.b, false);
                source_ = &link;
            }
        rail(Rail::common) = branching_from(model_.wiring.common, false);
        for (const Link& link : out_.links) {
            if (!is_transformer_winding(link))
                continue;
            const bool a_common = branching_from(link.a, false) == rail(Rail::common);
            const bool b_common = branching_from(link.b, false) == rail(Rail::common);
            if (a_common != b_common)
                rail(Rail::feed) = branching_from(a_common ? link.b : link.a, true);
        }
        std::size_t most = 0;
        for (const int v : out_.earthed) {
            const Vertex& vertex = out_.vertices[index(v)];
            // Sheet metal before a grounding terminal.
            const std::size_t worth = at_[index(v)].size() + (vertex.terminal < 0 ? 100U : 0U);
            if (model_.touchable[index(vertex.node)] != 0 && worth > most && !is_rail(v)) {
                most = worth;
                rail(Rail::ground) = v;
            }
        }
    }

    [[nodiscard]] bool is_transformer_winding(const Link& link) const {
        if (kind_of(link) != ElementKind::winding)
            return false;
        const int field = net_.elements[index(link.element)].field;
        for (const electrical::Core& core : net_.cores)
            if (core.field_m == field)
                return core.motor < 0;
        return false;
    }

    // ---- the supply ----

    void take_supply() {
        for (const int v : out_.rail)
            if (v >= 0)
                placed_[index(v)] = true;
        if (source_ == nullptr)
            return;
        used_[static_cast<std::size_t>(source_ - out_.links.data())] = true;
        const auto conducts = [this](const Link& link) { return passes(link); };
        const auto grounds = [this](const Link& link) {
            return link.kind != LinkKind::part || kind_of(link) == ElementKind::resistor;
        };
        // Each is marked before the next is looked for: what two of them share is drawn once.
        mark(out_.line = shortest(source_->a, rail(Rail::line), conducts));
        mark(out_.neutral = shortest(source_->b, rail(Rail::neutral), conducts));
        mark(out_.ground = shortest(source_->b, rail(Rail::ground), grounds));
    }

    void mark(const Run& run) {
        for (const int l : run.links)
            used_[index(l)] = true;
        for (const int v : run.vertices)
            placed_[index(v)] = true;
    }

    template <class May>
    [[nodiscard]] Run shortest(int from, int to, May&& may) const {
        if (from < 0 || to < 0)
            return {};
        std::vector<int> came(out_.vertices.size(), -1);
        std::vector<int> reached{from};
        for (std::size_t i = 0; i < reached.size() && came[index(to)] < 0; ++i)
            for (const int l : at_[index(reached[i])]) {
                const int next = other_end(l, reached[i]);
                if (used_[index(l)] || !may(out_.links[index(l)]) || contains(reached, next) ||
                    (is_rail(next) && next != to))
                    continue;
                came[index(next)] = l;
                reached.push_back(next);
            }
        if (came[index(to)] < 0 && from != to)
            return {};
        Run run;
        run.vertices.push_back(to);
        while (run.vertices.back() != from) {
            const int l = came[index(run.vertices.back())];
            run.links.push_back(l);
            run.vertices.push_back(other_end(l, run.vertices.back()));
        }
        return reversed(std::move(run));
    }

    static Run reversed(Run run) {
        std::reverse(run.vertices.begin(), run.vertices.end());
        std::reverse(run.links.begin(), run.links.end());
        std::swap(run.left, run.right);
        return run;
    }

    // ---- circuits ----

    void take_circuits() {
        for (std::size_t l = 0; l < out_.links.size(); ++l)
            if (!used_[l])
                take_circuit(static_cast<int>(l));
    }

    /// Links that hang together with one, without passing a rail.
    [[nodiscard]] std::vector<int> together_with(int link) const {
        std::vector<int> links{link};
        for (std::size_t i = 0; i < links.size(); ++i)
            for (const int v : {out_.links[index(links[i])].a, out_.links[index(links[i])].b}) {
                if (is_rail(v))
                    continue;
                for (const int l : at_[index(v)])
                    if (!used_[index(l)] && !contains(links, l))
                        links.push_back(l);
            }
        return links;
    }

    void take_circuit(int link) {
        const std::vector<int> links = together_with(link);
        Circuit circuit;
        std::array<bool, kRails + 1> touches{};
        for (const int l : links) {
            if (is_transformer_winding(out_.links[index(l)]))
                circuit.winding = l;
            for (const int v : {out_.links[index(l)].a, out_.links[index(l)].b}) {
                touches[static_cast<std::size_t>(rail_of(v))] = true;
            }
            const Link& one = out_.links[index(l)];
            if (one.kind == LinkKind::wire && (circuit.first_wire < 0 || one.element < circuit.first_wire))
                circuit.first_wire = one.element;
        }
        const auto on = [&](Rail r) { return touches[static_cast<std::size_t>(r)]; };
        circuit.low_voltage = !on(Rail::line) && !on(Rail::neutral);
        circuit.left = on(Rail::line) ? Rail::line : on(Rail::feed) ? Rail::feed : Rail::none;
        circuit.right = on(Rail::neutral)  ? Rail::neutral
                        : on(Rail::common) ? Rail::common
                        : on(Rail::ground) ? Rail::ground
                                           : Rail::none;
        if (circuit.left == Rail::none && on(Rail::ground) && circuit.right != Rail::ground)
            circuit.left = Rail::ground;
        circuit.is_secondary = circuit.winding >= 0 && circuit.low_voltage;
        Run main = best_chain(circuit, links);
        mark(main);
        circuit.runs.push_back(std::move(main));
        while (take_branch(circuit, links)) {
        }
        out_.circuits.push_back(std::move(circuit));
    }

    [[nodiscard]] int score(const Link& link) const {
        if (link.kind != LinkKind::part)
            return 0;
        if (is_sensing(model_, link))
            return -1;
        const Element& element = net_.elements[index(link.element)];
        switch (element.kind) {
        case ElementKind::winding:
            return is_start_winding(element) ? -5 : 10;
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

    [[nodiscard]] bool is_start_winding(const Element& element) const {
        return std::any_of(net_.cores.begin(), net_.cores.end(), [&](const electrical::Core& core) {
            return core.motor >= 0 && core.field_a == element.field;
        });
    }

    /// The chain that best shows what a circuit is for: from rail to rail through the loads.
    [[nodiscard]] Run best_chain(const Circuit& circuit, const std::vector<int>& links) const {
        const bool backwards = circuit.left == Rail::none && circuit.right != Rail::none;
        const int start = circuit.left != Rail::none    ? out_.rail_vertex(circuit.left)
                          : circuit.right != Rail::none ? out_.rail_vertex(circuit.right)
                                                        : out_.links[index(links.front())].a;
        const int goal = backwards ? -1 : out_.rail_vertex(circuit.right);
        Run best = search(start, goal, links);
        if (circuit.left != Rail::none)
            best.left = circuit.left;
        if (goal >= 0)
            best.right = circuit.right;
        best.stub = goal < 0;
        if (backwards) {
            best = reversed(std::move(best));
            best.right = circuit.right;
        }
        return best;
    }

    /// Best simple chain within some links; to anywhere if the goal is -1.
    [[nodiscard]] Run search(int start, int goal, const std::vector<int>& links) const {
        Run now{{start}, {}};
        Run best{{start}, {}};
        int best_score = -1000000;
        int steps = 0;
        const std::function<void(int)> extend = [&](int points) {
            const int at = now.vertices.back();
            const auto length = static_cast<int>(now.links.size());
            const int worth = 100 * points - (goal < 0 ? -length : length);
            if ((goal < 0 ? length > 0 : at == goal) && worth > best_score) {
                best_score = worth;
                best = now;
            }
            if (++steps > kSearchSteps || at == goal || (length > 0 && is_rail(at)))
                return;
            for (const int l : at_[index(at)]) {
                const int next = other_end(l, at);
                if (used_[index(l)] || !contains(links, l) || contains(now.vertices, next) ||
                    (is_rail(next) && next != goal))
                    continue;
                now.vertices.push_back(next);
                now.links.push_back(l);
                extend(points + score(out_.links[index(l)]));
                now.vertices.pop_back();
                now.links.pop_back();
            }
        };
        extend(0);
        return best;
    }

    // ---- branches ----

    bool take_branch(Circuit& circuit, const std::vector<int>& links) {
        std::vector<int> from;
        for (const Run& run : circuit.runs)
            for (const int v : run.vertices)
                if (!is_rail(v) && !contains(from, v))
                    from.push_back(v);
        for (const int v : from)
            if (take_tap(circuit, v))
                return true;
        for (const int v : from)
            if (Run run = parallel_from(v, links); !run.links.empty())
                return keep(circuit, oriented(circuit, std::move(run)));
        for (const int v : from)
            if (Run run = search(v, -1, links); !run.links.empty())
                return keep(circuit, stub(circuit, std::move(run)));
        for (const int l : links) // what hangs between rails beside the main run
            if (!used_[index(l)]) {
                const int start =
                    is_rail(out_.links[index(l)].a) ? out_.links[index(l)].a : out_.links[index(l)].b;
                Run run = search(start, -1, links);
                if (run.links.empty())
                    return false;
                return keep(circuit, stub(circuit, std::move(run)));
            }
        return false;
    }

    bool keep(Circuit& circuit, Run run) {
        mark(run);
        circuit.runs.push_back(std::move(run));
        return true;
    }

    bool take_tap(Circuit& circuit, int v) {
        for (const int l : at_[index(v)])
            if (!used_[index(l)] && is_sensing(model_, out_.links[index(l)]) && is_rail(other_end(l, v))) {
                used_[index(l)] = true;
                circuit.taps.push_back(v);
                return true;
            }
        return false;
    }

    /// The shortest way from a vertex through what is not drawn yet to something that is.
    [[nodiscard]] Run parallel_from(int start, const std::vector<int>& links) const {
        std::vector<int> came(out_.vertices.size(), -1);
        std::vector<int> reached{start};
        for (std::size_t i = 0; i < reached.size(); ++i) {
            if (i > 0 && placed_[index(reached[i])]) {
                Run run;
                run.vertices.push_back(reached[i]);
                while (run.vertices.back() != start) {
                    const int l = came[index(run.vertices.back())];
                    run.links.push_back(l);
                    run.vertices.push_back(other_end(l, run.vertices.back()));
                }
                return reversed(std::move(run));
            }
            for (const int l : at_[index(reached[i])]) {
                const int next = other_end(l, reached[i]);
                if (used_[index(l)] || !contains(links, l) || contains(reached, next))
                    continue;
                came[index(next)] = l;
                reached.push_back(next);
            }
        }
        return {};
    }

    /// Left end first: a hot rail is left, a return rail right; between two vertices the one that lies
    /// farther left in what is drawn already.
    [[nodiscard]] Run oriented(const Circuit& circuit, Run run) const {
        const Rail end = rail_of(run.vertices.back());
        const bool hot = end == Rail::line || end == Rail::feed;
        run.right = end;
        if (end == Rail::none) {
            const std::vector<float> x = distances(circuit);
            if (x[index(run.vertices.back())] < x[index(run.vertices.front())])
                return reversed(std::move(run));
        } else if (hot || (end == Rail::ground && circuit.left == Rail::ground)) {
            return reversed(std::move(run));
        }
        return run;
    }

    /// A chain that leads nowhere goes left if it ends in the part that the hot rail is of, else right.
    [[nodiscard]] Run stub(const Circuit& circuit, Run run) const {
        run.stub = true;
        const int left = out_.rail_vertex(circuit.left);
        const std::string& owner = out_.vertices[index(run.vertices.back())].owner;
        const Rail start = rail_of(run.vertices.front());
        if (start == Rail::neutral || start == Rail::common)
            run.right = start;
        if (run.right != Rail::none || (left >= 0 && owner == out_.vertices[index(left)].owner)) {
            const Rail right = run.right;
            std::reverse(run.vertices.begin(), run.vertices.end());
            std::reverse(run.links.begin(), run.links.end());
            run.right = right;
            return run;
        }
        run.left = start;
        return run;
    }

    /// Longest way to each vertex from the left, as far as runs are known.
    [[nodiscard]] std::vector<float> distances(const Circuit& circuit) const {
        std::vector<float> x(out_.vertices.size(), 0.0F);
        for (std::size_t pass = 0; pass < out_.vertices.size(); ++pass)
            for (const Run& run : circuit.runs)
                for (std::size_t i = 0; i < run.links.size(); ++i) {
                    const int right = run.vertices[i + 1];
                    const float least = x[index(run.vertices[i])] * (is_rail(run.vertices[i]) ? 0.0F : 1.0F) +
                                        least_length(model_, out_.links[index(run.links[i])]);
                    x[index(right)] = std::max(x[index(right)], least);
                }
        return x;
    }

    void order_circuits() {
        const auto rank = [](const Circuit& c) {
            const int place = c.first_wire < 0 ? 100000 : c.first_wire;
            const bool last = c.winding >= 0 && !c.low_voltage; // next to its secondary
            return (c.low_voltage ? 1000000 : 0) + (c.is_secondary ? -1 : last ? 500000 : place);
        };
        std::stable_sort(out_.circuits.begin(), out_.circuits.end(),
                         [&](const Circuit& x, const Circuit& y) { return rank(x) < rank(y); });
    }

    // ---- small things ----

    static std::size_t index(int i) { return static_cast<std::size_t>(i); }
    [[nodiscard]] const std::string& name_of(int node) const { return net_.node_names[index(node)]; }
    [[nodiscard]] int other_end(int link, int vertex) const {
        const Link& l = out_.links[index(link)];
        return l.a == vertex ? l.b : l.a;
    }
    [[nodiscard]] ElementKind kind_of(const Link& link) const {
        return link.element < 0 ? ElementKind::resistor : net_.elements[index(link.element)].kind;
    }
    int& rail(Rail r) { return out_.rail[static_cast<std::size_t>(r)]; }
    [[nodiscard]] bool is_rail(int v) const { return out_.is_rail(v); }
    [[nodiscard]] Rail rail_of(int v) const {
        for (std::size_t r = 0; r < kRails; ++r)
            if (out_.rail[r] == v)
                return static_cast<Rail>(r);
        return Rail::none;
    }

    const furnace::Model& model_;
    const electrical::Netlist& net_;
    Circuits out_;
    std::vector<std::vector<int>> at_; ///< links by vertex
    std::vector<bool> used_;           ///< by link
    std::vector<bool> placed_;         ///< by vertex
    const Link* source_ = nullptr;
};

} // namespace

bool Circuits::is_rail(int vertex) const {
    return vertex >= 0 && std::find(rail.begin(), rail.end(), vertex) != rail.end();
}

std::string Circuits::board() const {
    const int common = rail_vertex(Rail::common);
    return common < 0 ? "" : vertex(common).owner;
}

Circuits read_circuits(const furnace::Model& model) {
    return Reader(model).read();
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

bool is_sensing(const furnace::Model& model, const Link& link) {
    if (link.kind != LinkKind::part)
        return false;
    const Element& element = model.wiring.netlist.elements[static_cast<std::size_t>(link.element)];
    const std::string_view common =
        model.wiring.netlist.node_names[static_cast<std::size_t>(model.wiring.common)];
    return element.kind == ElementKind::resistor && element.ohm >= kSensing_ohm &&
           (element.a == model.wiring.common || element.b == model.wiring.common) &&
           link.owner == owner_of(common);
}

} // namespace lightoff::diagram
