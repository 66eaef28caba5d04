// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>

namespace lightoff::combustion {

/// TEACHING CURVE, not a prediction: CO of one burner, ppm air-free. Its shape is common practice (a U
/// against excess air, rising below about 5 % O2 and again when very lean; more with impingement, starved
/// primary air, soot, stale air); its numbers are chosen by us so that a sound burner stays under 50 ppm and
/// a starved one passes the 400 ppm limit of ANSI Z21.47 near 2 % O2.
struct CoCurve {
    double base_ppm = 15.0;
    double rich_below = 1.30;       ///< air ratio, about 5 % O2
    double rich_square_ppm = 300.0; ///< at air ratio 1, with the next one
    double rich_fourth_ppm = 3000.0;
    double lean_above = 2.2; ///< air ratio, about 12 % O2
    double lean_ppm = 150.0; ///< one unit of air ratio above it
    double lean_most_ppm = 1500.0;
    double impingement_ppm = 600.0; ///< flame fully on metal
    double primary_ppm = 500.0;     ///< no primary air at all
    double soot_ppm = 500.0;        ///< exchanger fully sooted
    double upset_ppm = 300.0;       ///< flames fully upset by a crack jet
    double stale_ppm = 4000.0;      ///< combustion air all flue gas
    double rollout_ppm = 3000.0;    ///< of flame outside its burner
};

struct CoCauses {
    double air_ratio = 1.5;
    double impingement = 0.0;
    double primary_deficit = 0.0; ///< 0 full primary air .. 1 none
    double soot = 0.0;
    double upset = 0.0;
    double stale = 0.0; ///< share of flue gas in the combustion air
};

constexpr double co_air_free_ppm(const CoCurve& k, const CoCauses& c) {
    const double rich =
        c.air_ratio < k.rich_below ? (k.rich_below - c.air_ratio) / (k.rich_below - 1.0) : 0.0;
    const double rich2 = rich * rich;
    const double lean = std::max(0.0, c.air_ratio - k.lean_above);
    return k.base_ppm + rich2 * (k.rich_square_ppm + rich2 * k.rich_fourth_ppm) +
           std::min(k.lean_most_ppm, k.lean_ppm * lean * lean) +
           k.impingement_ppm * c.impingement * c.impingement +
           k.primary_ppm * c.primary_deficit * c.primary_deficit + k.soot_ppm * c.soot * c.soot +
           k.upset_ppm * c.upset * c.upset + k.stale_ppm * c.stale * c.stale;
}

} // namespace lightoff::combustion
