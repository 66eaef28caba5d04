// SPDX-License-Identifier: MIT
#pragma once
#include "air/air.hpp"
#include "combustion/combustion.hpp"
#include "control/board.hpp"
#include "control/thermostat.hpp"
#include "draft/draft.hpp"
#include "electrical/fuse.hpp"
#include "electrical/relay.hpp"
#include "furnace/condition.hpp"
#include "gas/gas.hpp"
#include "heat/heat.hpp"

#include <array>
#include <cstdint>

namespace lightoff::furnace {

inline constexpr int kMaxFuses = 2;

/// Electrical power that becomes heat or motion, W; held between the ticks in which it is worked out.
struct Power {
    double blower_electrical_w = 0.0;
    double blower_loss_w = 0.0; ///< the part that warms winding, rotor and iron
    double inducer_electrical_w = 0.0;
    double inducer_loss_w = 0.0;
    double transformer_loss_w = 0.0;
    double igniter_w = 0.0;
    double flame_current_a = 0.0; ///< mean, as the board's sense resistor carries it

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("blower_electrical", "W", self.blower_electrical_w);
        visit("blower_loss", "W", self.blower_loss_w);
        visit("inducer_electrical", "W", self.inducer_electrical_w);
        visit("inducer_loss", "W", self.inducer_loss_w);
        visit("transformer_loss", "W", self.transformer_loss_w);
        visit("igniter", "W", self.igniter_w);
        visit("flame_current", "A", self.flame_current_a);
    }
};

/// What each room gave in the last step: what the other rooms take in the next one, and what a person
/// or an instrument can notice. No voltages: those follow from the network whenever they are asked for.
struct Signals {
    draft::Outputs draft;
    gas::Outputs gas;
    combustion::Outputs combustion;
    air::Outputs air;
    heat::Outputs heat;
    Power power;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("draft", self.draft);
        visit("gas", self.gas);
        visit("combustion", self.combustion);
        visit("air", self.air);
        visit("heat", self.heat);
        visit("power", self.power);
    }
};

/// What the network sees of the moving, glowing and burning parts.
struct NetworkPorts {
    double blower_rad_s = 0.0;
    double inducer_rad_s = 0.0;
    double igniter_ohm = 0.0;
    double rod_flame = 0.0; ///< strength of the flame at the rod times the part of the rod in it

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("blower_speed", "rad/s", self.blower_rad_s);
        visit("inducer_speed", "rad/s", self.inducer_rad_s);
        visit("igniter_resistance", "ohm", self.igniter_ohm);
        visit("rod_flame", "", self.rod_flame);
    }
};

struct State {
    std::array<electrical::RelayState, kMaxRelays> relays{};
    std::array<electrical::FuseState, kMaxFuses> fuses{};
    draft::State draft;
    gas::State gas;
    combustion::State combustion;
    air::State air;
    heat::State heat;
    control::BoardState board;
    std::uint32_t armatures_struck = 0; ///< bits of relays that struck a stop in the last tick: their clicks
    control::ThermostatState thermostat;
    std::uint16_t thermostat_heat_closed = 0;
    std::uint16_t thermostat_fan_closed = 0;
    std::uint16_t board_outputs_before = 0; ///< a driver that has just changed moves an armature in this tick
    std::uint16_t ticks_since_power = 0;    ///< since Power was worked out
    Signals signals;
    NetworkPorts held_ports; ///< what the last tick solved the network with: see held_ports()

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("relays", "", self.relays);
        visit("fuses", "", self.fuses);
        visit("draft", self.draft);
        visit("gas", self.gas);
        visit("combustion", self.combustion);
        visit("air", self.air);
        visit("heat", self.heat);
        visit("board", self.board);
        visit("armatures_struck", "", self.armatures_struck);
        visit("thermostat", self.thermostat);
        visit("thermostat_heat_closed", "", self.thermostat_heat_closed);
        visit("thermostat_fan_closed", "", self.thermostat_fan_closed);
        visit("board_outputs_before", "", self.board_outputs_before);
        visit("ticks_since_power", "ticks", self.ticks_since_power);
        visit("signals", self.signals);
        visit("held_ports", self.held_ports);
    }
};

} // namespace lightoff::furnace
