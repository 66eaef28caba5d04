// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/model.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

/// Places that are no terminals: taps, ports, holes, joints, shafts.
namespace lightoff::instruments {

enum class Spot : std::uint8_t {
    room, ///< the air where the furnace stands; an open port
    inlet_tap,
    manifold_tap,
    hose_tee_inducer, ///< in the hose, on the inducer's side
    hose_tee_switch,  ///< in the hose, on the pressure switch's side
    vent_connector,
    return_static, ///< between filter and cabinet
    supply_static, ///< before the coil
    return_duct,
    supply_duct,   ///< out of sight of the exchanger
    supply_plenum, ///< in its sight: a probe reads high by radiation
    living_room,
    outdoors,
    burner_compartment,
    blower_motor_shell,
    inducer_motor_shell,
    transformer_case,
    gas_cock,
    gas_union, ///< the joint between cock and valve
    gas_valve,
    blower_wheel,
    blower_shaft,
    inducer_shaft,
    count
};

/// Bits: what can be put to a spot.
inline constexpr std::uint8_t kTakesPressure = 1;
inline constexpr std::uint8_t kTakesTemperature = 2;
inline constexpr std::uint8_t kTakesFlueGas = 4;
inline constexpr std::uint8_t kTakesSniffing = 8;
inline constexpr std::uint8_t kTakesSolution = 16;
inline constexpr std::uint8_t kTakesTachometer = 32;

struct SpotRow {
    Spot spot = Spot::room;
    std::string_view id;                                          ///< "inlet-tap"
    std::string_view title;                                       ///< for people
    furnace::Place::Where where = furnace::Place::Where::outside; ///< which door is in the way
    std::uint8_t takes = 0;
};

/// By the enumeration.
const SpotRow& spot_row(Spot spot);
/// Every spot, in the order of the enumeration.
std::vector<SpotRow> spots();
/// Spot::count if there is none of this id.
Spot find_spot(std::string_view id);

} // namespace lightoff::instruments
