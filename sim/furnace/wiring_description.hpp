// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <vector>

/// The wiring of an appliance as people write it down. `build_wiring` (wiring.hpp) checks it and makes
/// the network from it. The structs mirror the JSON file one to one.
///
/// Places: a terminal `board.R` is two nodes, `board.R.pin` (what the device has) and `board.R.lug`
/// (what the wire ends in), with a joint between them, so that unplugging, a burnt terminal and a meter
/// in series are one mechanism. Wires join lugs, parts join pins; a bare terminal name means the one
/// that fits. Any other place that a wire or part names is a node inside a part.
namespace lightoff::furnace {

struct TerminalDescription {
    std::string name; ///< "part.terminal"
    std::string pin;  ///< node that the pin is (a track on a board); empty: a node of its own
};

struct WireDescription {
    std::string name;
    std::string from;
    std::string to;
    std::string colour;
    int awg = 18;
    double length_m = 0.0;
};

/// Wires that run side by side: between each two of them there is capacitance.
struct CableDescription {
    std::string name;
    std::vector<std::string> wires;
    double farad_per_m = 0.0;
    double length_m = 0.0;
};

enum class PartKind { resistor, fuse, coil, capacitor, contact, source, winding, igniter, flame };

/// An element inside a part. Which numbers count depends on the kind.
struct PartDescription {
    PartKind kind = PartKind::resistor;
    std::string name;
    std::string from;
    std::string to;
    double ohm = 0.0;
    double henry = 0.0;
    double farad = 0.0;
    double ac_v = 0.0;
    double dc_v = 0.0;
    double rating_a = 0.0;       ///< fuse
    double pull_in_v = 0.0;      ///< coil
    double drop_out_v = 0.0;     ///< coil
    double travel_s = 0.0;       ///< coil: armature
    std::string switch_name;     ///< contact
    bool closed_at_rest = false; ///< contact: closed while its switch is not made
    std::string core;            ///< winding
    bool start_axis = false;     ///< winding of a motor: on the start winding's axis
    double turns = 0.0;          ///< winding
    double leakage_ohm = 0.0;    ///< winding
    std::string thermal_group; ///< copper that warms together: "blower_motor", "inducer_motor", "transformer"
};

struct TransformerCoreDescription {
    std::string name;
    double magnetising_ohm = 0.0;
    double iron_loss_ohm = 0.0;
};

struct MotorCoreDescription {
    std::string name; ///< "blower_motor", "inducer_motor"
    double magnetising_ohm = 0.0;
    double rotor_ohm = 0.0;
    double rotor_reactance_ohm = 0.0;
    double iron_loss_ohm = 0.0;
    double synchronous_rad_s = 0.0;
};

/// What makes a switch: a hand, a part of the furnace, a driver of the board, or the armature of a coil.
struct SwitchDescription {
    std::string name;
    std::string driven_by; ///< one of switch_drivers(), or "board" or "relay"
    std::string detail;    ///< board: name of the output; relay: name of the coil
};

struct WiringDescription {
    double stray_farad = 0.0;
    double stray_ohm = 0.0;
    double joint_ohm = 0.0;
    std::vector<SwitchDescription> switches;
    std::vector<std::string> nodes; ///< nodes inside parts: tracks, winding ends, sheet metal
    std::vector<TerminalDescription> terminals;
    std::vector<WireDescription> wires;
    std::vector<CableDescription> cables;
    std::vector<TransformerCoreDescription> transformer_cores;
    std::vector<MotorCoreDescription> motor_cores;
    std::vector<PartDescription> parts;
    std::string common;            ///< node that 24 V is measured against, "board.C"
    std::string gas_valve_coil;    ///< coil whose armature is the gas valve
    std::string flame_current;     ///< resistor whose mean current is the flame current
    std::string call_wire;         ///< wire whose current heats an anticipator; may be empty
    std::string thermostat_supply; ///< node that feeds the thermostat's own electronics; may be empty
};

} // namespace lightoff::furnace
