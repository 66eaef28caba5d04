// SPDX-License-Identifier: MIT
#pragma once
#include "air/blower.hpp"
#include "air/ducts.hpp"

/// The house air: blower wheel and rotor, return, filter, exchanger, coil, supply.
namespace lightoff::air {

struct Params {
    BlowerParams blower;
    DuctParams ducts;
};

struct Condition {
    BlowerCondition blower;
    DuctCondition ducts;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("blower", self.blower);
        visit("ducts", self.ducts);
    }
};

struct State {
    BlowerState blower;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("blower", self.blower);
    }
};

struct Inputs {
    double motor_torque_nm = 0.0;         ///< blower motor, 0 or more
    double motor_torque_slope_nm_s = 0.0; ///< its derivative by speed
    double return_density_kg_m3 = 0.0;    ///< also at the wheel
    double supply_density_kg_m3 = 0.0;    ///< behind the exchanger
    bool blower_door_on = true;
    bool filter_present = true;
};

/// Static pressures are over the room's: the return's is negative.
struct Outputs {
    double flow_m3_s = 0.0; ///< at the wheel, return density
    double flow_kg_s = 0.0;
    double return_flow_kg_s = 0.0;    ///< through the filter; the rest came in at the open door
    double register_flow_kg_s = 0.0;  ///< into the rooms; the rest left by the supply leak
    double return_static_pa = 0.0;    ///< between filter and cabinet
    double supply_static_pa = 0.0;    ///< before the coil
    double external_static_pa = 0.0;  ///< supply minus return: magnitudes add
    double exchanger_static_pa = 0.0; ///< mean around the exchanger
    double blower_speed_rad_s = 0.0;  ///< of the motor
    double wheel_speed_rad_s = 0.0;
    double shaft_power_w = 0.0; ///< asked by wheel and bearings
    double air_power_w = 0.0;   ///< flow times the blower's pressure rise
    double shake_m_s = 0.0;     ///< peak velocity of the blower module

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("flow", "m3/s", self.flow_m3_s);
        visit("flow_mass", "kg/s", self.flow_kg_s);
        visit("return_flow", "kg/s", self.return_flow_kg_s);
        visit("register_flow", "kg/s", self.register_flow_kg_s);
        visit("return_static", "Pa", self.return_static_pa);
        visit("supply_static", "Pa", self.supply_static_pa);
        visit("external_static", "Pa", self.external_static_pa);
        visit("exchanger_static", "Pa", self.exchanger_static_pa);
        visit("blower_speed", "rad/s", self.blower_speed_rad_s);
        visit("wheel_speed", "rad/s", self.wheel_speed_rad_s);
        visit("shaft_power", "W", self.shaft_power_w);
        visit("air_power", "W", self.air_power_w);
        visit("shake", "m/s", self.shake_m_s);
    }
};

/// One step: solves the ducts at the wheel's present speed, then moves the rotor.
/// `dt_s` above 0, meant for 0.01 and 0.05. A removed module stands still and moves nothing.
Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s);

/// Throws std::invalid_argument with a sentence naming the value if a profile cannot be stepped.
void check(const Params& params);

} // namespace lightoff::air
