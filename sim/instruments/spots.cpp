// SPDX-License-Identifier: MIT
#include "instruments/spots.hpp"

#include <array>
#include <cstddef>

namespace lightoff::instruments {
namespace {

using Where = furnace::Place::Where;

constexpr std::uint8_t takes(int bits) {
    return static_cast<std::uint8_t>(bits);
}

constexpr std::array<SpotRow, static_cast<std::size_t>(Spot::count)> kSpots{{
    {Spot::room, "room", "air where the furnace stands; an open port", Where::outside,
     takes(kTakesPressure | kTakesTemperature | kTakesFlueGas | kTakesSniffing)},
    {Spot::inlet_tap, "inlet-tap", "inlet pressure tap of the gas valve", Where::burner_compartment,
     takes(kTakesPressure | kTakesSniffing | kTakesSolution)},
    {Spot::manifold_tap, "manifold-tap", "manifold pressure tap of the gas valve", Where::burner_compartment,
     takes(kTakesPressure | kTakesSniffing | kTakesSolution)},
    {Spot::hose_tee_inducer, "hose-tee-inducer", "tee in the hose, inducer side", Where::burner_compartment,
     takes(kTakesPressure)},
    {Spot::hose_tee_switch, "hose-tee-switch", "tee in the hose, pressure switch side",
     Where::burner_compartment, takes(kTakesPressure)},
    {Spot::vent_connector, "vent-connector", "test hole in the vent connector", Where::outside,
     takes(kTakesPressure | kTakesTemperature | kTakesFlueGas)},
    {Spot::return_static, "return-static", "static port between filter and cabinet", Where::outside,
     takes(kTakesPressure)},
    {Spot::supply_static, "supply-static", "static port before the coil", Where::outside,
     takes(kTakesPressure)},
    {Spot::return_duct, "return-duct", "return duct at the furnace", Where::outside,
     takes(kTakesTemperature)},
    {Spot::supply_duct, "supply-duct", "supply duct out of sight of the exchanger", Where::outside,
     takes(kTakesTemperature)},
    {Spot::supply_plenum, "supply-plenum", "supply plenum in sight of the exchanger", Where::outside,
     takes(kTakesTemperature)},
    {Spot::living_room, "living-room", "living room beside the thermostat", Where::living_room,
     takes(kTakesTemperature)},
    {Spot::outdoors, "outdoors", "outdoors in the shade", Where::outside, takes(kTakesTemperature)},
    {Spot::burner_compartment, "burner-compartment", "burner compartment", Where::burner_compartment,
     takes(kTakesTemperature | kTakesSniffing)},
    {Spot::blower_motor_shell, "blower-motor-shell", "shell of the blower motor", Where::blower_compartment,
     takes(kTakesTemperature)},
    {Spot::inducer_motor_shell, "inducer-motor-shell", "shell of the inducer motor",
     Where::burner_compartment, takes(kTakesTemperature)},
    {Spot::transformer_case, "transformer", "case of the transformer", Where::blower_compartment,
     takes(kTakesTemperature)},
    {Spot::gas_cock, "gas-cock", "gas cock and its joints", Where::outside,
     takes(kTakesSniffing | kTakesSolution)},
    {Spot::gas_union, "gas-union", "union between cock and gas valve", Where::outside,
     takes(kTakesSniffing | kTakesSolution)},
    {Spot::gas_valve, "gas-valve", "body and joints of the gas valve", Where::burner_compartment,
     takes(kTakesSniffing | kTakesSolution)},
    {Spot::blower_wheel, "blower-wheel", "blower wheel", Where::blower_compartment, takes(kTakesTachometer)},
    {Spot::blower_shaft, "blower-shaft", "shaft of the blower motor", Where::blower_compartment,
     takes(kTakesTachometer)},
    {Spot::inducer_shaft, "inducer-shaft", "shaft of the inducer motor", Where::burner_compartment,
     takes(kTakesTachometer)},
}};

constexpr bool rows_stand_in_order() {
    for (std::size_t i = 0; i < kSpots.size(); ++i)
        if (kSpots[i].spot != static_cast<Spot>(i))
            return false;
    return true;
}
static_assert(rows_stand_in_order());

} // namespace

const SpotRow& spot_row(Spot spot) {
    return kSpots[static_cast<std::size_t>(spot)];
}

std::vector<SpotRow> spots() {
    return {kSpots.begin(), kSpots.end()};
}

Spot find_spot(std::string_view id) {
    for (const SpotRow& row : kSpots)
        if (row.id == id)
            return row.spot;
    return Spot::count;
}

} // namespace lightoff::instruments
