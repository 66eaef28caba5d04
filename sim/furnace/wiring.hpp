// SPDX-License-Identifier: MIT
#pragma once
#include "control/board.hpp"
#include "electrical/fuse.hpp"
#include "electrical/netlist.hpp"
#include "electrical/relay.hpp"
#include "furnace/condition.hpp"
#include "furnace/description_error.hpp"
#include "furnace/wiring_description.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::furnace {

/// Who moves a switch of the wiring.
enum class Driver : std::uint8_t {
    breaker,
    disconnect,
    door_switch,
    thermostat_heat,
    thermostat_fan,
    limit,
    rollout,
    pressure_switch,
    blower_overload,
    inducer_overload,
    board,
    relay
};

/// The place of what moves a switch in a word that has one bit for each: the drivers before the board, then
/// the board's outputs, then the relays.
constexpr int driven_bit(Driver driver, int index) {
    constexpr int board = static_cast<int>(Driver::board);
    constexpr int outputs = static_cast<int>(control::kMaxOutputs);
    if (driver == Driver::relay)
        return board + outputs + index;
    return driver == Driver::board ? board + index : static_cast<int>(driver);
}
inline constexpr std::size_t kDriverCount = 12;
inline constexpr std::size_t kDrivenBits = static_cast<std::size_t>(driven_bit(Driver::relay, kMaxRelays));

struct SwitchBinding {
    Driver driver = Driver::breaker;
    int index = 0; ///< board: output; relay: place in Wiring::relays
};

/// A coil with its armature.
struct RelayBinding {
    std::string name;
    electrical::RelayParams params;
    int coil_sense = 0; ///< current through the coil: an open one pulls nothing, whatever stands across it
    double coil_ohm =
        0.0; ///< impedance of the sound coil; times the current: the volts that its pull is like
    std::uint64_t switches = 0; ///< bits of the switches that it makes
};

/// A winding whose copper loss warms a part.
struct LossBinding {
    int sense = 0; ///< current
    int thermal_group = 0;
};

/// What a transformer's iron turns into heat: volts per turn, squared, over ohms.
struct IronBinding {
    int sense = 0;
    double ohm = 0.0;
};

struct FuseBinding {
    int element = 0;
    int sense = 0; ///< current
    electrical::FuseParams params;
    double tick_share = 0.0; ///< of the way to the settled heat, in a tick and in a substep
    double substep_share = 0.0;
};

/// Where a wire's end sits on a pin. Taking it off parts the joint between the two.
struct Terminal {
    std::string name;
    int pin = 0;   ///< node, on the part's side
    int lug = 0;   ///< node, on the wire's side
    int joint = 0; ///< element

    /// Whether it belongs to a place by name ("blower", "igniter_plug").
    [[nodiscard]] bool is_at(std::string_view place) const {
        return name.size() > place.size() && name[place.size()] == '.' &&
               name.compare(0, place.size(), place) == 0;
    }
};

/// The network of an appliance, and what of it belongs to which part of the furnace.
struct Wiring {
    electrical::Netlist netlist;
    std::vector<Terminal> terminals;       ///< in the order of the equipment file
    std::vector<int> wires;                ///< elements that are conductors to be seen and clamped
    std::vector<std::string> wire_colours; ///< of their insulation, in the same order
    std::vector<SwitchBinding> switches;   ///< by switch bit
    std::array<std::uint64_t, kDrivenBits> switches_of{}; ///< by driven_bit: the switch bits that it makes
    std::vector<RelayBinding> relays;
    std::vector<FuseBinding> fuses;
    std::vector<LossBinding> losses;
    std::vector<IronBinding> irons;
    std::vector<int> board_inputs; ///< senses (volts), in the order of the board's inputs; or kFlameInput
    int tick_senses = 0;           ///< the first of the netlist's senses, which every tick needs
    int board_supply = 0;          ///< sense
    int flame_sense = -1;          ///< current; -1: no flame rectification
    int thermostat_supply = -1;    ///< sense, volts; -1: not fed by the furnace
    int call_current = -1;         ///< sense, of the wire that carries the call; -1: not wanted
    int gas_valve = -1;            ///< place in relays
    int blower_motor = -1;         ///< place in netlist.motors; -1: none
    int inducer_motor = -1;
    int igniter_port = -1;
    int flame_port = -1;
    int common = 0;                                                 ///< node
    std::array<int, electrical::kMaxThermalGroups> heat_of_group{}; ///< ThermalGroup by group index
    std::map<std::string, int, std::less<>> aliases; ///< names of places that are not node names themselves

    /// Node of a place: "board.R.pin", "board.R.lug", "board.R" (its pin), "cabinet.metal"; -1 if none.
    [[nodiscard]] int find_place(std::string_view name) const;
    /// The element that joins pin and lug of a terminal ("board.R"), for Inputs::parted; -1 if there is none.
    [[nodiscard]] int joint_of_terminal(std::string_view terminal) const;
};

inline constexpr int kFlameInput = -1; ///< an input that takes the flame current

/// Copper that warms together with a node of the heat room.
enum class ThermalGroup : int { blower_motor = 0, inducer_motor = 1, transformer = 2 };

/// Throws DescriptionError for a place, switch or core that is nowhere declared, a name used twice, a value
/// out of range, an unknown driver, a touchable place that nothing ties to earth, a full table.
Wiring build_wiring(const WiringDescription& description, const control::Board& board);

} // namespace lightoff::furnace
