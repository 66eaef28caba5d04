// SPDX-License-Identifier: MIT
#pragma once
#include "units/convert.hpp"

/// Flame rectification: a flame between a small rod and a large grounded burner conducts far better
/// with the rod positive than with it negative. It is fed with AC through a resistance, so its
/// current has a mean. Closed-form half-wave averages; exact for a resistive supply. Leaves out:
/// saturation of the ion current, its slope change with voltage.
namespace lightoff::electrical {

/// Conductances of a clean rod wholly in a flame of strength 1 (as set up at the factory).
struct FlameParams {
    double forward_siemens = 1.0e-7; ///< teaching value: about 4 uA through 3.3 Mohm on 120 V
    double reverse_siemens = 1.0e-9;
};

/// Both conductances go with the flame's strength and the part of the rod that it covers (each 0 to 1 and
/// more).
constexpr FlameParams flame_conductance(const FlameParams& p, double strength, double rod_share_in_flame) {
    const double k = strength * rod_share_in_flame;
    return {p.forward_siemens * k, p.reverse_siemens * k};
}

/// The supply as the flame sees it (rod tip against burner) and the flame's two conductances.
struct FlameCircuit {
    double open_rms_v = 0.0;
    double supply_ohm = 0.0;
    double forward_siemens = 0.0; ///< rod positive; >= 0
    double reverse_siemens = 0.0; ///< rod negative; >= 0
};

/// Current through supply and a conductance per volt of EMF, 1/(R + 1/g), written so that g may be 0.
constexpr double through_siemens(double supply_ohm, double siemens) {
    return siemens / (1.0 + supply_ohm * siemens);
}

/// Mean current in A, positive from rod to burner: (sqrt(2) V / pi) (1/(R + 1/g1) - 1/(R + 1/g2)).
constexpr double mean_flame_current_a(const FlameCircuit& c) {
    constexpr double half_wave_mean = 1.41421356237309505 / units::pi;
    return half_wave_mean * c.open_rms_v *
           (through_siemens(c.supply_ohm, c.forward_siemens) -
            through_siemens(c.supply_ohm, c.reverse_siemens));
}

/// Conductance that draws the same 60 Hz component of current:
/// 1/(R + 1/g) = (1/(R + 1/g1) + 1/(R + 1/g2)) / 2.
constexpr double mean_flame_siemens(double supply_ohm, double forward_siemens, double reverse_siemens) {
    const double through =
        0.5 * (through_siemens(supply_ohm, forward_siemens) + through_siemens(supply_ohm, reverse_siemens));
    return through / (1.0 - supply_ohm * through);
}

} // namespace lightoff::electrical
