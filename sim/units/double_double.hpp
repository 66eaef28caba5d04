// SPDX-License-Identifier: MIT
#pragma once

/// Sums and products that keep what rounding drops, as an unevaluated pair hi + lo (about 106 bits).
/// They hold only under round-to-nearest and without fused operations, hence -ffp-contract=off.
/// Sources: T. J. Dekker, "A floating-point technique for extending the available precision",
/// Numer. Math. 18 (1971); D. E. Knuth, The Art of Computer Programming vol. 2, section 4.2.2.
namespace lightoff::units {

struct DoubleDouble {
    double hi = 0.0;
    double lo = 0.0;
};

/// a + b exactly; |a| >= |b| or a == 0.
constexpr DoubleDouble fast_two_sum(double a, double b) {
    const double sum = a + b;
    return {sum, b - (sum - a)};
}

/// a + b exactly, in any order of size.
constexpr DoubleDouble two_sum(double a, double b) {
    const double sum = a + b;
    const double b_seen = sum - a;
    const double a_seen = sum - b_seen;
    return {sum, (a - a_seen) + (b - b_seen)};
}

/// Splits into two halves of at most 26 bits each; |a| below 2^990.
constexpr DoubleDouble split_halves(double a) {
    const double wide = 134217729.0 * a; // 2^27 + 1
    const double hi = wide - (wide - a);
    return {hi, a - hi};
}

/// a * b exactly, if nothing overflows or becomes subnormal on the way.
constexpr DoubleDouble two_product(double a, double b) {
    const double product = a * b;
    const DoubleDouble x = split_halves(a);
    const DoubleDouble y = split_halves(b);
    return {product, x.lo * y.lo - (((product - x.hi * y.hi) - x.lo * y.hi) - x.hi * y.lo)};
}

constexpr DoubleDouble operator+(DoubleDouble a, DoubleDouble b) {
    const DoubleDouble sum = two_sum(a.hi, b.hi);
    return fast_two_sum(sum.hi, sum.lo + (a.lo + b.lo));
}

constexpr DoubleDouble operator*(DoubleDouble a, DoubleDouble b) {
    const DoubleDouble product = two_product(a.hi, b.hi);
    return fast_two_sum(product.hi, product.lo + (a.hi * b.lo + a.lo * b.hi));
}

constexpr DoubleDouble operator/(DoubleDouble a, double b) {
    const double quotient = a.hi / b;
    const DoubleDouble back = two_product(quotient, b);
    return fast_two_sum(quotient, ((a.hi - back.hi) - back.lo + a.lo) / b);
}

} // namespace lightoff::units
