// SPDX-License-Identifier: MIT
#pragma once
#include <algorithm>

namespace lightoff::electrical {

/// An electromagnet that moves an armature: a relay, or the solenoid of a valve.
struct RelayParams {
    double pull_in_v =
        18.0; ///< least coil voltage that moves a released armature (24 V AC relay: 75-80 %; CP)
    double drop_out_v = 8.0; ///< most coil voltage at which a seated armature falls (CP)
    double travel_s = 0.010; ///< from end to end, 0.005 to 0.015
    double make_at = 0.75;   ///< position where the normally open contact touches
    double break_at = 0.25;  ///< position where the normally closed contact parts
};

/// How it IS.
struct RelayCondition {
    double pull_in_factor = 1.0;   ///< on both thresholds: friction, spring, shorted turns
    double lowest_position = 0.0;  ///< 1: welded
    double highest_position = 1.0; ///< 0: jammed

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("pull_in_factor", "", self.pull_in_factor);
        visit("lowest_position", "", self.lowest_position);
        visit("highest_position", "", self.highest_position);
    }
};

struct RelayState {
    double position = 0.0; ///< 0 released to 1 seated

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("position", "", self.position);
    }
};

/// Two switch bits: between them, in mid-travel, neither contact is closed.
struct RelayContacts {
    bool made = false;   ///< normally open contact closed
    bool lifted = false; ///< normally closed contact open
};

/// The pull grows as the gap closes, so the voltage that holds the armature falls with its position,
/// in a straight line from pull_in to drop_out; above it the armature moves in, below it out, at a
/// constant speed. Hysteresis and chatter (a supply that sags when the contact makes) follow. Leaves
/// out: armature inertia, bounce, the half-waves of AC (a shading ring holds through them).
inline RelayContacts step_relay(const RelayParams& p, const RelayCondition& c, RelayState& s, double coil_v,
                                double dt_s) {
    const double threshold = c.pull_in_factor * (p.pull_in_v + (p.drop_out_v - p.pull_in_v) * s.position);
    const double move = dt_s / p.travel_s;
    const double wanted = std::clamp(s.position + (coil_v >= threshold ? move : -move), 0.0, 1.0);
    s.position = std::max(c.lowest_position, std::min(c.highest_position, wanted));
    return {s.position >= p.make_at, s.position > p.break_at};
}

} // namespace lightoff::electrical
