// SPDX-License-Identifier: MIT
#include "electrical/netlist.hpp"
#include <algorithm>
#include <stdexcept>

namespace lightoff::electrical {
namespace {

int find(const std::vector<std::string>& names, const std::string& name, const char* what) {
    const auto at = std::find(names.begin(), names.end(), name);
    if (at == names.end())
        throw std::invalid_argument(std::string("no ") + what + " is called \"" + name + "\"");
    return static_cast<int>(at - names.begin());
}

} // namespace

int Netlist::node(const std::string& name) const {
    return find(node_names, name, "node");
}
int Netlist::element(const std::string& name) const {
    return find(element_names, name, "element");
}
int Netlist::sense(const std::string& name) const {
    return find(sense_names, name, "sense");
}
int Netlist::switch_bit(const std::string& name) const {
    return find(switch_names, name, "switch");
}

void require_no_islands(const Netlist& netlist) {
    std::vector<bool> tied(netlist.node_names.size(), false);
    tied[kEarth] = true;
    for (bool grew = true; grew;) {
        grew = false;
        for (const Element& e : netlist.elements) {
            const auto a = static_cast<std::size_t>(e.a);
            const auto b = static_cast<std::size_t>(e.b);
            if (tied[a] == tied[b])
                continue;
            tied[a] = tied[b] = true;
            grew = true;
        }
    }
    for (std::size_t i = 0; i < tied.size(); ++i)
        if (!tied[i] && netlist.is_field[i] == 0)
            throw std::invalid_argument("node \"" + netlist.node_names[i] +
                                        "\" is tied to nothing but strays");
}

} // namespace lightoff::electrical
