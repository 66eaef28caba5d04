// SPDX-License-Identifier: MIT
#include "air/ducts.hpp"
#include "rig.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace lightoff;

namespace {

const air::DuctDrive kStandard{air::kStandardAir_kg_m3, air::kStandardAir_kg_m3, true, true};

double drop_pa(double flow_kg_s, double area_m2, double density) {
    return 0.5 * flow_kg_s * flow_kg_s / (density * area_m2 * area_m2);
}

} // namespace

TEST_CASE("statics are the drops of the pieces at the design flow") {
    // Square law; the reference drops at 1,150 cfm are data of the profile.
    const auto params = test::reference_air();
    units::FanNow fan; // a pressure of 0.85 in. w.c. at whatever flow
    fan.shutoff_pa = units::inwc_to_pa(0.85);
    const auto flow = air::solve_ducts(params.ducts, {}, kStandard, fan);
    CHECK(units::m3s_to_cfm(flow.blower_kg_s / air::kStandardAir_kg_m3) == Approx(1150.0).epsilon(1e-9));
    CHECK(units::pa_to_inwc(flow.return_static_pa) == Approx(-0.19).epsilon(1e-9));
    CHECK(units::pa_to_inwc(flow.supply_static_pa) == Approx(0.31).epsilon(1e-9));
    CHECK(units::pa_to_inwc(flow.exchanger_static_pa) == Approx(0.31 + 0.5 * 0.25).epsilon(1e-9));
    fan.shutoff_pa *= 4.0;
    CHECK(air::solve_ducts(params.ducts, {}, kStandard, fan).blower_kg_s == Approx(2.0 * flow.blower_kg_s));
}

TEST_CASE("the closed form balances fan and ducts, doors off, filters out, leaks and plugs") {
    std::mt19937 random(11);
    const auto in_range = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(random()) / 4294967295.0);
    };
    const auto params = test::reference_air();
    const auto& d = params.ducts;
    for (int i = 0; i < 5000; ++i) {
        air::DuctCondition c;
        c.filter_loading = in_range(1.0, 40.0);
        c.coil_blockage = in_range(0.0, 0.9);
        c.exchanger_blockage = in_range(0.0, 0.5);
        c.registers_closed = in_range(0.0, 0.98);
        c.supply_leak_m2 = i % 3 == 0 ? 0.0 : in_range(0.0, 0.05);
        c.return_leak_m2 = in_range(0.0, 0.03);
        const air::DuctDrive drive{in_range(0.8, 1.25), in_range(0.8, 1.25), i % 2 == 0, i % 5 != 0};
        const auto fan = units::fan_at(params.blower.fan, in_range(0.0, 125.0), drive.return_density_kg_m3);
        const auto f = air::solve_ducts(d, c, drive, fan);

        // Written anew, walking from the room through the return to the blower and back to the room.
        const double rho_r = drive.return_density_kg_m3;
        const double rho_s = drive.supply_density_kg_m3;
        const double filter_pa =
            drive.filter_present ? c.filter_loading * drop_pa(f.return_kg_s, d.filter_area_m2, rho_r) : 0.0;
        const double at_return_tap_pa =
            -drop_pa(f.return_kg_s, d.return_duct_area_m2 + c.return_leak_m2, rho_r) - filter_pa;
        CHECK(f.return_static_pa == Approx(at_return_tap_pa).margin(1e-9));
        const double at_blower_pa = at_return_tap_pa - drop_pa(f.return_kg_s, d.cabinet_area_m2, rho_r);
        const double by_door = f.blower_kg_s - f.return_kg_s;
        const double door_area = drive.door_on ? 0.0 : d.blower_door_area_m2;
        CHECK(by_door == Approx(door_area * std::sqrt(2.0 * rho_r * -at_blower_pa)).margin(1e-9));
        const double after_blower_pa = at_blower_pa + fan.pressure_pa(f.blower_kg_s);
        const double at_supply_tap_pa =
            after_blower_pa -
            drop_pa(f.blower_kg_s, d.exchanger_area_m2 * (1.0 - c.exchanger_blockage), rho_s);
        CHECK(f.supply_static_pa == Approx(at_supply_tap_pa).margin(1e-8));
        const double after_coil_pa =
            at_supply_tap_pa - drop_pa(f.blower_kg_s, d.coil_area_m2 * (1.0 - c.coil_blockage), rho_s);
        const double leak = f.blower_kg_s - f.registers_kg_s;
        CHECK(leak == Approx(c.supply_leak_m2 * std::sqrt(2.0 * rho_s * std::max(0.0, after_coil_pa)))
                          .epsilon(1e-6)
                          .margin(1e-7));
        const double at_rooms_pa =
            after_coil_pa - drop_pa(f.registers_kg_s, d.supply_duct_area_m2, rho_s) -
            drop_pa(f.registers_kg_s, d.registers_area_m2 * (1.0 - c.registers_closed), rho_s);
        CHECK(std::abs(at_rooms_pa) < 1e-8);
        CHECK(f.exchanger_static_pa > f.supply_static_pa - 1e-12);
    }
}
