// SPDX-License-Identifier: MIT
#include "draft/sense_line.hpp"
#include "rig.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff;
using test::DraftRig;

namespace {

constexpr double kSuction_pa = 240.0;

struct LineRig {
    draft::SenseLineParams params = test::reference_draft().sense_line;
    draft::SenseLineCondition condition;
    draft::SenseLineState state;
    double time_s = 0.0;

    void run(double port_pa, double seconds, double dt_s = 0.05) {
        for (double end = time_s + seconds - 0.5 * dt_s; time_s < end; time_s += dt_s)
            draft::step_sense_line(params, condition, state, port_pa, 0.0, dt_s);
    }
};

} // namespace

TEST_CASE("the line lags by resistance times compliance") {
    // First-order lag (calculus): 63.2 % after one time constant.
    LineRig rig;
    const double tau_s = rig.params.port_resistance_pa_s_m3 *
                         (rig.params.hose_compliance_m3_pa + rig.params.switch_compliance_m3_pa);
    rig.run(kSuction_pa, tau_s, tau_s / 400.0);
    CHECK(rig.state.switch_side_suction_pa / kSuction_pa == Approx(1.0 - std::exp(-1.0)).epsilon(0.01));
}

TEST_CASE("the switch makes at 0.60 and breaks at 0.53, shifted by drift") {
    for (const double drift : {0.8, 1.0, 1.2}) {
        LineRig rig;
        rig.condition.make_factor = rig.condition.break_factor = drift;
        rig.run(units::inwc_to_pa(0.595 * drift), 60.0);
        CHECK(rig.state.closed == 0);
        rig.run(units::inwc_to_pa(0.605 * drift), 60.0);
        CHECK(rig.state.closed == 1);
        rig.run(units::inwc_to_pa(0.535 * drift), 60.0);
        CHECK(rig.state.closed == 1);
        rig.run(units::inwc_to_pa(0.525 * drift), 60.0);
        CHECK(rig.state.closed == 0);
    }
}

TEST_CASE("a stuck switch does not follow") {
    LineRig rig;
    rig.condition.stuck = draft::SwitchStuck::kClosed;
    rig.run(0.0, 1.0);
    CHECK(rig.state.closed == 1);
    rig.condition.stuck = draft::SwitchStuck::kOpen;
    rig.run(kSuction_pa, 30.0);
    CHECK(rig.state.closed == 0);
}

TEST_CASE("dirt alone only delays") {
    LineRig clean;
    LineRig dirty;
    dirty.condition.port_plug = 0.6;
    dirty.condition.hose_plug = 0.6;
    clean.run(kSuction_pa, 1.0);
    dirty.run(kSuction_pa, 1.0);
    CHECK(clean.state.closed == 1);
    CHECK(dirty.state.closed == 0);
    dirty.run(kSuction_pa, 120.0);
    CHECK(dirty.state.closed == 1);
    CHECK(dirty.state.switch_side_suction_pa == Approx(kSuction_pa).epsilon(1e-6));
}

TEST_CASE("plugged hose: full suction before the plug, nothing behind it") {
    LineRig rig;
    rig.condition.hose_plug = 1.0;
    rig.run(kSuction_pa, 60.0);
    CHECK(rig.state.inducer_side_suction_pa == Approx(kSuction_pa).epsilon(1e-6));
    CHECK(rig.state.switch_side_suction_pa == 0.0);
    CHECK(rig.state.closed == 0);
}

TEST_CASE("plugged port: every tee reads nothing until the port is rodded") {
    LineRig rig;
    rig.condition.port_plug = 1.0;
    rig.run(kSuction_pa, 60.0);
    CHECK(rig.state.inducer_side_suction_pa == 0.0);
    CHECK(rig.state.switch_side_suction_pa == 0.0);
    rig.condition.port_plug = 0.0;
    rig.run(kSuction_pa, 10.0);
    CHECK(rig.state.closed == 1);
}

TEST_CASE("a plug formed under suction holds the switch closed; pulling the hose heals the reading") {
    LineRig rig;
    rig.run(kSuction_pa, 20.0);
    rig.condition.hose_plug = 1.0;
    rig.run(0.0, 600.0);
    CHECK(rig.state.closed == 1);
    CHECK(rig.state.inducer_side_suction_pa == Approx(0.0).margin(1e-6));
    rig.condition.hose_off = 1;
    rig.run(0.0, 1.0);
    CHECK(rig.state.closed == 0);
    CHECK(rig.state.switch_side_suction_pa == Approx(0.0).margin(0.1));
}

TEST_CASE("a leak divides the suction by the restriction before it") {
    LineRig rig;
    rig.condition.switch_side_crack_m2 = 2e-7;
    rig.run(kSuction_pa, 60.0);
    // Two resistances in series; leak as an orifice Cd 0.6 by its chord at 150 Pa, room air 1.2 kg/m3
    // (Bernoulli).
    const double leak_pa_s_m3 = std::sqrt(150.0 * 1.2 / 2.0) / (0.6 * 2e-7);
    const double before = rig.params.port_resistance_pa_s_m3 + rig.params.hose_resistance_pa_s_m3;
    const double divided = kSuction_pa * leak_pa_s_m3 / (leak_pa_s_m3 + before);
    CHECK(rig.state.switch_side_suction_pa == Approx(divided).epsilon(1e-3));

    // The same crack behind a half plug costs more; before the plug it costs both tees the same.
    rig.condition.hose_plug = 0.97;
    rig.run(kSuction_pa, 600.0);
    CHECK(rig.state.switch_side_suction_pa < 0.9 * divided);
    CHECK(rig.state.inducer_side_suction_pa > divided);
    rig.condition.inducer_side_crack_m2 = 2e-7;
    rig.condition.switch_side_crack_m2 = 0.0;
    rig.run(kSuction_pa, 3600.0);
    CHECK(rig.state.switch_side_suction_pa == Approx(rig.state.inducer_side_suction_pa).epsilon(1e-6));
}

TEST_CASE("a kink delays, and with a leak behind it costs suction") {
    LineRig rig;
    rig.condition.kink_pa_s_m3 = 2e9;
    rig.run(kSuction_pa, 2.0);
    CHECK(rig.state.closed == 0);
    rig.run(kSuction_pa, 300.0);
    CHECK(rig.state.closed == 1);
    rig.condition.cavity_leak_m2 = 1e-8;
    rig.run(kSuction_pa, 300.0);
    CHECK(rig.state.closed == 0);
}

TEST_CASE("a water slug subtracts its height") {
    // Hydrostatics: 0.3 in. of water is 0.3 in. w.c.
    LineRig rig;
    rig.condition.water_slug_m = units::inch_to_m(0.30);
    rig.run(units::inwc_to_pa(0.95), 60.0);
    CHECK(units::pa_to_inwc(rig.state.inducer_side_suction_pa) == Approx(0.95).epsilon(1e-4));
    CHECK(units::pa_to_inwc(rig.state.switch_side_suction_pa) == Approx(0.65).epsilon(0.002));
    CHECK(rig.state.closed == 1);
    rig.condition.water_slug_m = units::inch_to_m(0.50);
    rig.state = {};
    rig.run(units::inwc_to_pa(0.95), 60.0);
    CHECK(units::pa_to_inwc(rig.state.switch_side_suction_pa) == Approx(0.45).epsilon(0.003));
    CHECK(rig.state.closed == 0);
}

TEST_CASE("hose off while running: the switch opens at once") {
    DraftRig rig;
    rig.run(20.0);
    REQUIRE(rig.out.switch_closed == 1);
    rig.condition.sense_line.hose_off = 1;
    CHECK(rig.wait_for_switch(false, 5.0) < 0.2);
}
