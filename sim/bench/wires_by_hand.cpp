// SPDX-License-Identifier: MIT
#include "bench/wires_by_hand.hpp"

#include <string>

namespace lightoff::bench {
namespace {

constexpr double kStores_f = 1e-6; ///< less than this is the capacitance of a cable

/// Whether a place is a pole of something that ends at `pin`: the pin itself, or the lug that is on it.
bool is_pole(const furnace::Model& model, const World& world, int place, int pin) {
    if (place == pin)
        return true;
    for (const furnace::Terminal& t : model.wiring.terminals)
        if (t.pin == pin && t.lug == place)
            return !electrical::has_element(world.inputs.parted, t.joint);
    return false;
}

} // namespace

bool is_attached(const furnace::Inputs& inputs, std::size_t slot) {
    return inputs.attachments[slot].a != inputs.attachments[slot].b;
}

std::size_t landing_of(const World& world, int lug) {
    const auto& attachments = world.inputs.attachments;
    for (std::size_t slot = instruments::kFirstWireSlot; slot < attachments.size(); ++slot)
        if (attachments[slot].a == lug && is_attached(world.inputs, slot))
            return slot;
    return 0;
}

std::size_t free_landing(const World& world) {
    for (std::size_t slot = instruments::kFirstWireSlot; slot < electrical::kMaxAttachments; ++slot)
        if (!is_attached(world.inputs, slot))
            return slot;
    return 0;
}

bool is_unplugged(const furnace::Model& model, const World& world, std::string_view plug) {
    for (const furnace::Terminal& terminal : model.wiring.terminals)
        if (terminal.is_at(plug) && !electrical::has_element(world.inputs.parted, terminal.joint))
            return false;
    return true;
}

std::vector<int> run_capacitors(const furnace::Model& model) {
    const electrical::Netlist& net = model.wiring.netlist;
    std::vector<int> found;
    for (int e = 0; e < net.element_count(); ++e) {
        const electrical::Element& element = net.elements[static_cast<std::size_t>(e)];
        const bool stores = element.kind == electrical::ElementKind::capacitor && element.farad >= kStores_f;
        if (stores && found.size() < kMaxCapacitors)
            found.push_back(e);
    }
    return found;
}

int capacitor_of(const furnace::Model& model, std::string_view part) {
    const std::string prefix = std::string(part) + ".";
    const std::vector<int> all = run_capacitors(model);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto element = static_cast<std::size_t>(all[i]);
        if (model.wiring.netlist.element_names[element].compare(0, prefix.size(), prefix) == 0)
            return static_cast<int>(i);
    }
    return -1;
}

double held_v(const furnace::Model& model, const World& world, int red, int black) {
    if (red == black)
        return 0.0;
    const std::vector<int> all = run_capacitors(model);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const electrical::Element& c = model.wiring.netlist.elements[static_cast<std::size_t>(all[i])];
        if (is_pole(model, world, red, c.a) && is_pole(model, world, black, c.b))
            return world.handiwork.capacitor_v[i];
        if (is_pole(model, world, red, c.b) && is_pole(model, world, black, c.a))
            return -world.handiwork.capacitor_v[i];
    }
    return 0.0;
}

} // namespace lightoff::bench
