// SPDX-License-Identifier: MIT
#include "air/blower.hpp"
#include "rig.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff;
using test::AirRig;

TEST_CASE("the blower in its ducts obeys the fan laws") {
    // Fan laws (published): in a fixed system flow ~ N, pressure ~ N^2, power ~ N^3; all but flow ~ density.
    AirRig rig;
    rig.params.blower.bearing_drag_nm = 0.0;
    const auto at = [&](double rpm, double density_ratio) {
        AirRig r = rig;
        r.state.blower.speed_rad_s = units::rpm_to_rad_s(rpm);
        r.inputs.return_density_kg_m3 *= density_ratio;
        r.inputs.supply_density_kg_m3 *= density_ratio;
        r.powered = false;
        r.step(1e-9); // the reading of this speed
        return r.out;
    };
    const auto base = at(1000.0, 1.0);
    const auto faster = at(1100.0, 1.0);
    CHECK(faster.flow_m3_s / base.flow_m3_s == Approx(1.10).epsilon(1e-6));
    CHECK(faster.external_static_pa / base.external_static_pa == Approx(1.21).epsilon(1e-6));
    CHECK(faster.shaft_power_w / base.shaft_power_w == Approx(1.331).epsilon(1e-6));
    const auto mountain = at(1000.0, 0.8321); // 5,000 ft, tests/reference/air_by_altitude.csv
    CHECK(mountain.flow_m3_s / base.flow_m3_s == Approx(1.0).epsilon(1e-6));
    CHECK(mountain.external_static_pa / base.external_static_pa == Approx(0.8321).epsilon(1e-6));
    CHECK(mountain.shaft_power_w / base.shaft_power_w == Approx(0.8321).epsilon(1e-6));
}

TEST_CASE("a forward-curved wheel: pressure rises, then falls; power climbs all the way") {
    // Shape of forward-curved wheels: fan engineering texts.
    const auto fan = units::fan_at(test::reference_air().blower.fan, units::rpm_to_rad_s(1075.0), 1.2);
    CHECK(fan.pressure_pa(0.2) > fan.pressure_pa(0.0));
    CHECK(fan.pressure_pa(0.8) < fan.pressure_pa(0.2));
    double before = 0.0;
    for (double flow = 0.0; flow < 1.1; flow += 0.05) {
        CHECK(fan.torque_nm(flow) > before);
        before = fan.torque_nm(flow);
        const double efficiency =
            fan.pressure_pa(flow) * flow / 1.2 / (fan.torque_nm(flow) * units::rpm_to_rad_s(1075.0));
        CHECK(efficiency < 0.60); // no such wheel does better (fan engineering texts, from memory)
    }
    CHECK(fan.torque_nm(0.65) > 2.5 * fan.torque_nm(0.0));
}

TEST_CASE("the blower spins up in 2 to 3 s and coasts down in 5 to 15 s") {
    // Common practice, no source; the motor is a stand-in.
    AirRig rig;
    while (rig.rpm() < 0.97 * 1075.0 && rig.time_s < 60.0)
        rig.step(0.05);
    CHECK(rig.time_s > 1.8);
    CHECK(rig.time_s < 3.2);
    rig.run(20.0);
    rig.powered = false;
    const double off_s = rig.time_s;
    while (rig.out.blower_speed_rad_s > 0.0 && rig.time_s < off_s + 60.0)
        rig.step(0.05);
    CHECK(rig.time_s - off_s > 5.0);
    CHECK(rig.time_s - off_s < 15.0);
}

TEST_CASE("a seized blower and one on the floor move nothing") {
    AirRig seized;
    seized.condition.blower.bearing_drag_added_nm = 100.0;
    seized.run(5.0);
    CHECK(seized.out.flow_kg_s == 0.0);
    CHECK(seized.out.blower_speed_rad_s == 0.0);
    CHECK(seized.out.external_static_pa == 0.0);

    AirRig out;
    out.run(10.0);
    out.condition.blower.removed = 1;
    out.run(1.0);
    CHECK(out.out.flow_kg_s == 0.0);
    CHECK(out.out.shaft_power_w == 0.0);
    CHECK(out.state.blower.speed_rad_s == 0.0);
}

TEST_CASE("a loose wheel lags its motor, which runs faster and asks less") {
    AirRig sound;
    AirRig loose;
    loose.condition.blower.wheel_slip = 0.3;
    sound.run(20.0);
    loose.run(20.0);
    CHECK(loose.out.blower_speed_rad_s > sound.out.blower_speed_rad_s);
    CHECK(loose.out.wheel_speed_rad_s < 0.8 * sound.out.wheel_speed_rad_s);
    CHECK(loose.amps() < sound.amps());
    CHECK(loose.cfm() < 0.8 * sound.cfm());
}

TEST_CASE("an uneven load of dirt shakes the blower, more with speed") {
    AirRig rig;
    rig.run(20.0);
    const double clean = rig.out.shake_m_s;
    CHECK(clean < 0.0018); // smooth for a small machine (vibration severity charts, from memory: 1.8 mm/s)
    rig.condition.blower.wheel_packing = 1.0;
    rig.run(20.0);
    CHECK(rig.out.shake_m_s > 0.0045); // rough (same charts)
    rig.powered = false;
    rig.run(2.0);
    CHECK(rig.out.shake_m_s < 0.8 * 0.0105);
}
