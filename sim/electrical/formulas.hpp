// SPDX-License-Identifier: MIT
#pragma once
#include "units/constants.hpp"
#include "units/convert.hpp"

/// The electrical sums of the trade.
namespace lightoff::electrical {

/// A transformer's secondary under a load.
struct TransformerLoad {
    double volts = 0.0;
    double amps = 0.0;
    double volt_amperes = 0.0; ///< into the load
};

/// Secondary of `open_v` (r.m.s., without load) behind `series_ohm` >= 0, feeding `load_ohm` > 0: Ohm's law,
/// I = E/(r + R). Leaves out phase: load and windings as if resistive, which puts a 24 V coil's real voltage
/// a little higher.
constexpr TransformerLoad transformer_under_load(double open_v, double series_ohm, double load_ohm) {
    const double amps = open_v / (series_ohm + load_ohm);
    return {amps * load_ohm, amps, amps * amps * load_ohm};
}

/// Amps into a dead short at the secondary's terminals; series_ohm > 0.
constexpr double transformer_short_a(double open_v, double series_ohm) {
    return open_v / series_ohm;
}

/// Ohms of a load that takes `volt_amperes` > 0 at `volts`.
constexpr double load_ohm(double volts, double volt_amperes) {
    return volts * volts / volt_amperes;
}

/// Farads of a capacitor by its current and voltage, r.m.s.: C = I / (2 pi f V) (definition of capacitive
/// reactance); at 60 Hz the trade's 2652 A/V in microfarads.
constexpr double capacitance_farad(double amps, double volts, double hertz = units::line_frequency_hz) {
    return amps / (2.0 * units::pi * hertz * volts);
}

} // namespace lightoff::electrical
