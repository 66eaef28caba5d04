// SPDX-License-Identifier: MIT
#include "bench/access.hpp"

#include "bench/hand_words.hpp"
namespace lightoff::bench {
namespace {

using Where = furnace::Place::Where;

std::string part_of(const std::string& name) {
    return name.substr(0, name.find('.'));
}

} // namespace

Where where_is(const furnace::Model& model, const std::string& wiring_part) {
    for (const furnace::Place& place : model.places)
        if (place.part == wiring_part)
            return place.where;
    return Where::outside;
}

std::string why_behind_a_door(Where where, const furnace::Inputs& inputs) {
    if (where == Where::burner_compartment && inputs.burner_door_on != 0)
        return "in the burner compartment; take its door off first.";
    if (where == Where::blower_compartment && inputs.blower_door_on != 0)
        return "in the blower compartment; take its door off first.";
    return {};
}

std::string why_no_access(const Site& site, const World& world, const faults::Part& part,
                          const faults::Access& access) {
    const std::string the_part = "The " + in_sentence(part) + " is ";
    const std::string why = why_behind_a_door(part.where, world.inputs);
    if (!why.empty())
        return the_part + why;
    if (access.burner_door_off && world.inputs.burner_door_on != 0)
        return the_part + "behind the burner compartment door; take that off first.";
    if (access.blower_door_off && world.inputs.blower_door_on != 0)
        return the_part + "behind the blower compartment door; take that off first.";
    const auto title_of = [&](int other) -> const std::string& {
        return site.catalogue.parts[static_cast<std::size_t>(other)].title;
    };
    for (const int other : access.off)
        if (!world.handiwork.is_off(other))
            return the_part + "out of reach; take the " + title_of(other) + " off first.";
    for (const int other : access.on)
        if (world.handiwork.is_off(other))
            return "Put the " + title_of(other) + " back first.";
    return {};
}

std::vector<int> nodes_of(const furnace::Model& model, const std::string& place) {
    std::vector<int> nodes;
    for (const furnace::Terminal& t : model.wiring.terminals)
        if (t.name == place || t.is_at(place)) {
            nodes.push_back(t.pin);
            nodes.push_back(t.lug);
        }
    const electrical::Netlist& net = model.wiring.netlist;
    for (std::size_t e = 0; e < net.elements.size(); ++e)
        if (net.element_names[e] == place) {
            nodes.push_back(net.elements[e].a);
            nodes.push_back(net.elements[e].b);
        }
    return nodes;
}

bool is_test_point(const furnace::Model& model, int node) {
    return node >= 0 && static_cast<std::size_t>(node) < model.touchable.size() &&
           model.touchable[static_cast<std::size_t>(node)] != 0;
}

std::string point_name(const furnace::Model& model, int node) {
    // Of terminals on one track of the board, the shortest name is the one that people say: board.neutral.
    const std::string* name = nullptr;
    for (const furnace::Terminal& terminal : model.wiring.terminals) {
        if (terminal.pin == node && (name == nullptr || terminal.name.size() < name->size()))
            name = &terminal.name;
        if (terminal.lug == node)
            return terminal.name + ".lug";
    }
    return name != nullptr ? *name : model.test_point_name(node);
}

std::string why_out_of_reach(const furnace::Model& model, const furnace::Inputs& inputs, int node) {
    if (node < 0 || node >= model.wiring.netlist.node_count())
        return "There is no such place.";
    const std::string name = point_name(model, node);
    if (!is_test_point(model, node))
        return name + " is inside a part; no probe reaches it.";
    const std::string why = why_behind_a_door(where_is(model, part_of(name)), inputs);
    return why.empty() ? why : name + " is " + why;
}

} // namespace lightoff::bench
