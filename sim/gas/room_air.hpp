// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::gas {

/// Raw gas and carbon monoxide in the air of the room that the appliance stands in, volume fractions 0..1.
struct RoomAir {
    double raw_gas_fraction = 0.0;
    double co_fraction = 0.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("raw_gas_fraction", "1", self.raw_gas_fraction);
        visit("co_fraction", "1", self.co_fraction);
    }
};

/// One step of a well-mixed room with clean outdoor air: V dx/dt = source - n V x, n the air change per
/// second, by implicit Euler (n dt is about 1e-5, where it equals the exact solution to 1e-10). Leaves out
/// layering: gas under a ceiling or near the leak is richer than this mean.
inline void step_room_air(RoomAir& air, double volume_m3, double air_changes_per_s, double raw_gas_m3_s,
                          double co_m3_s, double dt_s) {
    const double keep = 1.0 / (1.0 + air_changes_per_s * dt_s);
    const double per_volume = dt_s / volume_m3;
    air.raw_gas_fraction = (air.raw_gas_fraction + raw_gas_m3_s * per_volume) * keep;
    air.co_fraction = (air.co_fraction + co_m3_s * per_volume) * keep;
}

} // namespace lightoff::gas
