// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/network_inputs.hpp"
#include "units/pinned_math.hpp"

namespace lightoff::electrical {

/// A fuse wire as one lump: heated by I^2, cooled in proportion to its temperature rise, melting at
/// heat 1. At a steady current x = (I / minimum fusing current)^2 > 1 it melts after
/// time_constant ln(x / (x - 1)). A 3 A blade fuse with the defaults: holds 3.3 A for ever, 135 %
/// 3 s, 200 % 0.9 s, 350 % 0.22 s, 600 % 0.07 s, inside the windows of ISO 8820-3 (from memory:
/// 110 % 100 h, 135 % 0.75-600 s, 200 % 0.15-5 s, 350 % 0.04-0.5 s, 600 % 0.02-0.1 s).
struct FuseParams {
    double minimum_fusing_a = 3.75;
    double time_constant_s = 1.6;
};

struct FuseState {
    double heat = 0.0; ///< 0 cold, 1 melting

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("heat", "", self.heat);
    }
};

/// The share of the way to the settled heat that a step covers: 1 - exp(-dt/time constant).
inline double fuse_step_share(const FuseParams& p, double dt_s) {
    return 1.0 - units::exp(-dt_s / p.time_constant_s);
}

/// Heats or cools the wire for one step at constant r.m.s. current; true when it melts. A melted
/// wire is cold again when the next one is put in.
inline bool step_fuse(const FuseParams& p, FuseState& s, double amps, double step_share) {
    const double load = amps / p.minimum_fusing_a;
    s.heat += (load * load - s.heat) * step_share;
    if (s.heat < 1.0)
        return false;
    s.heat = 0.0;
    return true;
}

/// What melting does to the wiring.
inline void open_element(Condition& condition, int element) {
    condition.series_ohm[static_cast<std::size_t>(element)] = kOpenOhm;
}

} // namespace lightoff::electrical
