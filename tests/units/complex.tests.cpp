// SPDX-License-Identifier: MIT
#include "units/complex.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <complex>

using namespace lightoff::units;

namespace {

std::complex<double> standard(Complex a) {
    return {a.re, a.im};
}

/// Within a few roundings of the size of the numbers involved.
void check_near(Complex got, std::complex<double> wanted, double size) {
    CHECK(std::abs(standard(got) - wanted) <= 4.0 * std::numeric_limits<double>::epsilon() * size);
}

} // namespace

TEST_CASE("complex arithmetic agrees with std::complex") {
    for (std::uint64_t i = 0; i < 2000; ++i) {
        const Complex a{random_signed(1, 0, i), random_signed(1, 1, i)};
        const Complex b{random_signed(1, 2, i) * 1000.0, random_signed(1, 3, i) * 1000.0};
        const double k = random_signed(1, 4, i);
        const std::complex<double> sa = standard(a);
        const std::complex<double> sb = standard(b);
        check_near(a + b, sa + sb, std::abs(sb) + 1.0);
        check_near(a - b, sa - sb, std::abs(sb) + 1.0);
        check_near(-a, -sa, 1.0);
        check_near(a * b, sa * sb, std::abs(sa) * std::abs(sb));
        check_near(a / b, sa / sb, std::abs(sa) / std::abs(sb));
        check_near(inverse(b), 1.0 / sb, 1.0 / std::abs(sb));
        check_near(k * a, k * sa, 1.0);
        check_near(a * k, k * sa, 1.0);
        check_near(conj(a), std::conj(sa), 1.0);
        CHECK(norm(b) == Approx(std::norm(sb)).epsilon(1e-15));
        CHECK(abs(b) == Approx(std::abs(sb)).epsilon(1e-15));
        Complex sum = a;
        sum += b;
        CHECK(sum == a + b);
        sum = a;
        sum -= b;
        CHECK(sum == a - b);
    }
}

TEST_CASE("a complex number is two doubles and nothing else") {
    STATIC_REQUIRE(std::is_trivially_copyable_v<Complex>);
    STATIC_REQUIRE(sizeof(Complex) == 2 * sizeof(double));
    STATIC_REQUIRE(Complex{0.0, 1.0} * Complex{0.0, 1.0} == Complex{-1.0});
}
