// SPDX-License-Identifier: MIT
#include "electrical/fuse.hpp"
#include "electrical/relay.hpp"
#include <catch2/catch.hpp>

using namespace lightoff::electrical;

namespace {

/// Seconds until a steady current melts a fuse; 1000 if it holds.
double melts_after(double amps, double dt) {
    const FuseParams p;
    FuseState s;
    const double share = fuse_step_share(p, dt);
    for (int n = 1; n * dt < 1000.0; ++n)
        if (step_fuse(p, s, amps, share))
            return n * dt;
    return 1000.0;
}

} // namespace

TEST_CASE("a 3 A fuse holds its rating and melts in time") {
    // Windows of ISO 8820-3 for blade fuses, from memory; the 18 A and 12-13 A lines are targets of ours.
    for (const double dt : {0.01, 0.05}) {
        CHECK(melts_after(3.0, dt) == 1000.0);
        CHECK(melts_after(3.3, dt) == 1000.0);
        CHECK(melts_after(1.35 * 3.0, dt) > 0.75);
        CHECK(melts_after(2.0 * 3.0, dt) > 0.15);
        CHECK(melts_after(2.0 * 3.0, dt) < 5.0);
        CHECK(melts_after(18.0, dt) < 0.2);
        CHECK(melts_after(12.5, dt) < 0.5);
    }
    CHECK(melts_after(6.0 * 3.0, 0.01) > 0.02);
    CHECK(melts_after(6.0 * 3.0, 0.01) < 0.1);
    // closed form: t = tau ln(x / (x - 1))
    const double x = (6.0 / 3.75) * (6.0 / 3.75);
    CHECK(melts_after(6.0, 0.001) == Approx(1.6 * std::log(x / (x - 1.0))).margin(0.002));
    CHECK(melts_after(6.0, 0.05) == Approx(melts_after(6.0, 0.025)).margin(0.051));
}

TEST_CASE("a fuse cools between pulses") {
    const FuseParams p;
    FuseState s;
    const double share = fuse_step_share(p, 0.05);
    CHECK_FALSE(step_fuse(p, s, 15.0, share));
    const double hot = s.heat;
    for (int i = 0; i < 32; ++i)
        step_fuse(p, s, 0.0, share); // one time constant
    CHECK(s.heat == Approx(hot / std::exp(1.0)).epsilon(1e-9));
}

TEST_CASE("a relay pulls in, holds on less and drops out") {
    const RelayParams p;
    const RelayCondition c;
    RelayState s;
    CHECK_FALSE(step_relay(p, c, s, 17.9, 0.05).made);
    CHECK(step_relay(p, c, s, 24.0, 0.05).made);
    CHECK(step_relay(p, c, s, 8.1, 0.05).made);
    CHECK_FALSE(step_relay(p, c, s, 7.9, 0.05).made);
    CHECK_FALSE(step_relay(p, c, s, 0.0, 0.05).lifted);
}

TEST_CASE("in mid-travel neither contact of a relay is closed") {
    const RelayParams p;
    RelayState s;
    bool parted_first = false;
    for (int i = 0; i < 20; ++i) {
        const RelayContacts now = step_relay(p, {}, s, 24.0, 0.001);
        if (now.lifted && !now.made)
            parted_first = true;
        CHECK_FALSE((now.made && !now.lifted));
    }
    CHECK(parted_first);
    CHECK(s.position == 1.0);
}

TEST_CASE("a relay chatters when its own contact pulls the supply below drop-out") {
    const RelayParams p;
    RelayState s;
    bool made = false;
    int changes = 0;
    for (int i = 0; i < 200; ++i) {
        const bool now = step_relay(p, {}, s, made ? 5.0 : 24.0, 0.01).made;
        changes += now != made;
        made = now;
    }
    CHECK(changes > 20);
}

TEST_CASE("a welded relay stays made, a jammed one never makes") {
    const RelayParams p;
    RelayState s{1.0};
    CHECK(step_relay(p, {1.0, 1.0, 1.0}, s, 0.0, 0.05).made);
    RelayState t;
    CHECK_FALSE(step_relay(p, {1.0, 0.0, 0.0}, t, 24.0, 0.05).made);
}
