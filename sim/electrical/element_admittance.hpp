// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/netlist.hpp"
#include "units/constants.hpp"
#include "units/convert.hpp"

/// The admittance of one element between its ends, at 60 Hz (Complex) and at DC (double).
namespace lightoff::electrical {

/// How an element stands at the moment.
struct ElementSetting {
    bool closed = false;        ///< contacts only
    double series_ohm = 0.0;    ///< Condition::series_ohm
    double factor = 1.0;        ///< Condition::factor
    double copper_factor = 1.0; ///< resistance against that at 20 C
};

/// Relative rise of resistance per kelvin, annealed copper at 20 C: IEC 60028 / NBS Handbook 100.
inline constexpr double kCopperPerKelvin = 0.00393;
inline constexpr double kWindingReferenceK = 293.15;
inline constexpr double kTemperatureStepK = 2.0;

/// Ohms in the current's path that turn to heat in the element and its bad terminal.
inline double element_ohm(const Element& e, const ElementSetting& s) {
    switch (e.kind) {
    case ElementKind::contact:
        return (s.closed ? e.ohm * s.factor : e.open_ohm) + s.series_ohm;
    case ElementKind::capacitor:
        return e.open_ohm + s.series_ohm;
    case ElementKind::igniter:
    case ElementKind::flame:
        return s.series_ohm;
    default:
        return e.ohm * s.factor * s.copper_factor + s.series_ohm;
    }
}

inline double dc_admittance(const Element& e, const ElementSetting& s) {
    return 1.0 / element_ohm(e, s);
}

inline Complex ac_admittance(const Element& e, const ElementSetting& s) {
    switch (e.kind) {
    case ElementKind::coil:
    case ElementKind::source:
        return inverse(Complex{element_ohm(e, s), e.reactance_ohm * s.factor});
    case ElementKind::winding:
        return inverse(Complex{element_ohm(e, s), e.reactance_ohm});
    case ElementKind::capacitor: {
        constexpr double omega = 2.0 * units::pi * units::line_frequency_hz;
        return inverse(s.series_ohm + inverse(Complex{1.0 / e.open_ohm, omega * e.farad * s.factor}));
    }
    default:
        return dc_admittance(e, s);
    }
}

} // namespace lightoff::electrical
