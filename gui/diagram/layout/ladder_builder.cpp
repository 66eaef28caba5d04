// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/ladder_builder.hpp"

#include "bench/access.hpp"
#include "gui/diagram/insulation.hpp"
#include "gui/diagram/layout/symbol_names.hpp"
#include "gui/diagram/names.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::diagram {
namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

bool is_plug(const furnace::Model& model, const std::string& owner) {
    return std::any_of(model.places.begin(), model.places.end(),
                       [&](const furnace::Place& place) { return place.part == owner && place.plug; });
}

/// What the model says of a vertex's test point.
Spot spot_for(const furnace::Model& model, const Vertex& vertex) {
    Spot spot;
    spot.node = vertex.node;
    spot.terminal = vertex.terminal;
    spot.lug = vertex.lug;
    spot.owner = vertex.owner;
    const bool bare = vertex.terminal < 0;
    const std::string& own =
        bare ? model.test_point_name(vertex.node) : model.wiring.terminals[index(vertex.terminal)].name;
    spot.name = bare ? spaced(owner_of(own)) + " " + spaced(rest_of(own)) : spaced(rest_of(own));
    spot.full_name = own + (vertex.lug ? ".lug" : "");
    spot.where = bench::where_is(model, vertex.owner);
    spot.plug = is_plug(model, vertex.owner);
    if (spot.plug)
        spot.name = "plug";
    return spot;
}

bool is_closed_at_rest(const furnace::Model& model, const Symbol& symbol) {
    return symbol.kind == SymbolKind::temperature_switch || symbol.kind == SymbolKind::reset_switch ||
           symbol.kind == SymbolKind::overload ||
           model.wiring.netlist.elements[index(symbol.element)].normally_closed;
}

/// The main direction of a way, of length 1.
ImVec2 main_direction(ImVec2 d) {
    return std::abs(d.x) >= std::abs(d.y) ? ImVec2{d.x / std::abs(d.x), 0} : ImVec2{0, d.y / std::abs(d.y)};
}

} // namespace

LadderBuilder::LadderBuilder(const furnace::Model& model, const Circuits& circuits)
    : model_(model), circuits_(circuits), spot_of_(circuits.graph.vertices.size(), -1) {
    out_.common_node = model.wiring.common;
    out_.low_voltage.assign(index(model.wiring.netlist.node_count()), 0);
    if (const int neutral = circuits.rail_vertex(Rail::neutral); neutral >= 0)
        out_.neutral_node = circuits.vertex(neutral).node;
    out_.pin_spot.assign(model.wiring.terminals.size(), -1);
    out_.lug_spot.assign(model.wiring.terminals.size(), -1);
}

// ---- spots ----

bool LadderBuilder::is_test_point(int vertex) const {
    const Vertex& v = circuits_.vertex(vertex);
    return v.terminal >= 0 || (model_.touchable[index(v.node)] != 0 && !is_track(v.node));
}

/// Whether a node is the track of terminals, which have spots of their own. The cabinet's sheet metal is
/// touchable though it is also its screw's pin.
bool LadderBuilder::is_track(int node) const {
    const auto& terminals = model_.wiring.terminals;
    const bool has_pins =
        std::any_of(terminals.begin(), terminals.end(), [&](const auto& t) { return t.pin == node; });
    const std::vector<int>& earthed = circuits_.graph.earthed;
    const bool sheet_metal = circuits_.rail_vertex(Rail::ground) == node &&
                             std::find(earthed.begin(), earthed.end(), node) != earthed.end();
    return has_pins && !sheet_metal;
}

void LadderBuilder::add_spot(int vertex, const Position& position) {
    if (spot_of(vertex) >= 0 || !is_test_point(vertex))
        return;
    Spot spot = spot_for(model_, circuits_.vertex(vertex));
    spot.at = position.at;
    spot.row = position.row;
    const auto number = static_cast<int>(out_.spots.size());
    if (spot.terminal >= 0)
        (spot.lug ? out_.lug_spot : out_.pin_spot)[index(spot.terminal)] = number;
    spot_of_[index(vertex)] = number;
    out_.spots.push_back(std::move(spot));
}

int LadderBuilder::spot_of(int vertex) const {
    return spot_of_[index(vertex)];
}

// ---- wires, symbols and lines ----

void LadderBuilder::add_wire(const Link& link, int start, std::vector<ImVec2> path, ImVec2 ferrule) {
    const std::vector<int>& wires = model_.wiring.wires;
    const auto i = std::find(wires.begin(), wires.end(), link.element) - wires.begin();
    const std::string& colour = model_.wiring.wire_colours[static_cast<std::size_t>(i)];
    const int end = link.a == start ? link.b : link.a;
    Wire wire;
    wire.element = link.element;
    wire.name = model_.wiring.netlist.element_names[index(link.element)];
    wire.colour = colour;
    wire.letters = ferrule_letters(colour);
    wire.path = std::move(path);
    wire.ferrule = ferrule;
    wire.from_node = circuits_.vertex(start).node;
    wire.to_node = circuits_.vertex(end).node;
    wire_ends_.push_back({start, end});
    out_.wires.push_back(std::move(wire));
}

bool LadderBuilder::has_wire(int element) const {
    return std::any_of(out_.wires.begin(), out_.wires.end(),
                       [&](const Wire& wire) { return wire.element == element; });
}

void LadderBuilder::add_symbol(const Link& link, ImVec2 from, ImVec2 to, bool low_voltage) {
    Symbol symbol;
    symbol.element = link.element;
    symbol.from = from;
    symbol.to = to;
    symbol.kind = kind_of(model_, link);
    symbol.closed_at_rest = is_closed_at_rest(model_, symbol);
    symbol.name = name_of(model_, circuits_, link);
    if (symbol.kind == SymbolKind::relay_contact) {
        symbol.short_name = symbol.name.substr(0, symbol.name.find(' '));
        // Between the loads that it works, words would be taken for theirs.
        if (!circuits_.is_rail(link.a) && !circuits_.is_rail(link.b))
            symbol.name = symbol.short_name;
    }
    symbol.core_below = symbol.kind == SymbolKind::transformer_winding && !low_voltage;
    out_.symbols.push_back(std::move(symbol));
}

void LadderBuilder::add_track(const Link& link, std::vector<ImVec2> path) {
    out_.tracks.push_back({std::move(path), link.kind == LinkKind::joint ? link.element : -1,
                           circuits_.vertex(link.a).node, circuits_.vertex(link.b).node});
}

void LadderBuilder::add_line(int vertex, ImVec2 from, ImVec2 to) {
    const int node = circuits_.vertex(vertex).node;
    out_.tracks.push_back({{from, to}, -1, node, node});
}

void LadderBuilder::note_low_voltage(int vertex) {
    out_.low_voltage[index(circuits_.vertex(vertex).node)] = 1;
}

void LadderBuilder::add_mark(Mark::Kind kind, ImVec2 at) {
    out_.marks.push_back({kind, at});
}

void LadderBuilder::add_walk(std::vector<int> spots) {
    out_.runs.push_back(std::move(spots));
}

// ---- once all spots stand ----

Ladder LadderBuilder::finish() {
    tie_wires_to_spots();
    point_outward();
    return std::move(out_);
}

void LadderBuilder::tie_wires_to_spots() {
    for (std::size_t i = 0; i < out_.wires.size(); ++i) {
        Wire& wire = out_.wires[i];
        wire.from = spot_of(wire_ends_[i].first);
        wire.to = spot_of(wire_ends_[i].second);
        for (const int spot : {wire.from, wire.to})
            if (spot >= 0)
                note_wired(spot);
    }
}

/// A wire at one spot of a terminal is at both.
void LadderBuilder::note_wired(int spot) {
    out_.spots[index(spot)].wired = true;
    if (const int terminal = out_.spots[index(spot)].terminal; terminal >= 0)
        for (const int both : {out_.pin_spot[index(terminal)], out_.lug_spot[index(terminal)]})
            out_.spots[index(both)].wired = true;
}

void LadderBuilder::point_outward() {
    for (std::size_t t = 0; t < out_.pin_spot.size(); ++t) {
        Spot& pin = out_.spots[index(out_.pin_spot[t])];
        Spot& lug = out_.spots[index(out_.lug_spot[t])];
        if (const ImVec2 d{lug.at.x - pin.at.x, lug.at.y - pin.at.y}; d.x != 0 || d.y != 0)
            pin.outward = lug.outward = main_direction(d);
    }
}

} // namespace lightoff::diagram
