// SPDX-License-Identifier: MIT
#pragma once
#include "gas/gas.hpp"
#include "gas/gas_path.hpp"
#include "units/convert.hpp"

namespace lightoff::test {

/// The gas train of the reference furnace: 7.1 in. w.c. static, four #45 orifices, 3.5 in. manifold.
inline gas::Params reference_gas() {
    using namespace units;
    const double rated = cfh_to_m3s(76.1);
    const auto loss = [&](double inwc) { return gas::square_law_resistance(inwc_to_pa(inwc), rated); };
    gas::Params p;
    p.supply_static_pa = inwc_to_pa(7.1);
    p.meter_resistance = loss(0.04);
    p.pipe_resistance = loss(0.05);
    p.cock_resistance = loss(0.01);
    p.inlet_pipe_volume_m3 = 0.0002;
    p.specific_gravity = 0.60;
    p.regulator_set_pa = inwc_to_pa(3.5);
    p.regulator_inlet_pa = inwc_to_pa(7.0);
    p.regulator_slope = 0.02;
    p.valve_conductance = gas::square_law_conductance(inwc_to_pa(0.70), rated);
    p.valve_opening_s = 0.6;
    p.valve_closing_s = 0.15;
    p.orifice_diameter_m.fill(inch_to_m(0.082));
    p.tap_diameter_m = inch_to_m(0.060);
    p.meter_dial_m3 = 2.0 * cubic_metres_per_cubic_foot;
    p.room_volume_m3 = 60.0;
    p.burner_count = 4;
    return p;
}

} // namespace lightoff::test
