// SPDX-License-Identifier: MIT
#pragma once
#include "combustion/combustion.hpp"
#include <algorithm>

/// The mixture at one burner and what it allows.
namespace lightoff::combustion {

/// Air ratios between which a mixture burns, narrowed by flue gas in the air until they meet at the
/// stoichiometric mixture (extinction). Linear narrowing: the ordinary shape of flammability diagrams,
/// teaching value.
struct FlammableRange {
    double rich = 0.0;
    double lean = 0.0;
    double lower_limit = 0.0; ///< volume fraction of gas that goes with `lean`
    double upper_limit = 0.0;
    bool any = false;
};

inline FlammableRange flammable_range(const Params& p, double stoichiometric, double inert_fraction) {
    const double narrowing = std::clamp(inert_fraction / p.extinction_inert, 0.0, 1.0);
    const double middle = 1.0 / (1.0 + stoichiometric);
    FlammableRange r;
    r.lower_limit = p.fuel.lower_limit + (middle - p.fuel.lower_limit) * narrowing;
    r.upper_limit = p.fuel.upper_limit + (middle - p.fuel.upper_limit) * narrowing;
    r.lean = (1.0 / r.lower_limit - 1.0) / stoichiometric;
    r.rich = (1.0 / r.upper_limit - 1.0) / stoichiometric;
    r.any = narrowing < 1.0;
    return r;
}

/// Gas and air of one burner this step.
struct Mixture {
    double gas_m3_s = 0.0;
    double air_ratio = 0.0;       ///< all air of the cell
    double primary_deficit = 0.0; ///< 0 full primary air .. 1 none
    bool ignitable = false;       ///< an igniter or a neighbour's flame would light it
    bool holds = false;           ///< an established flame stays
    bool pocket_burns = false;    ///< what gathers of it is itself flammable
};

inline Mixture mixture(const Params& p, const FlammableRange& range, double gas_m3_s, double air_ratio,
                       double blockage) {
    Mixture m;
    m.gas_m3_s = gas_m3_s;
    m.primary_deficit = 0.8 * blockage; // a fully linted opening still lets some air by
    if (gas_m3_s <= 0.0)
        return m;
    m.air_ratio = air_ratio;
    const double primary = std::min(air_ratio, p.primary_air_ratio * (1.0 - m.primary_deficit));
    const double secondary = air_ratio - primary;
    const double at_igniter = primary + p.mixing_at_igniter * secondary;
    const double at_flame = primary + p.mixing_at_flame * secondary;
    // Too rich within, a jet still has a flammable edge where it meets the air of the compartment.
    m.ignitable = range.any && air_ratio >= p.smother_air_ratio && at_igniter <= range.lean;
    m.holds = range.any && air_ratio >= p.smother_air_ratio && at_flame <= range.lean;
    m.pocket_burns = range.any && air_ratio >= range.rich && air_ratio <= range.lean;
    return m;
}

/// The mixtures of a row; burners that have the same one share it.
class RowMixtures {
public:
    const Mixture& operator[](std::size_t burner) const { return mixtures_[at_[burner]]; }
    void set(std::size_t burner, const Mixture& m) {
        mixtures_[burner] = m;
        at_[burner] = burner;
    }
    void set_like_the_one_before(std::size_t burner) { at_[burner] = at_[burner - 1]; }

private:
    std::array<Mixture, kMaxBurners> mixtures_;
    std::array<std::size_t, kMaxBurners> at_;
};

/// Share of the flame that comes out of the burner opening for want of air inside: none at `onset` (1.2), a
/// few per cent at the stoichiometric mixture, and below that all that finds no oxygen inside. Teaching
/// value.
inline double rollout_share(double air_ratio, double onset) {
    if (air_ratio >= onset)
        return 0.0;
    const double gap = (onset - air_ratio) / onset;
    return std::max(gap * gap, 1.0 - air_ratio);
}

/// How flames look; every coefficient a teaching value, every sign common practice: lazy, long and yellow for
/// want of primary air or draft, lifting when far too lean, orange with dust, shorter with less gas.
inline FlameLook flame_look(const Params& p, const Condition& c, const Mixture& m, double flame,
                            double misalignment, double upset) {
    const double starved = std::clamp((1.25 - m.air_ratio) / 0.5, 0.0, 1.0);
    FlameLook look;
    look.length = flame * m.gas_m3_s / p.rated_burner_flow_m3_s * (1.0 + 0.7 * m.primary_deficit) *
                  (1.0 + 0.8 * starved);
    look.yellow =
        std::min(1.0, 1.1 * m.primary_deficit + 0.7 * starved + 0.5 * misalignment + 0.4 * c.air_dust);
    look.lift = std::min(1.0, std::clamp((m.air_ratio - 2.2) * (1.0 / 3.0), 0.0, 1.0) + 0.6 * upset);
    look.softness = std::min(1.0, 0.8 * m.primary_deficit + starved);
    look.strength = flame * (1.0 - 0.6 * upset) * (1.0 - 0.3 * look.lift);
    return look;
}

} // namespace lightoff::combustion
