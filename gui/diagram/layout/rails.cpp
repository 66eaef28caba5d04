// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/rails.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

using electrical::ElementKind;

/// On the hot side the search goes on through fuses and switches that no control works.
enum class Through : std::uint8_t { wires, supply };

/// The vertex with most links among those that a start reaches: where the loads branch off. Of equals the
/// last one met.
int branching_from(const furnace::Model& model, const Graph& graph, int start, Through through) {
    std::vector<int> reached{start};
    for (std::size_t i = 0; i < reached.size(); ++i)
        for (const int l : graph.at(reached[i])) {
            const Link& link = graph.link(l);
            const int next = link.other_end(reached[i]);
            const bool goes_on =
                through == Through::supply ? passes_supply(model, link) : link.kind != LinkKind::part;
            if (goes_on && std::find(reached.begin(), reached.end(), next) == reached.end())
                reached.push_back(next);
        }
    int most = start;
    for (const int v : reached)
        if (graph.at(v).size() >= graph.at(most).size())
            most = v;
    return most;
}

/// The hot end of the transformer's secondary: the other one leads to the common.
int find_feed(const furnace::Model& model, const Graph& graph, int common) {
    int feed = -1;
    for (const Link& link : graph.links) {
        if (!is_transformer_winding(model, link))
            continue;
        const bool a = branching_from(model, graph, link.a, Through::wires) == common;
        const bool b = branching_from(model, graph, link.b, Through::wires) == common;
        if (a != b)
            feed = branching_from(model, graph, a ? link.b : link.a, Through::supply);
    }
    return feed;
}

/// The touchable metal with most links; sheet metal before a grounding terminal.
int find_ground(const furnace::Model& model, const Graph& graph, const Rails& others) {
    int ground = -1;
    std::size_t most = 0;
    for (const int v : graph.earthed) {
        const Vertex& vertex = graph.vertex(v);
        const std::size_t worth = graph.at(v).size() + (vertex.terminal < 0 ? 100U : 0U);
        if (model.touchable[static_cast<std::size_t>(vertex.node)] != 0 && worth > most && !others.has(v)) {
            most = worth;
            ground = v;
        }
    }
    return ground;
}

} // namespace

int Rails::vertex(Rail rail) const {
    return rail == Rail::none ? -1 : vertices[static_cast<std::size_t>(rail)];
}

bool Rails::has(int vertex) const {
    return of(vertex) != Rail::none;
}

Rail Rails::of(int vertex) const {
    const auto it = std::find(vertices.begin(), vertices.end(), vertex);
    return vertex < 0 ? Rail::none : static_cast<Rail>(it - vertices.begin());
}

Rails find_rails(const furnace::Model& model, const Graph& graph) {
    Rails rails;
    if (const Link* source = find_source(model, graph)) {
        rails[Rail::line] = branching_from(model, graph, source->a, Through::supply);
        rails[Rail::neutral] = branching_from(model, graph, source->b, Through::wires);
    }
    rails[Rail::common] = branching_from(model, graph, model.wiring.common, Through::wires);
    rails[Rail::feed] = find_feed(model, graph, rails[Rail::common]);
    rails[Rail::ground] = find_ground(model, graph, rails);
    return rails;
}

const Link* find_source(const furnace::Model& model, const Graph& graph) {
    for (const Link& link : graph.links)
        if (is_part(model, link, ElementKind::source))
            return &link;
    return nullptr;
}

} // namespace lightoff::diagram
