// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/symbol_names.hpp"

#include "gui/diagram/names.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::diagram {
namespace {

using electrical::ElementKind;
using furnace::Driver;

/// Less is a strap, a rod or metal on metal: a line to whoever reads it.
constexpr double kCarries_ohm = 500;

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Whether a winding is in a circuit of the low voltage.
bool is_secondary(const Circuits& circuits, const Link& link) {
    return std::any_of(circuits.circuits.begin(), circuits.circuits.end(), [&](const Circuit& circuit) {
        return circuit.is_secondary && circuits.link(circuit.winding).element == link.element;
    });
}

/// Whether it feeds the board itself: no terminal that it would read is at its ends.
bool feeds_board(const Circuits& circuits, const Link& link) {
    return circuits.is_rail(link.a) && circuits.is_rail(link.b);
}

SymbolKind contact_kind(Driver driver) {
    switch (driver) {
    case Driver::breaker:
        return SymbolKind::breaker;
    case Driver::disconnect:
        return SymbolKind::disconnect;
    case Driver::door_switch:
        return SymbolKind::door_switch;
    case Driver::thermostat_heat:
        return SymbolKind::heat_call;
    case Driver::thermostat_fan:
        return SymbolKind::fan_switch;
    case Driver::limit:
        return SymbolKind::temperature_switch;
    case Driver::rollout:
        return SymbolKind::reset_switch;
    case Driver::pressure_switch:
        return SymbolKind::pressure_switch;
    case Driver::blower_overload:
    case Driver::inducer_overload:
        return SymbolKind::overload;
    case Driver::board:
        return SymbolKind::driver;
    case Driver::relay:
        break;
    }
    return SymbolKind::relay_contact;
}

bool is_motor(const furnace::Model& model, const electrical::Element& e) {
    return std::any_of(model.wiring.netlist.cores.begin(), model.wiring.netlist.cores.end(),
                       [&](const electrical::Core& core) {
                           return core.motor >= 0 && (core.field_m == e.field || core.field_a == e.field);
                       });
}

/// K and a number for each relay of the control, the same at its coil and its contacts: common practice.
std::string designation(const furnace::Model& model, const std::string& coil) {
    int number = 0;
    for (std::size_t i = 0; i < model.wiring.relays.size(); ++i) {
        number += static_cast<int>(i) == model.wiring.gas_valve ? 0 : 1;
        if (model.wiring.relays[i].name == coil)
            break;
    }
    return "K" + std::to_string(number);
}

/// "winding_low" as "low", "start_winding" as "start".
std::string winding_name(std::string_view rest) {
    constexpr std::string_view kWord = "winding";
    std::string words(rest);
    if (const std::size_t at = words.find(kWord); at != std::string::npos && words.size() > kWord.size())
        words.erase(at == 0 ? 0 : at - 1, kWord.size() + 1);
    return spaced(words);
}

std::string supply_volts(const furnace::Model& model) {
    return std::to_string(std::lround(model.nominal_line_v)) + " V";
}

/// What is printed on a fuse: its wire begins to melt at 1.25 times that.
std::string rating_of(const furnace::Model& model, int element) {
    for (const furnace::FuseBinding& fuse : model.wiring.fuses)
        if (fuse.element == element)
            return " " + std::to_string(std::lround(fuse.params.minimum_fusing_a / 1.25)) + " A";
    return "";
}

} // namespace

SymbolKind kind_of(const furnace::Model& model, const Link& link) {
    const electrical::Element& e = model.wiring.netlist.elements[index(link.element)];
    switch (e.kind) {
    case ElementKind::resistor:
        return is_sensing(model, link) ? SymbolKind::reads
               : e.ohm < kCarries_ohm  ? SymbolKind::conductor
                                       : SymbolKind::resistor;
    case ElementKind::fuse:
        return SymbolKind::fuse;
    case ElementKind::coil: {
        const int valve = model.wiring.gas_valve;
        const bool is_valve = valve >= 0 && model.wiring.relays[index(valve)].name ==
                                                model.wiring.netlist.element_names[index(link.element)];
        return is_valve ? SymbolKind::valve_coil : SymbolKind::relay_coil;
    }
    case ElementKind::capacitor:
        return SymbolKind::capacitor;
    case ElementKind::contact:
        return contact_kind(model.wiring.switches[index(e.switch_bit)].driver);
    case ElementKind::source:
        return SymbolKind::source;
    case ElementKind::winding:
        return is_motor(model, e) ? SymbolKind::winding : SymbolKind::transformer_winding;
    case ElementKind::igniter:
        return SymbolKind::igniter;
    case ElementKind::flame:
        return SymbolKind::flame;
    }
    return SymbolKind::resistor;
}

std::string name_of(const furnace::Model& model, const Circuits& circuits, const Link& link) {
    const SymbolKind kind = kind_of(model, link);
    const std::string& element = model.wiring.netlist.element_names[index(link.element)];
    if (kind == SymbolKind::driver || kind == SymbolKind::conductor ||
        (kind == SymbolKind::reads && !feeds_board(circuits, link)))
        return "";
    if (kind == SymbolKind::relay_contact || kind == SymbolKind::relay_coil) {
        std::string coil = element;
        if (kind == SymbolKind::relay_contact) {
            const int bit = model.wiring.netlist.elements[index(link.element)].switch_bit;
            coil = model.wiring.relays[index(model.wiring.switches[index(bit)].index)].name;
        }
        std::string words = spaced(rest_of(coil));
        if (words.rfind("coil ", 0) == 0)
            words.erase(0, 5);
        return designation(model, coil) + " " + words + (kind == SymbolKind::relay_coil ? " relay" : "");
    }
    if (kind == SymbolKind::winding)
        return winding_name(rest_of(element));
    int of_owner = 0;
    for (const Link& l : circuits.graph.links)
        of_owner += l.kind == LinkKind::part && l.owner == link.owner ? 1 : 0;
    std::string words = of_owner == 1 ? spaced(link.owner) : spaced(rest_of(element));
    if (kind == SymbolKind::source)
        words = supply_volts(model);
    if (kind == SymbolKind::transformer_winding)
        words += " " + (is_secondary(circuits, link) ? std::string("24 V") : supply_volts(model));
    if (kind == SymbolKind::fuse)
        words += rating_of(model, link.element);
    if (kind == SymbolKind::valve_coil)
        words = "gas " + spaced(link.owner);
    return words;
}

} // namespace lightoff::diagram
