// SPDX-License-Identifier: MIT
#pragma once
#include "air/air.hpp"
#include "combustion/combustion.hpp"
#include "control/board_description.hpp"
#include "control/thermostat.hpp"
#include "draft/draft.hpp"
#include "files/reader.hpp"
#include "gas/gas.hpp"
#include "heat/heat.hpp"

/// One reader for the section of an equipment file that each room has.
namespace lightoff::files {

air::Params read_air(const Object& section);
draft::Params read_draft(const Object& section);
combustion::Fuel read_fuel(const Object& section);
combustion::Params read_burners(const Object& section, const combustion::Fuel& fuel);
/// `fuel` gives the specific gravity; the orifices say how many burners there are.
gas::Params read_gas(const Object& section, const combustion::Fuel& fuel);
heat::Params read_heat(const Object& section);
control::BoardDescription read_board(const Object& section);
control::ThermostatDescription read_thermostat(const Object& section);

} // namespace lightoff::files
