// SPDX-License-Identifier: MIT
#include "units/pinned_math.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <bit>
#include <cfloat>
#include <cmath>
#include <limits>
#include <sstream>
#include <vector>

namespace units = lightoff::units;

// The reference is the C library in 80-bit long double: 64 bits, so its own error is below 0.001 ulp of a
// double.
static_assert(LDBL_MANT_DIG >= 64);

namespace {

constexpr std::uint64_t kSamples = 200000;
constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kLeastDouble = std::numeric_limits<double>::denorm_min();

/// Error of `got` in units in the last place of `wanted`.
double error_ulp(double got, long double wanted) {
    const double rounded = static_cast<double>(wanted);
    if (std::isinf(rounded) || got == rounded)
        return got == rounded ? 0.0 : kInfinity;
    if (std::isnan(got))
        return kInfinity;
    int exponent = 0;
    (void)std::frexp(rounded, &exponent);
    const long double ulp = std::ldexp(1.0L, std::max(exponent, DBL_MIN_EXP) - DBL_MANT_DIG);
    return static_cast<double>(std::abs(static_cast<long double>(got) - wanted) / ulp);
}

/// The largest error, and where.
struct Worst {
    double ulp = 0.0;
    std::ostringstream where;

    void see(double got, long double wanted, double x, double y = 0.0) {
        const double error = error_ulp(got, wanted);
        if (error <= ulp)
            return;
        ulp = error;
        where.str("");
        where.precision(17);
        where << error << " ulp at " << x << ", " << y;
    }
};

double uniform(std::uint64_t stream, std::uint64_t i, double low, double high) {
    return low + (high - low) * units::random_unit(20, stream, i);
}

template <class Pinned, class Reference>
void check_range(Pinned pinned, Reference reference, double low, double high, double bound) {
    Worst worst;
    const auto see = [&](double x) { worst.see(pinned(x), reference(static_cast<long double>(x)), x); };
    for (std::uint64_t i = 0; i < kSamples; ++i)
        see(uniform(0, i, low, high));
    see(low);
    see(high);
    INFO("from " << low << " to " << high << ": " << worst.where.str());
    CHECK(worst.ulp <= bound);
}

/// The same with the argument spread evenly over the exponents between 2^low and 2^high, both signs if asked.
template <class Pinned, class Reference>
void check_octaves(Pinned pinned, Reference reference, int low, int high, bool both_signs, double bound) {
    Worst worst;
    for (std::uint64_t i = 0; i < kSamples; ++i) {
        const int exponent = low + static_cast<int>(uniform(1, i, 0.0, high - low));
        const double size = std::ldexp(uniform(2, i, 1.0, 2.0), exponent);
        const double x = both_signs && i % 2 == 0 ? -size : size;
        worst.see(pinned(x), reference(static_cast<long double>(x)), x);
    }
    INFO("2^" << low << " to 2^" << high << ": " << worst.where.str());
    CHECK(worst.ulp <= bound);
}

bool same_bits(double a, double b) {
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

long double exp_reference(long double x) {
    return std::exp(x);
}
long double log_reference(long double x) {
    return std::log(x);
}
long double sin_reference(long double x) {
    return std::sin(x);
}
long double cos_reference(long double x) {
    return std::cos(x);
}
long double tanh_reference(long double x) {
    return std::tanh(x);
}
long double cbrt_reference(long double x) {
    return std::cbrt(x);
}

} // namespace

TEST_CASE("exp is within 0.52 ulp, subnormal results within 0.76") {
    check_range(units::exp, exp_reference, -1.0, 1.0, 0.52);
    check_range(units::exp, exp_reference, -40.0, 40.0, 0.52);
    check_range(units::exp, exp_reference, -708.0, 709.78, 0.52);
    check_range(units::exp, exp_reference, -745.13, -708.0, 0.76);
    check_octaves(units::exp, exp_reference, -1074, 8, true, 0.52);
    // Arguments half way between two table entries, where the reduced argument is largest.
    Worst worst;
    for (int n = -90000; n < 90000; ++n) {
        const double x = (n + 0.5) * 0.693147180559945309 / 128.0;
        worst.see(units::exp(x), exp_reference(static_cast<long double>(x)), x);
    }
    INFO(worst.where.str());
    CHECK(worst.ulp <= 0.52);
}

TEST_CASE("exp at its edges") {
    CHECK(units::exp(0.0) == 1.0);
    CHECK(units::exp(-0.0) == 1.0);
    CHECK(units::exp(kLeastDouble) == 1.0);
    CHECK(units::exp(kInfinity) == kInfinity);
    CHECK(same_bits(units::exp(-kInfinity), 0.0));
    CHECK(std::isnan(units::exp(kNaN)));
    // The largest argument with a finite result, the next one, and the same at the lower end.
    CHECK(std::isfinite(units::exp(709.782712893384)));
    CHECK(units::exp(709.7827128933841) == kInfinity);
    CHECK(units::exp(-745.1332191019411) == kLeastDouble);
    CHECK(units::exp(-745.1332191019412) == 0.0);
}

TEST_CASE("log is within 0.53 ulp") {
    check_range(units::log, log_reference, 0.5, 2.0, 0.53);
    check_range(units::log, log_reference, 0.98, 1.02, 0.53);
    check_range(units::log, log_reference, 1.0 - 1e-9, 1.0 + 1e-9, 0.53);
    check_range(units::log, log_reference, 0.001, 1.0e6, 0.53);
    check_octaves(units::log, log_reference, -1074, 1023, false, 0.53);
    // Both sides of every edge between two bins of the table.
    Worst worst;
    const std::uint64_t one = std::bit_cast<std::uint64_t>(0.5);
    for (std::uint64_t edge = 0; edge < 512; ++edge)
        for (std::uint64_t step = 0; step < 5; ++step) {
            const double x = std::bit_cast<double>(one + (edge << 45U) + step - 2);
            worst.see(units::log(x), log_reference(static_cast<long double>(x)), x);
        }
    INFO(worst.where.str());
    CHECK(worst.ulp <= 0.53);
}

TEST_CASE("log at its edges") {
    CHECK(same_bits(units::log(1.0), 0.0));
    CHECK(units::log(0.0) == -kInfinity);
    CHECK(units::log(-0.0) == -kInfinity);
    CHECK(units::log(kInfinity) == kInfinity);
    CHECK(std::isnan(units::log(-1.0)));
    CHECK(std::isnan(units::log(-kInfinity)));
    CHECK(std::isnan(units::log(kNaN)));
    CHECK(units::log(kLeastDouble) == Approx(-744.4400719213812).epsilon(1e-15)); // -1074 ln 2
}

TEST_CASE("pow is within 0.53 ulp, subnormal results within 0.76") {
    Worst plain;
    Worst near_one;
    Worst wide;
    Worst tiny;
    for (std::uint64_t i = 0; i < kSamples; ++i) {
        const auto see = [](Worst& worst, double x, double y) {
            const long double wanted = std::pow(static_cast<long double>(x), static_cast<long double>(y));
            worst.see(units::pow(x, y), wanted, x, y);
        };
        see(plain, uniform(0, i, 0.0, 3.0), uniform(1, i, -5.0, 5.0));
        see(near_one, uniform(2, i, 0.99, 1.01), uniform(3, i, -60000.0, 60000.0));
        see(wide, std::ldexp(uniform(4, i, 1.0, 2.0), static_cast<int>(i % 2000) - 1000),
            uniform(5, i, -1.0, 1.0));
        see(tiny, uniform(6, i, 0.01, 0.9),
            uniform(7, i, 708.0, 745.0) / std::log(uniform(6, i, 0.01, 0.9)) * -1.0);
    }
    INFO(plain.where.str() << "; " << near_one.where.str() << "; " << wide.where.str() << "; "
                           << tiny.where.str());
    CHECK(plain.ulp <= 0.53);
    CHECK(near_one.ulp <= 0.53);
    CHECK(wide.ulp <= 0.53);
    CHECK(tiny.ulp <= 0.76);
}

TEST_CASE("pow agrees with exact powers") {
    double power = 1.0;
    for (int n = 0; n <= 22; ++n) {
        CHECK(units::pow(10.0, n) == power); // 10^22 is the last that a double holds exactly
        power *= 10.0;
    }
    CHECK(units::pow(2.0, 1023.0) == 0x1p1023);
    CHECK(units::pow(2.0, -1074.0) == kLeastDouble);
    CHECK(units::pow(9.0, 0.5) == 3.0);
}

TEST_CASE("pow at its edges") {
    CHECK(units::pow(0.0, 2.0) == 0.0);
    CHECK(units::pow(0.0, -2.0) == kInfinity);
    CHECK(units::pow(0.0, 0.0) == 1.0);
    CHECK(units::pow(kNaN, 0.0) == 1.0);
    CHECK(units::pow(1.0, kInfinity) == 1.0);
    CHECK(units::pow(kInfinity, 0.5) == kInfinity);
    CHECK(units::pow(kInfinity, -0.5) == 0.0);
    CHECK(units::pow(2.0, kInfinity) == kInfinity);
    CHECK(units::pow(0.5, kInfinity) == 0.0);
    CHECK(units::pow(2.0, -kInfinity) == 0.0);
    CHECK(units::pow(2.0, 1024.0) == kInfinity);
    CHECK(units::pow(2.0, -1100.0) == 0.0);
    CHECK(units::pow(2.0, 1e-300) == 1.0);
    CHECK(units::pow(kLeastDouble, 0.5) == 0x1p-537);
    CHECK(std::isnan(units::pow(-2.0, 2.0)));
    CHECK(std::isnan(units::pow(kNaN, 2.0)));
    CHECK(std::isnan(units::pow(2.0, kNaN)));
}

TEST_CASE("sin and cos are within 0.82 ulp") {
    const auto check = [](double low, double high) {
        check_range(units::sin, sin_reference, low, high, 0.82);
        check_range(units::cos, cos_reference, low, high, 0.82);
    };
    check(-0.8, 0.8);
    check(-7.0, 7.0);
    check(-1.0e3, 1.0e3);
    check(-1.0e6, 1.0e6);
    check_octaves(units::sin, sin_reference, -1074, 19, true, 0.82);
    check_octaves(units::cos, cos_reference, -1074, 19, true, 0.82);
    // The doubles nearest to multiples of pi/4, where the reduction loses most. pi in two parts, 53 + 11
    // bits.
    Worst worst;
    for (int n = 1; n <= 1273000; n += (n < 5000 ? 1 : 97)) {
        const double x = static_cast<double>(n * (0.785398163397448309616L));
        worst.see(units::sin(x), sin_reference(static_cast<long double>(x)), x);
        worst.see(units::cos(x), cos_reference(static_cast<long double>(x)), x);
    }
    INFO(worst.where.str());
    CHECK(worst.ulp <= 0.82);
}

TEST_CASE("sin and cos at their edges") {
    CHECK(same_bits(units::sin(0.0), 0.0));
    CHECK(same_bits(units::sin(-0.0), -0.0));
    CHECK(units::sin(kLeastDouble) == kLeastDouble);
    CHECK(units::cos(0.0) == 1.0);
    CHECK(units::cos(kLeastDouble) == 1.0);
    for (double bad : {kInfinity, -kInfinity, kNaN, 1000000.1, -1000000.1}) {
        CHECK(std::isnan(units::sin(bad)));
        CHECK(std::isnan(units::cos(bad)));
    }
}

TEST_CASE("atan2 is within 1.5 ulp in all quadrants") {
    Worst plain;
    Worst flat;
    Worst wide;
    for (std::uint64_t i = 0; i < kSamples; ++i) {
        const auto see = [](Worst& worst, double y, double x) {
            worst.see(units::atan2(y, x),
                      std::atan2(static_cast<long double>(y), static_cast<long double>(x)), y, x);
        };
        see(plain, uniform(0, i, -1.0, 1.0), uniform(1, i, -1.0, 1.0));
        see(flat, uniform(2, i, -0.1, 0.1), uniform(3, i, -1.0, 1.0));
        const int a = static_cast<int>(uniform(4, i, -1074.0, 1023.0));
        const int b = static_cast<int>(uniform(5, i, -1074.0, 1023.0));
        see(wide, std::ldexp(uniform(6, i, -2.0, 2.0), a), std::ldexp(uniform(7, i, -2.0, 2.0), b));
    }
    INFO(plain.where.str() << "; " << flat.where.str() << "; " << wide.where.str());
    CHECK(plain.ulp <= 1.5);
    CHECK(flat.ulp <= 1.5);
    CHECK(wide.ulp <= 1.5);
}

TEST_CASE("atan2 at its edges") {
    // ISO C, annex F.10.1.4, as the C library has it.
    const std::vector<double> values{0.0, 1.0, kInfinity, kLeastDouble, 0x1.8p1023, 0x1p-1022};
    for (double height : values)
        for (double width : values)
            for (double y : {height, -height})
                for (double x : {width, -width}) {
                    INFO(y << ", " << x);
                    const long double wanted =
                        std::atan2(static_cast<long double>(y), static_cast<long double>(x));
                    CHECK(error_ulp(units::atan2(y, x), wanted) <= 1.5);
                    CHECK(std::signbit(units::atan2(y, x)) == std::signbit(y));
                }
    CHECK(std::isnan(units::atan2(kNaN, 1.0)));
    CHECK(std::isnan(units::atan2(1.0, kNaN)));
}

TEST_CASE("tanh is within 3 ulp") {
    check_range(units::tanh, tanh_reference, -0.01, 0.01, 3.0);
    check_range(units::tanh, tanh_reference, -1.0, 1.0, 3.0);
    check_range(units::tanh, tanh_reference, -25.0, 25.0, 3.0);
    check_octaves(units::tanh, tanh_reference, -1074, 6, true, 3.0);
}

TEST_CASE("tanh at its edges") {
    CHECK(same_bits(units::tanh(0.0), 0.0));
    CHECK(same_bits(units::tanh(-0.0), -0.0));
    CHECK(units::tanh(kLeastDouble) == kLeastDouble);
    CHECK(units::tanh(kInfinity) == 1.0);
    CHECK(units::tanh(-kInfinity) == -1.0);
    CHECK(std::isnan(units::tanh(kNaN)));
}

TEST_CASE("cbrt is within 0.68 ulp") {
    check_range(units::cbrt, cbrt_reference, -10.0, 10.0, 0.68);
    check_octaves(units::cbrt, cbrt_reference, -1074, 1023, true, 0.68);
}

TEST_CASE("cbrt at its edges") {
    for (int n = -100; n <= 100; ++n)
        CHECK(units::cbrt(1.0 * n * n * n) == n);
    CHECK(same_bits(units::cbrt(0.0), 0.0));
    CHECK(same_bits(units::cbrt(-0.0), -0.0));
    CHECK(units::cbrt(kInfinity) == kInfinity);
    CHECK(units::cbrt(-kInfinity) == -kInfinity);
    CHECK(units::cbrt(kLeastDouble) == 0x1p-358);
    CHECK(std::isnan(units::cbrt(kNaN)));
}
