// SPDX-License-Identifier: MIT
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <bit>
#include <cmath>

using namespace lightoff::units;

namespace {

/// Chi-square of counts against equal shares.
template <std::size_t N>
double chi_square(const std::array<int, N>& counts, double total) {
    const double share = total / static_cast<double>(N);
    double sum = 0.0;
    for (int count : counts)
        sum += (count - share) * (count - share) / share;
    return sum;
}

// Chi-square with n degrees of freedom has mean n and variance 2 n. Six standard deviations either way: too
// even is as suspect as too uneven.
void check_chi_square(double value, double degrees) {
    CHECK(std::abs(value - degrees) < 6.0 * std::sqrt(2.0 * degrees));
}

constexpr int kDraws = 1 << 18;

} // namespace

TEST_CASE("random numbers fill the unit interval evenly, along each of the three words") {
    for (int varied = 0; varied < 3; ++varied) {
        std::array<int, 256> counts{};
        for (std::uint64_t i = 0; i < kDraws; ++i) {
            const double u = random_unit(varied == 0 ? i : 7, varied == 1 ? i : 3, varied == 2 ? i : 11);
            REQUIRE(u >= 0.0);
            REQUIRE(u < 1.0);
            ++counts[static_cast<std::size_t>(u * 256.0)];
        }
        INFO("word " << varied);
        check_chi_square(chi_square(counts, kDraws), 255.0);
    }
}

TEST_CASE("neighbours in counter, stream and seed are independent") {
    const auto check_pairs = [](auto first, auto second) {
        std::array<int, 256> counts{};
        double product = 0.0;
        for (std::uint64_t i = 0; i < kDraws; ++i) {
            const double a = first(i);
            const double b = second(i);
            ++counts[static_cast<std::size_t>(a * 16.0) * 16 + static_cast<std::size_t>(b * 16.0)];
            product += (a - 0.5) * (b - 0.5);
        }
        check_chi_square(chi_square(counts, kDraws), 255.0);
        // The correlation of independent pairs has a standard deviation of 1 / sqrt(draws).
        CHECK(std::abs(12.0 * product / kDraws) < 6.0 / std::sqrt(1.0 * kDraws));
    };
    const auto base = [](std::uint64_t i) { return random_unit(1, 2, i); };
    check_pairs(base, [](std::uint64_t i) { return random_unit(1, 2, i + 1); });
    check_pairs(base, [](std::uint64_t i) { return random_unit(1, 3, i); });
    check_pairs(base, [](std::uint64_t i) { return random_unit(2, 2, i); });
    check_pairs(base, [](std::uint64_t i) { return random_unit(2, 1, i); });
}

TEST_CASE("flipping one bit of any word flips about half the bits of the result") {
    for (unsigned bit = 0; bit < 192; ++bit) {
        int flipped = 0;
        for (std::uint64_t i = 0; i < 1000; ++i) {
            std::array<std::uint64_t, 3> words{i, i * 3, i * 7};
            const std::uint64_t before = random_bits(words[0], words[1], words[2]);
            words[bit / 64] ^= 1ULL << (bit % 64);
            flipped += std::popcount(before ^ random_bits(words[0], words[1], words[2]));
        }
        INFO("bit " << bit);
        CHECK(std::abs(flipped - 32000) < 6 * 127); // binomial: sqrt(64000 / 4) = 126.5
    }
}

TEST_CASE("signed numbers are centred on zero") {
    double sum = 0.0;
    double squares = 0.0;
    for (std::uint64_t i = 0; i < kDraws; ++i) {
        const double s = random_signed(5, 6, i);
        REQUIRE(s >= -1.0);
        REQUIRE(s < 1.0);
        sum += s;
        squares += s * s;
    }
    CHECK(std::abs(sum / kDraws) < 6.0 / std::sqrt(3.0 * kDraws)); // variance of one draw is 1/3
    CHECK(squares / kDraws == Approx(1.0 / 3.0).epsilon(0.01));
}

// Our own function, so there is no outside value: fixed so that no attempt changes unseen.
TEST_CASE("random numbers keep their bits") {
    STATIC_REQUIRE(random_bits(0, 0, 0) == 0x238275BC38FCBE91ULL);
    STATIC_REQUIRE(random_bits(1, 2, 3) == 0xD0734750FDE362B3ULL);
    STATIC_REQUIRE(random_bits(0xFFFFFFFFFFFFFFFFULL, 0xFFFFFFFFFFFFFFFFULL, 0xFFFFFFFFFFFFFFFFULL) ==
                   0x595B17F487C0E71BULL);
}
