// SPDX-License-Identifier: MIT
//
// Windows: digits, ranges, OL, settling, accuracy. Sums by hand; that a meter's error stays within its
// accuracy is what accuracy means.
#include "instruments/display.hpp"
#include "units/convert.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>

using namespace lightoff;
using namespace lightoff::instruments;

namespace {

std::string shown(Quantity quantity, double si_value) {
    Display display;
    show(display, quantity, si_value);
    return text(display);
}

} // namespace

TEST_CASE("a window rounds to its range's last digit and ranges by itself") {
    CHECK(shown(Quantity::ac_volts, 0.0) == "0.000 V");
    CHECK(shown(Quantity::ac_volts, 5.9994) == "5.999 V");
    CHECK(shown(Quantity::ac_volts, 6.0006) == "6.00 V");
    CHECK(shown(Quantity::ac_volts, 24.314) == "24.31 V");
    CHECK(shown(Quantity::ac_volts, 120.06) == "120.1 V");
    CHECK(shown(Quantity::ac_volts, -0.4) == "0.000 V"); // r.m.s. has no sign
    CHECK(shown(Quantity::dc_volts, -0.4) == "-0.400 V");
    CHECK(shown(Quantity::dc_microamps, 3.514e-6) == "3.51 µA");
    CHECK(shown(Quantity::dc_microamps, -75.0e-6) == "-75.0 µA");
    CHECK(shown(Quantity::ohms, 43.26) == "43.3 Ω");
    CHECK(shown(Quantity::ohms, 3.3e6) == "3.300 MΩ");
    CHECK(shown(Quantity::ohms, 12.0e6) == "12.00 MΩ");
    CHECK(shown(Quantity::capacitance, 15e-6) == "15.00 µF");
    CHECK(shown(Quantity::capacitance, 3.02e-6) == "3.020 µF");
    CHECK(shown(Quantity::pressure, units::inwc_to_pa(-0.0314)) == "-0.031 in. w.c.");
    CHECK(shown(Quantity::pressure, units::inwc_to_pa(14.0)) == "14.00 in. w.c.");
    CHECK(shown(Quantity::temperature, units::fahrenheit_to_k(70.04)) == "70.0 °F");
    CHECK(shown(Quantity::temperature_difference, units::fahrenheit_difference_to_k(52.26)) == "52.3 °F");
    CHECK(shown(Quantity::speed, units::rpm_to_rad_s(1075.0)) == "1075 rpm");
    CHECK(shown(Quantity::power_factor, 0.934) == "0.93");
}

TEST_CASE("beyond the last range a window says OL") {
    CHECK(shown(Quantity::ac_volts, 600.0) == "600.0 V");
    CHECK(shown(Quantity::ac_volts, 601.0) == "OL");
    CHECK(shown(Quantity::ohms, 41e6) == "OL");
    CHECK(shown(Quantity::continuity, 700.0) == "OL");
    CHECK(shown(Quantity::ac_amps, 10.1) == "OL");
    Display display;
    show_overload(display, Quantity::ohms);
    CHECK(text(display) == "OL");
    CHECK_FALSE(value_of(display).known);
    blank(display);
    CHECK(text(display).empty());
    CHECK_FALSE(value_of(display).known);
}

TEST_CASE("a reading in SI with its accuracy: percent of reading, digits, half a step") {
    Display display;
    show(display, Quantity::ac_volts, 120.0); // 1 % and three digits of 0.1 V
    Value value = value_of(display);
    CHECK(value.value == Approx(120.0));
    CHECK(value.half_width == Approx(1.2 + 0.3 + 0.05));
    CHECK(value.unit == "V");
    show(display, Quantity::pressure, units::inwc_to_pa(3.5)); // 1 % and three digits of 0.001 in. w.c.
    value = value_of(display);
    CHECK(value.value == Approx(871.8).epsilon(1e-4)); // 3.5 x 249.089 Pa
    CHECK(value.half_width == Approx((0.035 + 0.0035) * 249.089).epsilon(1e-4));
    CHECK(value.unit == "Pa");
    show(display, Quantity::temperature, 310.9278); // 100 F: 0.1 % and ten digits of 0.1 F
    value = value_of(display);
    CHECK(value.value == Approx(310.9278).epsilon(1e-6));
    CHECK(value.half_width == Approx((0.1 + 1.0 + 0.05) / 1.8));
}

TEST_CASE("a window has settled when it has kept within its accuracy for 2 s") {
    Display display;
    const auto pass = [&](int ticks, double volts) {
        for (int i = 0; i < ticks; ++i) {
            age(display);
            show(display, Quantity::ac_volts, volts);
        }
    };
    pass(1, 24.0); // the first number
    CHECK(display.ticks_settled == 0);
    pass(39, 24.0);
    CHECK_FALSE(is_settled(display));
    pass(1, 24.0);
    CHECK(is_settled(display));
    pass(5, 24.2); // within 0.27 V of the anchor
    CHECK(is_settled(display));
    pass(1, 24.4); // a creep is counted from where it began
    CHECK(display.ticks_settled == 0);
    pass(40, 24.4);
    CHECK(is_settled(display));
    show_overload(display, Quantity::ac_volts);
    CHECK(display.ticks_settled == 0);
    pass(1, 5.0);
    pass(40, 5.0); // another range, another number
    CHECK(is_settled(display));
    show(display, Quantity::ac_volts, 24.4);
    CHECK(display.ticks_settled == 0);
}

TEST_CASE(
    "an instrument's error keeps within its accuracy over range and attempts, and within a third but for "
    "rounding") {
    int cases = 0;
    for (int q = 1; q < static_cast<int>(Quantity::count); ++q) {
        const auto quantity = static_cast<Quantity>(q);
        const QuantityRow& row = quantity_row(quantity);
        for (int r = 0; r < row.range_count; ++r) {
            const Range& range = row.ranges[static_cast<std::size_t>(r)];
            const UnitRow& unit = unit_row(range.unit);
            const double step = std::pow(10.0, range.exponent);
            for (std::uint64_t seed = 0; seed < 40; ++seed) {
                const double share = units::random_unit(seed, 99, static_cast<std::uint64_t>(q));
                const double in_unit = 0.97 * range.counts * step * share;
                const double si = unit.offset + unit.factor * in_unit;
                Display display;
                double read = with_error(quantity, si, calibration(seed, quantity));
                show(display, quantity, read);
                const Value value = value_of(display);
                INFO(row.id << " " << si << " seed " << seed << " shows " << text(display));
                REQUIRE(value.known);
                CHECK(std::abs(value.value - si) <= value.half_width * (1.0 + 1e-12));
                const double third = (range.fraction * in_unit + range.digits * step) / 3.0;
                CHECK(std::abs(read - si) <= unit.factor * third * (1.0 + 1e-9) + 1e-12);
                ++cases;
            }
        }
    }
    CHECK(cases > 2000);
}

TEST_CASE("each attempt has other meters, one attempt the same all the time") {
    std::set<double> gains;
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        const Calibration c = calibration(seed, Quantity::ac_volts);
        CHECK(c.gain == calibration(seed, Quantity::ac_volts).gain);
        CHECK(std::abs(c.gain) <= 1.0);
        CHECK(c.gain != calibration(seed, Quantity::dc_volts).gain);
        CHECK(c.gain != calibration(seed, Quantity::ac_volts, 1).gain);
        gains.insert(c.gain);
    }
    CHECK(gains.size() == 100);
    CHECK(*gains.begin() < -0.8); // drawn from the whole span
    CHECK(*gains.rbegin() > 0.8);
}
