// SPDX-License-Identifier: MIT
#include "rig.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::AirRig;

// How the readings move when something goes bad (permanent-split-capacitor motor, forward-curved wheel):
// common practice, no source. Amps and rpm come from a stand-in motor with the right shape.

namespace {

template <class Spoil>
AirRig settled(Spoil spoil) {
    AirRig rig;
    spoil(rig);
    rig.run(30.0);
    return rig;
}

AirRig healthy() {
    return settled([](AirRig&) {});
}

} // namespace

TEST_CASE("dirty filter: return more negative, supply down, amps DOWN, rpm up, rise up") {
    AirRig before = healthy();
    for (const double loading : {2.0, 4.0, 8.0, 16.0, 32.0}) {
        const AirRig rig = settled([&](AirRig& r) { r.condition.ducts.filter_loading = loading; });
        CHECK(rig.return_inwc() < before.return_inwc());
        CHECK(rig.supply_inwc() < before.supply_inwc());
        CHECK(rig.amps() < before.amps());
        CHECK(rig.rpm() > before.rpm());
        CHECK(rig.rise_f() > before.rise_f());
        before = rig;
    }
    CHECK(settled([](AirRig& r) { r.condition.ducts.filter_loading = 14.0; }).rise_f() > 70.0);
}

TEST_CASE("closed registers: return nearer zero, supply UP, amps DOWN, rpm up, rise up") {
    AirRig before = healthy();
    for (const double closed : {0.3, 0.5, 0.7, 0.8}) {
        const AirRig rig = settled([&](AirRig& r) { r.condition.ducts.registers_closed = closed; });
        CHECK(rig.return_inwc() > before.return_inwc());
        CHECK(rig.supply_inwc() > before.supply_inwc());
        CHECK(rig.amps() < before.amps());
        CHECK(rig.rpm() > before.rpm());
        CHECK(rig.rise_f() > before.rise_f());
        before = rig;
    }
}

TEST_CASE("dirty coil: the same signs as closed registers") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.condition.ducts.coil_blockage = 0.5; });
    CHECK(rig.return_inwc() > good.return_inwc());
    CHECK(rig.supply_inwc() > good.supply_inwc());
    CHECK(rig.amps() < good.amps());
    CHECK(rig.rpm() > good.rpm());
    CHECK(rig.rise_f() > good.rise_f());
}

TEST_CASE("packed wheel: return nearer zero, supply DOWN, amps DOWN, rpm up, rise up") {
    AirRig before = healthy();
    for (const double packing : {0.2, 0.4, 0.6, 0.8, 1.0}) {
        const AirRig rig = settled([&](AirRig& r) { r.condition.blower.wheel_packing = packing; });
        CHECK(rig.return_inwc() > before.return_inwc());
        CHECK(rig.supply_inwc() < before.supply_inwc());
        CHECK(rig.amps() < before.amps());
        CHECK(rig.rpm() > before.rpm());
        CHECK(rig.rise_f() > before.rise_f());
        before = rig;
    }
}

TEST_CASE("blower door off: return static gone, amps UP, rpm down, rise down") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.inputs.blower_door_on = false; });
    CHECK(rig.return_inwc() > -0.03);
    CHECK(rig.amps() > good.amps());
    CHECK(rig.rpm() < good.rpm());
    CHECK(rig.rise_f() < good.rise_f());
    // It hides a dirty filter.
    const AirRig dirty = settled([](AirRig& r) {
        r.inputs.blower_door_on = false;
        r.condition.ducts.filter_loading = 12.0;
    });
    CHECK(dirty.rise_f() == Approx(rig.rise_f()).epsilon(0.02));
}

TEST_CASE("filter out: return nearer zero, amps UP, rpm down, rise down") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.inputs.filter_present = false; });
    CHECK(rig.return_inwc() > good.return_inwc());
    CHECK(rig.amps() > good.amps());
    CHECK(rig.rpm() < good.rpm());
    CHECK(rig.rise_f() < good.rise_f());
}

TEST_CASE("weak capacitor (less motor torque): return nearer zero, supply down, rpm DOWN, rise up") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.motor.strength = 0.6; });
    CHECK(rig.return_inwc() > good.return_inwc());
    CHECK(rig.supply_inwc() < good.supply_inwc());
    CHECK(rig.rpm() < good.rpm() - 30.0);
    CHECK(rig.rise_f() > good.rise_f());
}

TEST_CASE("open capacitor: no air at rest, but it runs on if it is spun up") {
    // One winding alone makes two counter-rotating fields whose torques cancel at rest (electrical-machine
    // texts).
    const auto one_winding_nm = [](const AirRig& r) {
        const double speed = r.state.blower.speed_rad_s;
        return 0.9 * (r.motor.torque_nm(speed) - r.motor.torque_nm(-speed));
    };
    const auto run = [&](AirRig& r) {
        for (int i = 0; i < 600; ++i) {
            r.inputs.motor_torque_nm = one_winding_nm(r);
            r.inputs.motor_torque_slope_nm_s = 0.0;
            r.out = air::step(r.params, r.condition, r.state, r.inputs, 0.01);
        }
    };
    AirRig still;
    run(still);
    CHECK(still.out.flow_kg_s == 0.0);
    CHECK(still.out.external_static_pa == 0.0);
    AirRig spun;
    spun.state.blower.speed_rad_s = units::rpm_to_rad_s(700.0);
    run(spun);
    CHECK(spun.rpm() > 900.0);
}

TEST_CASE("dragging bearing: return nearer zero, supply down, amps UP, rpm DOWN, rise up") {
    AirRig before = healthy();
    for (const double drag_nm : {0.3, 0.6, 0.9, 1.2}) {
        const AirRig rig = settled([&](AirRig& r) { r.condition.blower.bearing_drag_added_nm = drag_nm; });
        CHECK(rig.return_inwc() > before.return_inwc());
        CHECK(rig.supply_inwc() < before.supply_inwc());
        CHECK(rig.amps() > before.amps());
        CHECK(rig.rpm() < before.rpm());
        CHECK(rig.rise_f() > before.rise_f());
        before = rig;
    }
}

TEST_CASE("supply leak: more air at the blower, less in the rooms") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.condition.ducts.supply_leak_m2 = 0.02; });
    CHECK(rig.out.flow_kg_s > good.out.flow_kg_s);
    CHECK(rig.out.register_flow_kg_s < good.out.register_flow_kg_s);
    CHECK(rig.supply_inwc() < good.supply_inwc());
}

TEST_CASE("return leak: the filter side of the return is nearer zero, airflow up") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.condition.ducts.return_leak_m2 = 0.03; });
    CHECK(rig.return_inwc() > good.return_inwc());
    CHECK(rig.cfm() > good.cfm());
}

TEST_CASE("lint around the exchanger: both statics down, air down") {
    const AirRig good = healthy();
    const AirRig rig = settled([](AirRig& r) { r.condition.ducts.exchanger_blockage = 0.4; });
    CHECK(rig.return_inwc() > good.return_inwc());
    CHECK(rig.supply_inwc() < good.supply_inwc());
    CHECK(rig.amps() < good.amps());
    CHECK(rig.rise_f() > good.rise_f());
}
