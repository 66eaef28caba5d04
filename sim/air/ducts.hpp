// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

#include "units/fan.hpp"

namespace lightoff::air {

/// The way of the house air, by the effective area of each piece: dp = m^2 / (2 density area^2).
/// units::effective_area_m2 gives it from a pressure drop at a known flow.
struct DuctParams {
    double return_duct_area_m2 = 0.0; ///< grilles and duct up to the filter
    double filter_area_m2 = 0.0;      ///< clean filter, outside the cabinet
    double cabinet_area_m2 = 0.0;     ///< from the return tap to the blower
    double exchanger_area_m2 = 0.0;   ///< around the heat exchanger
    double coil_area_m2 = 0.0;        ///< cooling coil in the supply plenum
    double supply_duct_area_m2 = 0.0;
    double registers_area_m2 = 0.0;
    double blower_door_area_m2 = 0.0; ///< opening left when the door is off
};

/// How the way is. Fractions are of the area blocked, 0 to 1; a piece is never tighter than 1 % open.
struct DuctCondition {
    double filter_loading = 1.0;     ///< pressure drop of the filter over that of a clean one, 1 or more
    double exchanger_blockage = 0.0; ///< lint on the air side
    double coil_blockage = 0.0;
    double registers_closed = 0.0;
    double supply_leak_m2 = 0.0; ///< effective opening between coil and registers, to the basement
    double return_leak_m2 = 0.0; ///< effective opening between grilles and filter, from the basement

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("filter_loading", "", self.filter_loading);
        visit("exchanger_blockage", "", self.exchanger_blockage);
        visit("coil_blockage", "", self.coil_blockage);
        visit("registers_closed", "", self.registers_closed);
        visit("supply_leak", "m2", self.supply_leak_m2);
        visit("return_leak", "m2", self.return_leak_m2);
    }
};

struct DuctDrive {
    double return_density_kg_m3 = 0.0;
    double supply_density_kg_m3 = 0.0;
    bool door_on = true;
    bool filter_present = true;
};

/// Flows (kg/s) and static pressures (Pa, over the room).
struct DuctFlow {
    double blower_kg_s = 0.0;
    double return_kg_s = 0.0;    ///< through return tap and filter; the rest comes in at the open door
    double registers_kg_s = 0.0; ///< the rest leaves by the supply leak
    double return_static_pa = 0.0;
    double supply_static_pa = 0.0;
    double exchanger_static_pa = 0.0; ///< mean around the exchanger
    double blower_rise_pa = 0.0;
};

/// Flow where the fan's curve meets the sum of the square-law drops, in closed form; with a curve that first
/// rises the branch right of the rise is taken. Parallel ways add by area. Leaves out the laminar part of a
/// filter's drop and the lift of warm air when the blower rests.
DuctFlow solve_ducts(const DuctParams& params, const DuctCondition& condition, const DuctDrive& drive,
                     const units::FanNow& fan);

} // namespace lightoff::air
