// SPDX-License-Identifier: MIT
#include "units/convert.hpp"
#include "units/constants.hpp"

#include <catch2/catch.hpp>

using namespace lightoff::units;

// Six or seven published digits: the rounding of the last one is what the tolerance allows.
namespace {
auto published(double value) {
    return Approx(value).epsilon(1e-6);
}
} // namespace

TEST_CASE("factors agree with NIST SP 811 (2008), appendix B") {
    CHECK(inwc_to_pa(1.0) == published(249.0889)); // inch of water, conventional
    CHECK(psi_to_pa(1.0) == published(6894.757));
    CHECK(btuh_to_w(1.0) == published(0.2930711)); // Btu(IT) per hour
    CHECK(cfm_to_m3s(1.0) == published(4.719474e-4));
    CHECK(cfh_to_m3s(1.0) == published(7.865791e-6));
    CHECK(inch_to_m(1.0) == 0.0254);
    CHECK(foot_to_m(1.0) == 0.3048);
    CHECK(watts_per_horsepower == published(745.6999)); // 550 ft lbf/s
    CHECK(rpm_to_rad_s(1.0) == published(0.1047198));
    CHECK(btu_per_ft3_to_j_per_m3(1.0) == published(3.725895e4)); // Btu(IT) per cubic foot
    CHECK(joules_per_btu == published(1055.056));
    CHECK(kilograms_per_pound == 0.45359237);
}

TEST_CASE("temperatures agree at the points that define the scales") {
    // NIST SP 811, B.8: t(F) = 1.8 t(C) + 32, T(K) = t(C) + 273.15.
    CHECK(fahrenheit_to_k(32.0) == Approx(273.15).epsilon(1e-14));
    CHECK(fahrenheit_to_k(212.0) == Approx(373.15).epsilon(1e-14));
    CHECK(fahrenheit_to_k(-40.0) == Approx(celsius_to_k(-40.0)).epsilon(1e-14));
    CHECK(k_to_fahrenheit(celsius_to_k(100.0)) == Approx(212.0).epsilon(1e-13));
    CHECK(fahrenheit_difference_to_k(180.0) == Approx(100.0).epsilon(1e-14));
}

TEST_CASE("factors agree with each other") {
    // By their definitions: horsepower = 550 ft lbf/s, psi = lbf/in2, with lbf = lb times standard gravity.
    const double newtons_per_pound_force = kilograms_per_pound * gravity_m_s2;
    CHECK(watts_per_horsepower == published(550.0 * metres_per_foot * newtons_per_pound_force));
    CHECK(pascals_per_psi == published(newtons_per_pound_force / (metres_per_inch * metres_per_inch)));
    // Air power in hp = cfm x in. w.c. / 6356 (fan engineering texts). Their inch is of water at 68 F, 998.2
    // kg/m3 (from memory); ours is the conventional one of 1000 kg/m3.
    CHECK(0.9982 * inwc_to_pa(1.0) * cfm_to_m3s(6356.0) == Approx(watts_per_horsepower).epsilon(3e-4));
    // One atmosphere is 14.696 psi (rounded) by the same definitions.
    CHECK(pa_to_psi(standard_pressure_pa) == Approx(14.696).epsilon(1e-5));
}

TEST_CASE("every conversion comes back") {
    for (double value : {-40.0, 0.25, 3.5, 100000.0}) {
        const auto same = Approx(value).epsilon(1e-13);
        CHECK(pa_to_inwc(inwc_to_pa(value)) == same);
        CHECK(pa_to_psi(psi_to_pa(value)) == same);
        CHECK(k_to_celsius(celsius_to_k(value)) == Approx(value).epsilon(1e-12));
        CHECK(k_to_fahrenheit(fahrenheit_to_k(value)) == Approx(value).epsilon(1e-12));
        CHECK(k_difference_to_fahrenheit(fahrenheit_difference_to_k(value)) == same);
        CHECK(w_to_btuh(btuh_to_w(value)) == same);
        CHECK(m3s_to_cfm(cfm_to_m3s(value)) == same);
        CHECK(m3s_to_cfh(cfh_to_m3s(value)) == same);
        CHECK(m_to_inch(inch_to_m(value)) == same);
        CHECK(m_to_foot(foot_to_m(value)) == same);
        CHECK(rad_s_to_rpm(rpm_to_rad_s(value)) == same);
        CHECK(j_per_m3_to_btu_per_ft3(btu_per_ft3_to_j_per_m3(value)) == same);
    }
}
