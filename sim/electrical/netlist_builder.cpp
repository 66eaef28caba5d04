// SPDX-License-Identifier: MIT
#include "electrical/netlist_builder.hpp"
#include "units/constants.hpp"
#include "units/convert.hpp"
#include <algorithm>
#include <stdexcept>
#include <utility>

namespace lightoff::electrical {
namespace {

constexpr double kSmallestOhm = 1e-6;
constexpr double kLargestOhm = 1e15;

[[noreturn]] void refuse(const std::string& name, const std::string& why) {
    throw std::invalid_argument("\"" + name + "\": " + why);
}

void require_free_name(const std::vector<std::string>& names, const std::string& name, const char* what) {
    if (name.empty())
        throw std::invalid_argument(std::string("a ") + what + " has no name");
    if (std::find(names.begin(), names.end(), name) != names.end())
        refuse(name, std::string("another ") + what + " has this name");
}

void require_room(std::size_t used, int limit, const std::string& name, const char* what) {
    if (static_cast<int>(used) >= limit)
        refuse(name, "more than " + std::to_string(limit) + " " + what + " are not supported");
}

void require_range(const std::string& name, const char* what, double value, double low, double high) {
    if (!(value >= low && value <= high))
        refuse(name, std::string(what) + " is " + std::to_string(value) + ", allowed is " +
                         std::to_string(low) + " to " + std::to_string(high));
}

void require_ohm(const std::string& name, const char* what, double ohm) {
    require_range(name, what, ohm, kSmallestOhm, kLargestOhm);
}

void require_index(const std::string& name, const char* what, int index, std::size_t count) {
    if (index < 0 || index >= static_cast<int>(count))
        refuse(name, std::string("there is no ") + what + " with index " + std::to_string(index));
}

int last(std::size_t count) {
    return static_cast<int>(count) - 1;
}

} // namespace

NetlistBuilder::NetlistBuilder() {
    netlist_.node_names.emplace_back("earth");
    netlist_.strays.emplace_back();
    netlist_.is_field.push_back(0);
}

int NetlistBuilder::node(const std::string& name, Stray stray) {
    require_free_name(netlist_.node_names, name, "node");
    require_room(netlist_.node_names.size(), kMaxNodes, name, "nodes");
    require_range(name, "stray capacitance in farad", stray.farad, 0.0, 1e-6);
    require_ohm(name, "stray resistance in ohm", stray.ohm);
    netlist_.node_names.push_back(name);
    netlist_.strays.push_back(stray);
    netlist_.is_field.push_back(0);
    return last(netlist_.node_names.size());
}

int NetlistBuilder::field_node(const std::string& name) {
    const int index = node(name);
    netlist_.is_field.back() = 1;
    return index;
}

int NetlistBuilder::switch_bit(const std::string& name) {
    require_free_name(netlist_.switch_names, name, "switch");
    require_room(netlist_.switch_names.size(), kMaxSwitches, name, "switches");
    netlist_.switch_names.push_back(name);
    return last(netlist_.switch_names.size());
}

int NetlistBuilder::thermal_group(const std::string& name) {
    require_free_name(netlist_.thermal_group_names, name, "thermal group");
    require_room(netlist_.thermal_group_names.size(), kMaxThermalGroups, name, "thermal groups");
    netlist_.thermal_group_names.push_back(name);
    return last(netlist_.thermal_group_names.size());
}

int NetlistBuilder::add(const std::string& name, Element element) {
    require_free_name(netlist_.element_names, name, "element");
    require_room(netlist_.elements.size(), kMaxElements, name, "elements");
    for (const int end : {element.a, element.b})
        if (!is_node(end) || netlist_.is_field[static_cast<std::size_t>(end)] != 0)
            refuse(name, "there is no node with index " + std::to_string(end));
    if (element.a == element.b)
        refuse(name,
               "both ends are at node \"" + netlist_.node_names[static_cast<std::size_t>(element.a)] + "\"");
    if (element.thermal_group != -1)
        require_index(name, "thermal group", element.thermal_group, netlist_.thermal_group_names.size());
    netlist_.elements.push_back(element);
    netlist_.element_names.push_back(name);
    return last(netlist_.elements.size());
}

int NetlistBuilder::resistor(const std::string& name, int a, int b, double ohm, int thermal_group) {
    require_ohm(name, "resistance in ohm", ohm);
    return add(name,
               {.kind = ElementKind::resistor, .a = a, .b = b, .thermal_group = thermal_group, .ohm = ohm});
}

int NetlistBuilder::fuse(const std::string& name, int a, int b, double ohm) {
    require_ohm(name, "resistance in ohm", ohm);
    return add(name, {.kind = ElementKind::fuse, .a = a, .b = b, .ohm = ohm});
}

int NetlistBuilder::coil(const std::string& name, int a, int b, double ohm, double henry, int thermal_group) {
    require_ohm(name, "resistance in ohm", ohm);
    require_range(name, "inductance in henry", henry, 0.0, 1e4);
    return add(name, {.kind = ElementKind::coil,
                      .a = a,
                      .b = b,
                      .thermal_group = thermal_group,
                      .ohm = ohm,
                      .reactance_ohm = 2.0 * units::pi * units::line_frequency_hz * henry});
}

int NetlistBuilder::capacitor(const std::string& name, int a, int b, double farad, double insulation_ohm) {
    require_range(name, "capacitance in farad", farad, 0.0, 1.0);
    require_ohm(name, "insulation resistance in ohm", insulation_ohm);
    return add(name,
               {.kind = ElementKind::capacitor, .a = a, .b = b, .farad = farad, .open_ohm = insulation_ohm});
}

int NetlistBuilder::contact(const std::string& name, int a, int b, int switch_bit, Rest rest,
                            double closed_ohm, double open_ohm) {
    require_ohm(name, "closed resistance in ohm", closed_ohm);
    require_ohm(name, "open leakage in ohm", open_ohm);
    require_index(name, "switch", switch_bit, netlist_.switch_names.size());
    return add(name, {.kind = ElementKind::contact,
                      .normally_closed = rest == Rest::closed,
                      .a = a,
                      .b = b,
                      .switch_bit = switch_bit,
                      .ohm = closed_ohm,
                      .open_ohm = open_ohm});
}

int NetlistBuilder::source(const std::string& name, int a, int b, Complex ac_rms_v, double dc_v, double ohm,
                           double reactance_ohm) {
    require_ohm(name, "resistance in ohm", ohm);
    require_range(name, "reactance in ohm", reactance_ohm, 0.0, kLargestOhm);
    for (const double v : {ac_rms_v.re, ac_rms_v.im, dc_v})
        require_range(name, "EMF in volt", v, -1e4, 1e4);
    require_room(static_cast<std::size_t>(netlist_.source_count), kMaxSources, name, "sources");
    const int index = add(name, {.kind = ElementKind::source,
                                 .a = a,
                                 .b = b,
                                 .source = netlist_.source_count,
                                 .ohm = ohm,
                                 .reactance_ohm = reactance_ohm,
                                 .ac_v = ac_rms_v.re,
                                 .ac_quadrature_v = ac_rms_v.im,
                                 .dc_v = dc_v});
    ++netlist_.source_count;
    return index;
}

void NetlistBuilder::add_port(const std::string& name, Port port) {
    require_room(netlist_.ports.size(), kMaxPorts, name, "ports");
    netlist_.ports.push_back(port);
}

int NetlistBuilder::igniter(const std::string& name, int a, int b) {
    const int element =
        add(name, {.kind = ElementKind::igniter, .a = a, .b = b, .port = netlist_.port_count()});
    add_port(name, {PortKind::igniter, a, b, element});
    return element;
}

int NetlistBuilder::flame(const std::string& name, int rod_tip, int burner) {
    const int element =
        add(name, {.kind = ElementKind::flame, .a = rod_tip, .b = burner, .port = netlist_.port_count()});
    add_port(name, {PortKind::flame, rod_tip, burner, element});
    return element;
}

int NetlistBuilder::transformer_core(const std::string& name, double magnetising_ohm, double iron_loss_ohm) {
    require_free_name(netlist_.core_names, name, "core");
    require_ohm(name, "magnetising reactance in ohm", magnetising_ohm);
    require_ohm(name, "iron loss resistance in ohm", iron_loss_ohm);
    const int field = field_node(name + ".field");
    netlist_.cores.push_back(
        {.field_m = field, .magnetising_ohm = magnetising_ohm, .iron_loss_ohm = iron_loss_ohm});
    netlist_.core_names.push_back(name);
    return last(netlist_.cores.size());
}

int NetlistBuilder::motor_core(const std::string& name, const MotorCore& core) {
    require_free_name(netlist_.core_names, name, "core");
    require_room(netlist_.motors.size(), kMaxMotors, name, "motors");
    require_ohm(name, "magnetising reactance in ohm", core.magnetising_ohm);
    require_ohm(name, "rotor resistance in ohm", core.rotor_ohm);
    require_ohm(name, "rotor reactance in ohm", core.rotor_reactance_ohm);
    require_ohm(name, "iron loss resistance in ohm", core.iron_loss_ohm);
    require_range(name, "synchronous speed in rad/s", core.synchronous_rad_s, 1.0, 400.0);
    const int m = field_node(name + ".field_m");
    const int a = field_node(name + ".field_a");
    const int motor = static_cast<int>(netlist_.motors.size());
    add_port(name, {PortKind::motor_main, m, kEarth, motor});
    add_port(name, {PortKind::motor_start, a, kEarth, motor});
    netlist_.cores.push_back(
        {.field_m = m, .field_a = a, .motor = motor, .iron_loss_ohm = core.iron_loss_ohm});
    netlist_.motors.push_back(core);
    netlist_.core_names.push_back(name);
    return last(netlist_.cores.size());
}

int NetlistBuilder::winding(const std::string& name, int p, int q, int core, Axis axis, double turns,
                            double ohm, double leakage_ohm, int thermal_group) {
    require_index(name, "core", core, netlist_.cores.size());
    require_range(name, "turns (relative)", turns, 1e-3, 1e3);
    require_ohm(name, "resistance in ohm", ohm);
    require_range(name, "leakage reactance in ohm", leakage_ohm, 0.0, kLargestOhm);
    const Core& iron = netlist_.cores[static_cast<std::size_t>(core)];
    if (axis == Axis::start && iron.motor < 0)
        refuse(name, "a transformer core has one axis only");
    return add(name, {.kind = ElementKind::winding,
                      .a = p,
                      .b = q,
                      .field = axis == Axis::main ? iron.field_m : iron.field_a,
                      .thermal_group = thermal_group,
                      .ohm = ohm,
                      .reactance_ohm = leakage_ohm,
                      .turns = turns});
}

int NetlistBuilder::add_sense(const std::string& name, Sense sense) {
    require_free_name(netlist_.sense_names, name, "sense");
    require_room(netlist_.senses.size(), kMaxSenses, name, "senses");
    netlist_.senses.push_back(sense);
    netlist_.sense_names.push_back(name);
    return last(netlist_.senses.size());
}

int NetlistBuilder::sense_voltage(const std::string& name, int a, int b) {
    for (const int end : {a, b})
        require_index(name, "node", end, netlist_.node_names.size());
    return add_sense(name, {.element = -1, .a = a, .b = b});
}

int NetlistBuilder::sense_current(const std::string& name, int element) {
    require_index(name, "element", element, netlist_.elements.size());
    const Element& e = netlist_.elements[static_cast<std::size_t>(element)];
    return add_sense(name, {.element = element, .a = e.a, .b = e.b});
}

Netlist NetlistBuilder::build() {
    Netlist made = std::move(netlist_);
    *this = NetlistBuilder();
    return made;
}

} // namespace lightoff::electrical
