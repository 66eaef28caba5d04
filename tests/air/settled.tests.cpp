// SPDX-License-Identifier: MIT
#include "rig.hpp"
#include "units/fields.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::AirRig;

// Settled targets of the reference furnace: common practice, no source. The motor is a stand-in.

TEST_CASE("1,150 cfm at 0.50 in. w.c. outside the cabinet, about 1,075 rpm, 350 to 400 W on the shaft") {
    AirRig rig;
    rig.run(30.0);
    CHECK(rig.cfm() == Approx(1150.0).epsilon(0.05));
    CHECK(rig.external_inwc() == Approx(0.50).epsilon(0.05));
    CHECK(rig.rpm() == Approx(1075.0).epsilon(0.01));
    CHECK(rig.out.shaft_power_w > 350.0);
    CHECK(rig.out.shaft_power_w < 400.0);
    CHECK(rig.rise_f() > 50.0);
    CHECK(rig.rise_f() < 55.0);
    CHECK(rig.out.exchanger_static_pa > rig.out.supply_static_pa);
}

TEST_CASE("warm supply air stays within the targets") {
    AirRig rig;
    rig.inputs.supply_density_kg_m3 *= 530.0 / 582.0; // 70 F in, 122 F out, degrees Rankine
    rig.run(30.0);
    CHECK(rig.cfm() == Approx(1150.0).epsilon(0.05));
    CHECK(rig.external_inwc() == Approx(0.50).epsilon(0.05));
}

TEST_CASE("half the tick gives the same settled readings and the same run-up") {
    AirRig tick;
    AirRig half;
    AirRig substep;
    const auto run_up_s = [](AirRig& rig, double dt_s) {
        while (rig.rpm() < 1000.0)
            rig.step(dt_s);
        return rig.time_s;
    };
    const double reached_s = run_up_s(tick, 0.05);
    CHECK(run_up_s(half, 0.025) == Approx(reached_s).margin(0.1));
    CHECK(run_up_s(substep, 0.01) == Approx(reached_s).margin(0.1));
    tick.run(20.0, 0.05);
    half.run(20.0, 0.025);
    CHECK(half.out.flow_kg_s == Approx(tick.out.flow_kg_s).epsilon(0.005));
    CHECK(half.out.shaft_power_w == Approx(tick.out.shaft_power_w).epsilon(0.005));
}

TEST_CASE("what the motor gives is what air and bearings take") {
    AirRig rig;
    rig.run(60.0);
    CHECK(rig.inputs.motor_torque_nm * rig.out.blower_speed_rad_s ==
          Approx(rig.out.shaft_power_w).epsilon(1e-6));
    CHECK(rig.out.air_power_w < rig.out.shaft_power_w);
}
