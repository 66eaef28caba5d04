// SPDX-License-Identifier: MIT
#include "bench/access.hpp"

namespace lightoff::bench {
namespace {

const furnace::Place* place_of(const furnace::Model& model, const std::string& node_name) {
    const std::string part = node_name.substr(0, node_name.find('.'));
    for (const furnace::Place& place : model.places)
        if (place.part == part)
            return &place;
    return nullptr;
}

} // namespace

bool is_test_point(const furnace::Model& model, int node) {
    return node >= 0 && static_cast<std::size_t>(node) < model.touchable.size() &&
           model.touchable[static_cast<std::size_t>(node)] != 0;
}

std::string why_out_of_reach(const furnace::Model& model, const furnace::Inputs& inputs, int node) {
    if (node < 0 || node >= model.wiring.netlist.node_count())
        return "There is no such place.";
    const std::string& name = model.test_point_name(node);
    if (!is_test_point(model, node))
        return name + " is inside a part; no probe reaches it.";
    const furnace::Place* place = place_of(model, name);
    if (place == nullptr)
        return {};
    if (place->where == furnace::Place::Where::burner_compartment && inputs.burner_door_on != 0)
        return name + " is in the burner compartment; take its door off first.";
    if (place->where == furnace::Place::Where::blower_compartment && inputs.blower_door_on != 0)
        return name + " is in the blower compartment; take its door off first.";
    return {};
}

} // namespace lightoff::bench
