// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/netlist.hpp"
#include <string>

namespace lightoff::electrical {

enum class Rest : std::uint8_t { open, closed }; ///< a contact while its switch bit is 0
enum class Axis : std::uint8_t { main, start };  ///< of a motor core; a transformer core has `main` only

/// Builds a Netlist. Every function gives back an index and throws std::invalid_argument, with the
/// name of the node or element, when a name is empty or taken, a node does not exist, both ends are
/// one node, a value is out of range, or a table is full.
class NetlistBuilder {
public:
    NetlistBuilder();

    int node(const std::string& name, Stray stray = {});
    int switch_bit(const std::string& name);
    int thermal_group(const std::string& name);

    int resistor(const std::string& name, int a, int b, double ohm, int thermal_group = -1);
    int fuse(const std::string& name, int a, int b, double ohm);
    int coil(const std::string& name, int a, int b, double ohm, double henry, int thermal_group = -1);
    int capacitor(const std::string& name, int a, int b, double farad, double insulation_ohm = 1e11);
    int contact(const std::string& name, int a, int b, int switch_bit, Rest rest, double closed_ohm = 0.005,
                double open_ohm = 1e11);
    /// EMF that drives current out of a, returning at b.
    int source(const std::string& name, int a, int b, Complex ac_rms_v, double dc_v, double ohm,
               double reactance_ohm = 0.0);
    int igniter(const std::string& name, int a, int b);
    int flame(const std::string& name, int rod_tip, int burner);

    /// Ohms as seen from a winding of one turn.
    int transformer_core(const std::string& name, double magnetising_ohm, double iron_loss_ohm);
    int motor_core(const std::string& name, const MotorCore& core);
    int winding(const std::string& name, int p, int q, int core, Axis axis, double turns, double ohm,
                double leakage_ohm, int thermal_group = -1);

    int sense_voltage(const std::string& name, int a, int b);
    int sense_current(const std::string& name, int element);
    [[nodiscard]] int sense_count() const { return netlist_.sense_count(); }

    /// Index of what was added before, by name.
    [[nodiscard]] int find_node(const std::string& name) const { return netlist_.node(name); }
    [[nodiscard]] int find_element(const std::string& name) const { return netlist_.element(name); }

    /// The finished netlist; the builder is empty afterwards.
    Netlist build();

private:
    int add(const std::string& name, Element element);
    int field_node(const std::string& name);
    int add_sense(const std::string& name, Sense sense);
    void add_port(const std::string& name, Port port);
    [[nodiscard]] bool is_node(int node) const { return node >= 0 && node < netlist_.node_count(); }

    Netlist netlist_;
};

} // namespace lightoff::electrical
