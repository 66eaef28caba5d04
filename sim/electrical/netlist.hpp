// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/motor_core.hpp"
#include "units/complex.hpp"
#include <cstdint>
#include <string>
#include <vector>

/// The wiring of an appliance as one list of nodes and elements, built once and never changed.
/// Everything that happens to it later (switches, wear, leads of a meter) is in network_inputs.hpp.
namespace lightoff::electrical {

using units::Complex;

inline constexpr int kMaxNodes = 192; ///< field nodes and earth included
inline constexpr int kMaxElements = 256;
inline constexpr int kMaxSwitches = 64;
inline constexpr int kMaxSources = 4;
inline constexpr int kMaxThermalGroups = 8;
inline constexpr int kMaxPorts = 8;
inline constexpr int kMaxMotors = 4;
inline constexpr int kMaxSenses = 48;
inline constexpr int kEarth = 0; ///< the reference node

enum class ElementKind : std::uint8_t {
    resistor, ///< conductor, joint, heater, sense resistor
    fuse,     ///< a resistor whose melting law is in fuse.hpp
    coil,     ///< resistance and inductance in series
    capacitor,
    contact, ///< closed or open by a switch bit
    source,  ///< AC and DC electromotive force behind an impedance
    winding, ///< turns on an axis of a core, behind resistance and leakage reactance
    igniter, ///< its resistance is an input of every tick: a port
    flame    ///< rectifying flame between rod tip (a) and burner (b): a port
};

/// One element between nodes a and b. Positive current flows from a through the element to b.
struct Element {
    ElementKind kind = ElementKind::resistor;
    bool normally_closed = false; ///< contact: closed while its switch bit is 0
    int a = 0;
    int b = 0;
    int field = -1;         ///< winding: node whose voltage is the EMF of one turn
    int switch_bit = -1;    ///< contact
    int source = -1;        ///< source: index into NetworkInputs::source_factor
    int thermal_group = -1; ///< copper follows NetworkInputs::group_temperature_k of this index
    int port = -1;          ///< igniter, flame
    double ohm = 0.0;       ///< resistance at 20 C; contact: closed
    double reactance_ohm = 0.0;
    double farad = 0.0;
    double open_ohm = 0.0;        ///< contact: leakage when open; capacitor: insulation resistance
    double turns = 0.0;           ///< relative to a winding with 1
    double ac_v = 0.0;            ///< source: r.m.s. EMF that drives current out of a (phase 0)
    double ac_quadrature_v = 0.0; ///< source: the part of it that leads by 90 degrees
    double dc_v = 0.0;
};

/// Capacitance and leakage of a node to earth: no node is without.
struct Stray {
    double farad = 3e-12; // a few pF for a terminal and its lead; teaching value
    double ohm = 20e9;    // clean insulation; teaching value
};

/// Iron with one axis (transformer) or two (motor). The voltage of a field node is the EMF per turn.
struct Core {
    int field_m = 0;
    int field_a = 0; ///< motor only, else 0
    int motor = -1;  ///< index into Netlist::motors, else -1
    double magnetising_ohm =
        0.0;                    ///< transformer: reactance of a one-turn winding; a motor has it in MotorCore
    double iron_loss_ohm = 0.0; ///< in parallel, each axis
};

enum class PortKind : std::uint8_t { motor_main, motor_start, igniter, flame };

/// A branch that is left out of the reduced network because its admittance changes every tick.
struct Port {
    PortKind kind = PortKind::igniter;
    int a = 0;
    int b = 0;
    int index = 0; ///< motor: index of the motor (main, then start, stand side by side); else the element
};

/// A quantity wanted in every tick.
struct Sense {
    int element = -1; ///< current from a to b of this element; -1: voltage of node a against node b
    int a = 0;
    int b = 0;
};

/// Made by NetlistBuilder only; then constant.
struct Netlist {
    std::vector<Stray> strays;           ///< by node; [0] unused
    std::vector<std::string> node_names; ///< [0] is "earth"
    std::vector<std::uint8_t> is_field;  ///< by node: not a place that can be touched
    std::vector<Element> elements;
    std::vector<std::string> element_names;
    std::vector<Core> cores;
    std::vector<std::string> core_names;
    std::vector<MotorCore> motors;
    std::vector<Port> ports;
    std::vector<Sense> senses;
    std::vector<std::string> sense_names;
    std::vector<std::string> switch_names;
    std::vector<std::string> thermal_group_names;
    int source_count = 0;

    [[nodiscard]] int node_count() const { return static_cast<int>(node_names.size()); }
    [[nodiscard]] int element_count() const { return static_cast<int>(elements.size()); }
    [[nodiscard]] int port_count() const { return static_cast<int>(ports.size()); }
    [[nodiscard]] int sense_count() const { return static_cast<int>(senses.size()); }

    /// Index by name; std::invalid_argument if there is none.
    [[nodiscard]] int node(const std::string& name) const;
    [[nodiscard]] int element(const std::string& name) const;
    [[nodiscard]] int sense(const std::string& name) const;
    [[nodiscard]] int switch_bit(const std::string& name) const;
};

/// Throws std::invalid_argument naming the first touchable node that no chain of elements ties to
/// earth in the netlist as drawn (contacts count as closed, a core ties nothing to anything).
void require_no_islands(const Netlist& netlist);

} // namespace lightoff::electrical
