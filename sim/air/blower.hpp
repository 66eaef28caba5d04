// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

#include "units/fan.hpp"

namespace lightoff::air {

struct BlowerParams {
    units::FanCurve fan;
    double rotor_inertia_kg_m2 = 0.0; ///< wheel and rotor
    double bearing_drag_nm = 0.0;
    double unbalance_kg_m = 0.0;         ///< left over from making
    double packing_unbalance_kg_m = 0.0; ///< of a fully packed wheel, whose dirt is never even
    double shaken_mass_kg = 0.0;         ///< blower module on its mounts
};

/// How the blower is.
struct BlowerCondition {
    double wheel_packing = 0.0;         ///< dirt in the cups of the blades, 0 clean to 1 full
    double wheel_slip = 0.0;            ///< loose on the shaft: part of the speed lost, 0 to 1
    double bearing_drag_added_nm = 0.0; ///< dry bearing; 100 N m is a seized one
    double added_unbalance_kg_m = 0.0;  ///< lost weight, bent wheel
    std::uint64_t removed = 0;          ///< 1: module out on the floor

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("wheel_packing", "", self.wheel_packing);
        visit("wheel_slip", "", self.wheel_slip);
        visit("bearing_drag_added", "N m", self.bearing_drag_added_nm);
        visit("added_unbalance", "kg m", self.added_unbalance_kg_m);
        visit("removed", "", self.removed);
    }
};

struct BlowerState {
    double speed_rad_s = 0.0; ///< motor
    double angle_rad = 0.0;   ///< wheel, 0 to 2 pi

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("speed", "rad/s", self.speed_rad_s);
        visit("angle", "rad", self.angle_rad);
    }
};

/// Speed of the wheel, rad/s.
inline double wheel_speed_rad_s(const BlowerCondition& condition, const BlowerState& state) {
    return state.speed_rad_s * (1.0 - condition.wheel_slip);
}

/// What packed cups leave of the wheel: shallow blades move less and push less (teaching values: a full
/// wheel keeps 45 % of its flow capacity and 50 % of its pressure).
inline units::WheelWear packed_wheel(double packing) {
    return {1.0 - 0.55 * packing, 1.0 - 0.50 * packing};
}

} // namespace lightoff::air
