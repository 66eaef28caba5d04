// SPDX-License-Identifier: MIT
#pragma once
#include "units/fan.hpp"
#include "units/rotor.hpp"

namespace lightoff::draft {

struct InducerParams {
    units::FanCurve fan;              ///< its pressure slope must not be positive
    double rotor_inertia_kg_m2 = 0.0; ///< wheel and rotor
    double bearing_drag_nm = 0.0;
    double unbalance_kg_m = 0.0; ///< left over from making
    double shaken_mass_kg = 0.0; ///< motor and housing on their mounts
};

/// How the inducer is.
struct InducerCondition {
    double wheel_effectiveness = 1.0;   ///< work that eaten blades still do, 0 to 1: pressure and torque
    double wheel_slip = 0.0;            ///< loose on the shaft: part of the speed lost, 0 to 1
    double bearing_drag_added_nm = 0.0; ///< dry bearing; 10 N m is a seized one
    double added_unbalance_kg_m = 0.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("wheel_effectiveness", "", self.wheel_effectiveness);
        visit("wheel_slip", "", self.wheel_slip);
        visit("bearing_drag_added", "N m", self.bearing_drag_added_nm);
        visit("added_unbalance", "kg m", self.added_unbalance_kg_m);
    }
};

struct InducerState {
    double speed_rad_s = 0.0; ///< motor
    double angle_rad = 0.0;   ///< wheel, 0 to 2 pi

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("speed", "rad/s", self.speed_rad_s);
        visit("angle", "rad", self.angle_rad);
    }
};

/// Speed of the wheel, rad/s.
inline double wheel_speed_rad_s(const InducerCondition& condition, const InducerState& state) {
    return state.speed_rad_s * (1.0 - condition.wheel_slip);
}

/// The fan at the wheel's present speed in gas of a given density.
inline units::FanNow inducer_fan(const InducerParams& params, const InducerCondition& condition,
                                 const InducerState& state, double gas_density_kg_m3) {
    const units::WheelWear wear{1.0, condition.wheel_effectiveness};
    return units::fan_at(params.fan, wheel_speed_rad_s(condition, state), gas_density_kg_m3, wear);
}

} // namespace lightoff::draft
