// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::heat {

/// Silicon carbide hot-surface igniter: one lump.
struct IgniterParams {
    double cold_ohm = 62.0;              // at 293 K; 40-90 is usual (common practice, no source)
    double floor_ohm = 28.0;             // what the resistance falls towards when very hot (teaching value)
    double softening_k = 200.0;          // rise at which half of the fall is done (teaching value)
    double area_m2 = 1.2e-3;             // glowing surface (teaching value)
    double emissivity = 0.88;            // silicon carbide, engineering tables; from memory
    double convection_w_m2_k = 60.0;     // in the draught of the burner opening (teaching value)
    double crack_differential_k = 150.0; // a crack that opened hot closes this much cooler (teaching value)
};

/// Resistance of the igniter, ohms, at `temperature_k`, `factor` times that of a new one (ageing):
///   R = factor * (floor + (cold - floor) * s/(s + T - 293 K)),  s = softening, for T >= 293 K.
/// It falls steadily as the element heats, as silicon carbide's does up to a bright glow.
/// Source: shape is ours; its ends are common practice (40-90 ohms cold, 3-4.5 A hot on 120 V).
/// Left out: the slight rise above some 1200 C.
double igniter_resistance_ohm(const IgniterParams& params, double factor, double temperature_k);

/// Heat the igniter gives off, W: emissivity*sigma*A*(T^4 - T0^4) + h*A*(T - T0). Stefan-Boltzmann and
/// Newton's law of cooling. Left out: the flame around it, so it cools after it is switched off in a run.
double igniter_loss_w(const IgniterParams& params, double temperature_k, double surroundings_k);

} // namespace lightoff::heat
