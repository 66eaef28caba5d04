// SPDX-License-Identifier: MIT
#include "units/pinned_math.hpp"

#include "units/double_double.hpp"

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>

/// Every function reduces its argument to a small interval, by a table where that pays, and sums a
/// short Taylor series there: the coefficients are the textbook ones and the cut is far below the
/// rounding. Tables are made by the compiler from the same series in double-double arithmetic.
namespace lightoff::units {
namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kSmallestNormal = std::numeric_limits<double>::min();
constexpr DoubleDouble kLn2{0x1.62e42fefa39efp-1, 0x1.abc9e3b39803fp-56};
constexpr DoubleDouble kPi{0x1.921fb54442d18p+1, 0x1.1a62633145c07p-53};
constexpr DoubleDouble kHalfPi{0x1.921fb54442d18p+0, 0x1.1a62633145c07p-54};

std::uint64_t bits(double x) {
    return std::bit_cast<std::uint64_t>(x);
}
double from_bits(std::uint64_t word) {
    return std::bit_cast<double>(word);
}

double magnitude(double x) {
    return from_bits(bits(x) & 0x7FFFFFFFFFFFFFFFULL);
}
double with_sign_of(double value, double sign) {
    return from_bits((bits(value) & 0x7FFFFFFFFFFFFFFFULL) | (bits(sign) & 0x8000000000000000ULL));
}
bool negative(double x) {
    return (bits(x) >> 63U) != 0;
}
/// The leading 21 bits, so that a product with a number of up to 32 bits is exact.
double leading_bits(double x) {
    return from_bits(bits(x) & 0xFFFFFFFF00000000ULL);
}

/// 2^k for -1022 <= k <= 1023.
double power_of_two(std::int64_t k) {
    return from_bits(static_cast<std::uint64_t>(k + 1023) << 52U);
}

/// x to the nearest whole number, |x| < 2^51: adding 1.5 * 2^52 leaves no bits for the fraction.
struct Nearest {
    double value;
    std::int64_t whole;
};
Nearest nearest(double x) {
    constexpr double kShift = 0x1.8p52;
    const double shifted = x + kShift;
    return {shifted - kShift,
            static_cast<std::int64_t>(bits(shifted) - std::bit_cast<std::uint64_t>(kShift))};
}

// ---------------------------------------------------------------------------------------------- exp

constexpr std::size_t kExpSteps = 128;

/// 2^(i/128): value and what its rounding dropped, relative to the value.
struct ExpEntry {
    double value;
    double dropped;
};

constexpr std::array<ExpEntry, kExpSteps> make_exp_table() {
    std::array<ExpEntry, kExpSteps> table{};
    for (std::size_t i = 0; i < kExpSteps; ++i) {
        const DoubleDouble x =
            kLn2 * DoubleDouble{static_cast<double>(i) / static_cast<double>(kExpSteps), 0.0};
        DoubleDouble sum{1.0, 0.0};
        for (int n = 28; n >= 1; --n)
            sum = DoubleDouble{1.0, 0.0} + x * sum / static_cast<double>(n);
        table[i] = {sum.hi, sum.lo / sum.hi};
    }
    return table;
}
constexpr std::array<ExpEntry, kExpSteps> kExpTable = make_exp_table();

/// x = (128 exponent + index) ln2/128 + r; growth = e^r - 1 plus the table's dropped part.
struct ExpParts {
    std::int64_t exponent;
    double value;
    double growth;
};

/// |x| < 800; `tail` is added to x as if x had more bits.
ExpParts exp_parts(double x, double tail) {
    constexpr double kStepsPerUnit = 0x1.71547652b82fep+7; // 128 / ln 2
    constexpr double kStepHi = 0x1.62e42fef8p-8;           // ln 2 / 128 to 34 bits: times n is exact
    constexpr double kStepLo = 0x1.1cf79abc9e3b4p-43;      // the rest of it
    const Nearest n = nearest(x * kStepsPerUnit);
    const double r = ((x - n.value * kStepHi) - n.value * kStepLo) + tail;
    const double r2 = r * r;
    const double series = r + r2 * ((0.5 + r * (1.0 / 6.0)) + r2 * (1.0 / 24.0 + r * (1.0 / 120.0)));
    const ExpEntry& entry = kExpTable[static_cast<std::size_t>(n.whole) % kExpSteps];
    return {n.whole >> 7, entry.value, series + entry.dropped};
}

double exp_with_tail(double x, double tail) {
    if (x != x)
        return kNaN;
    if (x > 709.79)
        return kInfinity;
    if (x < -745.14)
        return 0.0;
    const ExpParts parts = exp_parts(x, tail);
    const double mantissa = parts.value + parts.value * parts.growth;
    if (parts.exponent > -1022 && parts.exponent < 1023)
        return mantissa * power_of_two(parts.exponent);
    const std::int64_t half = parts.exponent / 2; // in two steps, so that neither factor is out of range
    return mantissa * power_of_two(half) * power_of_two(parts.exponent - half);
}

/// e^x - 1 for |x| < 700, accurate for small x too.
double exp_minus_one(double x) {
    const ExpParts parts = exp_parts(x, 0.0);
    const double scaled = parts.value * power_of_two(parts.exponent);
    return (scaled - 1.0) + scaled * parts.growth;
}

// ---------------------------------------------------------------------------------------------- log

constexpr std::size_t kLogBins = 128;
// The lower end of the reduced interval [0.703125, 1.40625); it must be a bin's edge on both sides.
constexpr std::uint64_t kLogFloor = 0x3FE6800000000000ULL;

/// For one bin of mantissas: the reciprocal of its centre, in steps of 1/256, and the centre's logarithm,
/// `hi` a whole number of 2^-42 so that a sum with k ln2 is exact.
struct LogEntry {
    double reciprocal;
    double hi;
    double lo;
};

/// ln(a / b) = 2 artanh((a - b) / (a + b)) by its series; 0.7 < a/b < 1.42.
constexpr DoubleDouble log_of_ratio(double a, double b) {
    const DoubleDouble s = DoubleDouble{a - b, 0.0} / (a + b);
    const DoubleDouble s2 = s * s;
    DoubleDouble sum{};
    for (int n = 43; n >= 1; n -= 2)
        sum = DoubleDouble{1.0, 0.0} / static_cast<double>(n) + s2 * sum;
    return DoubleDouble{2.0, 0.0} * s * sum;
}

constexpr double whole_part(double x) {
    return static_cast<double>(static_cast<std::int64_t>(x));
}

constexpr std::array<LogEntry, kLogBins> make_log_table() {
    std::array<LogEntry, kLogBins> table{};
    for (std::size_t i = 0; i < kLogBins; ++i) {
        const double low = std::bit_cast<double>(kLogFloor + (static_cast<std::uint64_t>(i) << 45U));
        const double high = std::bit_cast<double>(kLogFloor + (static_cast<std::uint64_t>(i + 1) << 45U));
        // The two bins beside 1 keep the reciprocal 1, so that the logarithm near 1 has no cancellation.
        const bool beside_one = low == 1.0 || high == 1.0;
        const double of_256 = beside_one ? 256.0 : whole_part(512.0 / (low + high) + 0.5);
        const DoubleDouble exact = log_of_ratio(256.0, of_256);
        const double hi = whole_part(exact.hi * 0x1p42) * 0x1p-42;
        table[i] = {of_256 / 256.0, hi, (exact.hi - hi) + exact.lo};
    }
    return table;
}
constexpr std::array<LogEntry, kLogBins> kLogTable = make_log_table();

/// ln x = `hi` (exact) + `lo` + ln(1 + a + b), with a and b exact and |a + b| < 1/128.
struct LogParts {
    double hi;
    double lo;
    double a;
    double b;
};

/// x > 0 and finite.
LogParts log_parts(double x) {
    constexpr double kLn2Hi = 0x1.62e42fefa38p-1; // a whole number of 2^-42
    constexpr double kLn2Lo = 0x1.ef35793c7673p-45;
    std::int64_t exponent = 0;
    if (x < kSmallestNormal) {
        x *= 0x1p54;
        exponent = -54;
    }
    const std::uint64_t offset = bits(x) - kLogFloor;
    const std::int64_t octaves = static_cast<std::int64_t>(offset) >> 52;
    const double z = from_bits(bits(x) - (static_cast<std::uint64_t>(octaves) << 52U));
    const LogEntry& entry = kLogTable[(offset >> 45U) % kLogBins];
    const double k = static_cast<double>(octaves + exponent);
    const double z_hi = leading_bits(z);
    return {k * kLn2Hi + entry.hi, k * kLn2Lo + entry.lo, z_hi * entry.reciprocal - 1.0,
            (z - z_hi) * entry.reciprocal};
}

/// ln x to about 66 bits, x > 0 and finite.
DoubleDouble log_wide(double x) {
    const LogParts parts = log_parts(x);
    const DoubleDouble r = two_sum(parts.a, parts.b);
    const DoubleDouble square = two_product(r.hi, r.hi);
    const double r3 = r.hi * square.hi;
    const double series =
        r3 *
        (1.0 / 3.0 +
         r.hi * (-1.0 / 4.0 +
                 r.hi * (1.0 / 5.0 +
                         r.hi * (-1.0 / 6.0 +
                                 r.hi * (1.0 / 7.0 +
                                         r.hi * (-1.0 / 8.0 + r.hi * (1.0 / 9.0 + r.hi * (-1.0 / 10.0))))))));
    const DoubleDouble first = two_sum(parts.hi, r.hi);
    const DoubleDouble second = two_sum(first.hi, -0.5 * square.hi);
    const double rest = (r.lo - r.hi * r.lo) - 0.5 * square.lo;
    const DoubleDouble third = two_sum(first.lo + second.lo, series);
    return fast_two_sum(second.hi, third.hi + (third.lo + (rest + parts.lo)));
}

// ------------------------------------------------------------------------------------------ sin, cos

constexpr double kMostRadians = 1.0e6;

/// x = quadrant * pi/2 + r, |r| <= pi/4.
struct Turn {
    std::int64_t quadrant;
    DoubleDouble r;
};

/// |x| <= kMostRadians: then the quadrant has at most 20 bits and its products with 33 bits are exact.
Turn reduce_turn(double x) {
    constexpr double kFirst = 0x1.921fb544p+0; // pi/2 in three pieces
    constexpr double kSecond = 0x1.0b4611a6p-34;
    constexpr double kThird = 0x1.3198a2e037073p-69;
    const Nearest n = nearest(x * 0x1.45f306dc9c883p-1); // 2/pi
    const DoubleDouble rough = two_sum(x - n.value * kFirst, -(n.value * kSecond));
    const DoubleDouble fine = two_sum(rough.hi, -(n.value * kThird));
    return {n.whole, fast_two_sum(fine.hi, fine.lo + rough.lo)};
}

double sin_near_zero(DoubleDouble r) {
    const double z = r.hi * r.hi;
    const double series =
        -1.0 / 6.0 +
        z * (1.0 / 120.0 +
             z * (-1.0 / 5040.0 +
                  z * (1.0 / 362880.0 +
                       z * (-1.0 / 39916800.0 + z * (1.0 / 6227020800.0 + z * (-1.0 / 1307674368000.0 +
                                                                               z / 355687428096000.0))))));
    return r.hi + (r.lo * (1.0 - 0.5 * z) + r.hi * z * series);
}

double cos_near_zero(DoubleDouble r) {
    const double z = r.hi * r.hi;
    const double series =
        1.0 / 24.0 +
        z * (-1.0 / 720.0 +
             z * (1.0 / 40320.0 +
                  z * (-1.0 / 3628800.0 +
                       z * (1.0 / 479001600.0 + z * (-1.0 / 87178291200.0 + z * (1.0 / 20922789888000.0))))));
    const double half = 0.5 * z;
    const double most = 1.0 - half;
    return most + (((1.0 - most) - half) + (z * z * series - r.hi * r.lo));
}

double sin_of_turn(const Turn& turn, std::int64_t quarter_turns_ahead) {
    const std::int64_t quadrant = (turn.quadrant + quarter_turns_ahead) & 3;
    const double value = quadrant % 2 == 0 ? sin_near_zero(turn.r) : cos_near_zero(turn.r);
    return quadrant < 2 ? value : -value;
}

// --------------------------------------------------------------------------------------------- atan2

constexpr std::size_t kAtanSteps = 17;

/// atan(i/16), each from the one before by the sum rule: the step is atan(16 / (256 + i(i-1))).
constexpr std::array<DoubleDouble, kAtanSteps> make_atan_table() {
    std::array<DoubleDouble, kAtanSteps> table{};
    for (std::size_t i = 1; i < kAtanSteps; ++i) {
        const DoubleDouble u = DoubleDouble{16.0, 0.0} / static_cast<double>(256 + i * (i - 1));
        const DoubleDouble minus_u2 = DoubleDouble{-1.0, 0.0} * u * u;
        DoubleDouble sum{};
        for (int n = 27; n >= 1; n -= 2)
            sum = DoubleDouble{1.0, 0.0} / static_cast<double>(n) + minus_u2 * sum;
        table[i] = table[i - 1] + u * sum;
    }
    return table;
}
constexpr std::array<DoubleDouble, kAtanSteps> kAtanTable = make_atan_table();

/// atan(small / large) for 0 <= small <= large, large > 0, both finite.
DoubleDouble atan_of_ratio(double small, double large) {
    if (large > 0x1p1000) {
        small *= 0x1p-100;
        large *= 0x1p-100;
    } else if (large < 0x1p-900) {
        small *= 0x1p100;
        large *= 0x1p100;
    }
    const Nearest step = nearest(16.0 * (small / large));
    const double c = step.value * (1.0 / 16.0);
    const double large_hi = leading_bits(large);
    const double u = ((small - c * large_hi) - c * (large - large_hi)) / (large + c * small);
    const double z = u * u;
    const double series = z * (-1.0 / 3.0 + z * (1.0 / 5.0 + z * (-1.0 / 7.0 + z * (1.0 / 9.0 - z / 11.0))));
    const DoubleDouble& base = kAtanTable[static_cast<std::size_t>(step.whole)];
    const DoubleDouble sum = fast_two_sum(base.hi, u);
    return {sum.hi, sum.lo + (base.lo + u * series)};
}

} // namespace

double exp(double x) {
    return exp_with_tail(x, 0.0);
}

double log(double x) {
    if (!(x > 0.0))
        return x == 0.0 ? -kInfinity : kNaN;
    if (x == kInfinity)
        return kInfinity;
    const LogParts parts = log_parts(x);
    const double r = parts.a + parts.b;
    const double r2 = r * r;
    const double r4 = r2 * r2;
    const double series = r2 * ((-1.0 / 2.0 + r * (1.0 / 3.0)) + r2 * (-1.0 / 4.0 + r * (1.0 / 5.0)) +
                                r4 * ((-1.0 / 6.0 + r * (1.0 / 7.0)) + r2 * (-1.0 / 8.0)));
    const double sum = parts.hi + r;
    return sum + (((parts.hi - sum) + r) + (parts.lo + series));
}

double pow(double base, double exponent) {
    if (exponent == 0.0 || base == 1.0)
        return 1.0;
    if (!(base >= 0.0) || exponent != exponent)
        return kNaN;
    if (base == 0.0 || base == kInfinity)
        return (base == 0.0) == (exponent < 0.0) ? kInfinity : 0.0;
    const DoubleDouble log_base = log_wide(base);
    const double rough = log_base.hi * exponent;
    if (rough > 710.0)
        return kInfinity;
    if (rough < -746.0)
        return 0.0;
    if (magnitude(rough) < 0x1p-60)
        return 1.0; // also keeps the product below from losing its low half
    const DoubleDouble product = two_product(log_base.hi, exponent);
    return exp_with_tail(product.hi, product.lo + log_base.lo * exponent);
}

double sin(double radians) {
    if (!(magnitude(radians) <= kMostRadians))
        return kNaN;
    if (magnitude(radians) < 0x1p-30)
        return radians;
    return sin_of_turn(reduce_turn(radians), 0);
}

double cos(double radians) {
    if (!(magnitude(radians) <= kMostRadians))
        return kNaN;
    return sin_of_turn(reduce_turn(radians), 1);
}

double atan2(double y, double x) {
    if (x != x || y != y)
        return kNaN;
    double height = magnitude(y);
    double width = magnitude(x);
    if (height == kInfinity || width == kInfinity) {
        height = height == kInfinity ? 1.0 : 0.0;
        width = width == kInfinity ? 1.0 : 0.0;
    }
    DoubleDouble angle{};
    if (height > width) {
        const DoubleDouble from_vertical = atan_of_ratio(width, height);
        const DoubleDouble sum = fast_two_sum(kHalfPi.hi, -from_vertical.hi);
        angle = {sum.hi, sum.lo + (kHalfPi.lo - from_vertical.lo)};
    } else if (height > 0.0) {
        angle = atan_of_ratio(height, width);
    }
    if (negative(x)) {
        const DoubleDouble sum = fast_two_sum(kPi.hi, -angle.hi);
        angle = {sum.hi, sum.lo + (kPi.lo - angle.lo)};
    }
    return with_sign_of(angle.hi + angle.lo, y);
}

double tanh(double x) {
    if (x != x)
        return kNaN;
    const double size = magnitude(x);
    if (size < 0x1p-30)
        return x;
    if (size > 20.0)
        return with_sign_of(1.0, x);
    const double grown = exp_minus_one(2.0 * size);
    const double value = size < 0.5 ? grown / (grown + 2.0) : 1.0 - 2.0 / (grown + 2.0);
    return with_sign_of(value, x);
}

double cbrt(double x) {
    if (x != x)
        return kNaN;
    double size = magnitude(x);
    if (size == 0.0 || size == kInfinity)
        return x;
    std::int64_t exponent = 0;
    if (size < kSmallestNormal) {
        size *= 0x1p54;
        exponent = -54;
    }
    exponent += static_cast<std::int64_t>(bits(size) >> 52U) - 1023;
    const std::int64_t third = (exponent + 1200) / 3 - 400; // rounded down
    const std::int64_t left = exponent - 3 * third;         // 0, 1 or 2
    const double mantissa = from_bits((bits(size) & 0x000FFFFFFFFFFFFFULL) | 0x3FF0000000000000ULL);
    constexpr std::array<double, 3> kRootOfTwoPower{1.0, 1.259921049894873, 1.587401051968199};
    // A parabola within 8e-4 over [1, 2] (Chebyshev fit), then two steps of Halley's rule for t^3 = m, each
    // of which leaves 2/3 of the cube of the relative error.
    const double m = mantissa * power_of_two(left);
    const double guess = (0.62568723 + mantissa * (0.43356059 - mantissa * 0.058361721)) *
                         kRootOfTwoPower[static_cast<std::size_t>(left)];
    const double cube = guess * guess * guess;
    const double better = guess * ((cube + 2.0 * m) / (2.0 * cube + m));
    // Cut to 21 bits the square is exact, and the last step adds a correction that is already small.
    const double t = leading_bits(better);
    const double ratio = m / (t * t);
    const double root = t + t * ((ratio - t) / (2.0 * t + ratio));
    return with_sign_of(root * power_of_two(third), x);
}

} // namespace lightoff::units
