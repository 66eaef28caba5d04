// SPDX-License-Identifier: MIT
#include "units/double_double.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lightoff::units;

TEST_CASE("an exact sum keeps what rounding drops") {
    const DoubleDouble sum = two_sum(1.0, 0x1p-80);
    CHECK(sum.hi == 1.0);
    CHECK(sum.lo == 0x1p-80);
    for (std::uint64_t i = 0; i < 1000; ++i) {
        const double a = random_signed(3, 0, i);
        const double b = random_signed(3, 1, i) * 0x1p-8;
        const DoubleDouble both = two_sum(a, b);
        // 80-bit long double holds 64 bits: enough for a sum of numbers at most 11 binary places apart.
        const long double exact = static_cast<long double>(a) + static_cast<long double>(b);
        if (std::abs(b) > std::abs(a) * 0x1p-10)
            CHECK(static_cast<long double>(both.hi) + static_cast<long double>(both.lo) == exact);
    }
}

TEST_CASE("an exact product agrees with a fused multiply-add") {
    for (std::uint64_t i = 0; i < 1000; ++i) {
        const double a = random_signed(4, 0, i);
        const double b = random_signed(4, 1, i);
        const DoubleDouble product = two_product(a, b);
        CHECK(product.hi == a * b);
        CHECK(product.lo == std::fma(a, b, -product.hi)); // fma gives the rounding error exactly
    }
}

TEST_CASE("a quotient times its divisor comes back to 2^-100") {
    for (std::uint64_t i = 0; i < 1000; ++i) {
        const double a = random_signed(5, 0, i);
        const double b = 1.5 + random_signed(5, 1, i);
        const DoubleDouble back = DoubleDouble{a, 0.0} / b * DoubleDouble{b, 0.0};
        CHECK(std::abs((back.hi - a) + back.lo) <= std::abs(a) * 0x1p-100);
    }
}
