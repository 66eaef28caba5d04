// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include "units/fan.hpp"

namespace lightoff::files {

/// A fan's curve, as both wheels of a furnace have one.
inline units::FanCurve read_fan(const Object& o) {
    units::FanCurve fan;
    fan.speed_rad_s = o.number("reference_speed", {100.0, 5000.0, "rpm"});
    fan.density_kg_m3 = o.number("reference_density", {0.3, 2.0, "kg_per_m3"});
    fan.shutoff_pa = o.number("shutoff_pressure", {1.0, 3000.0, "Pa"});
    fan.slope_pa_s_m3 = o.number("pressure_slope", {-1e6, 1e6, "Pa_s_per_m3"});
    fan.curvature_pa_s2_m6 = o.number("pressure_curvature", {0.0, 1e8, "Pa_s2_per_m6"});
    fan.shutoff_torque_nm = o.number("shutoff_torque", {0.0, 20.0, "Nm"});
    fan.torque_slope_nm_s_m3 = o.number("torque_slope", {0.0, 1e4, "Nm_s_per_m3"});
    fan.torque_curvature_nm_s2_m6 = o.number("torque_curvature", {0.0, 1e6, "Nm_s2_per_m6"});
    return fan;
}

} // namespace lightoff::files
