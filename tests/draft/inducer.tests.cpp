// SPDX-License-Identifier: MIT
#include "draft/inducer.hpp"
#include "rig.hpp"
#include "units/rotor.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff;
using test::DraftRig;

TEST_CASE("fan laws: flow as speed, pressure as its square, torque as its square, all but flow as density") {
    // Fan laws (published, tests/reference/rules_and_constants.csv).
    const auto& curve = test::reference_draft().inducer.fan;
    const double flow = 0.012; // m3/s
    const auto at = [&](double speed_ratio, double density) {
        return units::fan_at(curve, curve.speed_rad_s * speed_ratio, density);
    };
    const double pressure = at(1.0, 1.2).pressure_pa(flow * 1.2);
    const double torque = at(1.0, 1.2).torque_nm(flow * 1.2);
    CHECK(at(1.1, 1.2).pressure_pa(1.1 * flow * 1.2) / pressure == Approx(1.21).epsilon(1e-12));
    CHECK(at(1.1, 1.2).torque_nm(1.1 * flow * 1.2) / torque == Approx(1.21).epsilon(1e-12));
    CHECK(at(1.0, 0.75).pressure_pa(flow * 0.75) / pressure == Approx(0.75 / 1.2).epsilon(1e-12));
    CHECK(at(1.0, 0.75).torque_nm(flow * 0.75) / torque == Approx(0.75 / 1.2).epsilon(1e-12));
}

TEST_CASE("a rotor follows the closed form of a constant torque against a square-law load") {
    // J dw/dt = T - k w^2 has w = w_end tanh(t T / (J w_end)), w_end = sqrt(T/k) (calculus).
    const double inertia = 7e-4;
    const double torque = 0.08;
    const double k = 8e-7;
    const double end = std::sqrt(torque / k);
    for (const double dt : {0.01, 0.05}) {
        double speed = 0.0;
        double worst = 0.0;
        for (int i = 1; i * dt < 25.0; ++i) {
            speed =
                units::next_speed(speed, inertia, {torque, 0.0, k * speed * speed, 2.0 * k * speed, 0.0}, dt);
            worst = std::max(worst, std::abs(speed - end * std::tanh(i * dt * torque / (inertia * end))));
        }
        CHECK(worst < 0.02 * end * (dt / 0.05)); // first order in dt
        CHECK(speed == Approx(end).epsilon(1e-3));
    }
}

TEST_CASE("dry friction stops a shaft and holds it") {
    double speed = 50.0;
    for (int i = 0; i < 1000; ++i)
        speed = units::next_speed(speed, 7e-4, {0.0, 0.0, 0.0, 0.0, 0.006}, 0.05);
    CHECK(speed == 0.0);
    CHECK(units::next_speed(0.0, 7e-4, {0.005, 0.0, 0.0, 0.0, 0.006}, 0.05) == 0.0);
    CHECK(units::next_speed(0.0, 7e-4, {0.007, 0.0, 0.0, 0.0, 0.006}, 0.05) > 0.0);
}

TEST_CASE("the inducer runs up, coasts down and stands; a seized one never moves") {
    DraftRig rig;
    rig.run(15.0);
    CHECK(rig.rpm() > 3000.0); // two-pole motor: common practice, no source
    CHECK(rig.rpm() < 3300.0);
    rig.powered = false;
    rig.run(4.0);
    CHECK(rig.rpm() > 100.0);
    rig.run(60.0);
    CHECK(rig.out.inducer_speed_rad_s == 0.0);

    DraftRig seized;
    seized.condition.inducer.bearing_drag_added_nm = 10.0;
    seized.run(10.0);
    CHECK(seized.out.inducer_speed_rad_s == 0.0);
    CHECK(seized.out.switch_closed == 0);
    seized.condition.inducer.bearing_drag_added_nm = 0.0;
    seized.run(20.0);
    seized.condition.inducer.bearing_drag_added_nm = 10.0; // seizes while it runs
    seized.run(0.1);
    CHECK(seized.out.inducer_speed_rad_s == 0.0);
}

TEST_CASE("a loose wheel lags its motor, which runs faster and asks less") {
    DraftRig sound;
    DraftRig loose;
    loose.condition.inducer.wheel_slip = 0.4;
    sound.run(20.0);
    loose.run(20.0);
    CHECK(loose.out.inducer_speed_rad_s > sound.out.inducer_speed_rad_s);
    CHECK(loose.out.shaft_power_w < sound.out.shaft_power_w);
    CHECK(loose.out.port_suction_pa < 0.6 * sound.out.port_suction_pa);
    CHECK(loose.out.switch_closed == 0);
}

TEST_CASE("the wheel's angle advances with its speed and stays in one turn") {
    DraftRig rig;
    rig.run(20.0);
    const double before = rig.state.inducer.angle_rad;
    rig.step(0.01);
    const double expected = std::fmod(before + rig.out.wheel_speed_rad_s * 0.01, 2.0 * units::pi);
    CHECK(rig.state.inducer.angle_rad == Approx(expected).margin(1e-3));
    for (int i = 0; i < 1000; ++i) {
        rig.step(0.05);
        REQUIRE(rig.state.inducer.angle_rad >= 0.0);
        REQUIRE(rig.state.inducer.angle_rad < 2.0 * units::pi);
    }
}
