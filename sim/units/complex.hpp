// SPDX-License-Identifier: MIT
#pragma once
#include <cmath>

namespace lightoff::units {

/// A complex number with plain textbook operators. std::complex checks for infinities in every
/// product (slow) and leaves the order of operations to the library (other bits elsewhere).
struct Complex {
    double re = 0.0;
    double im = 0.0;

    constexpr Complex() = default;
    constexpr Complex(double real, double imaginary = 0.0) : re(real), im(imaginary) {}

    constexpr Complex& operator+=(Complex o) { return re += o.re, im += o.im, *this; }
    constexpr Complex& operator-=(Complex o) { return re -= o.re, im -= o.im, *this; }
    friend constexpr bool operator==(Complex, Complex) = default;
};

constexpr Complex operator-(Complex a) {
    return {-a.re, -a.im};
}
constexpr Complex operator+(Complex a, Complex b) {
    return {a.re + b.re, a.im + b.im};
}
constexpr Complex operator-(Complex a, Complex b) {
    return {a.re - b.re, a.im - b.im};
}
constexpr Complex operator*(Complex a, Complex b) {
    return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re};
}
constexpr Complex operator*(double k, Complex a) {
    return {k * a.re, k * a.im};
}
constexpr Complex operator*(Complex a, double k) {
    return {k * a.re, k * a.im};
}
constexpr Complex conj(Complex a) {
    return {a.re, -a.im};
}
/// Squared magnitude.
constexpr double norm(Complex a) {
    return a.re * a.re + a.im * a.im;
}
/// Magnitude; no guard against overflow, which no voltage or current here comes near.
inline double abs(Complex a) {
    return std::sqrt(norm(a));
}
/// 1/a; a must not be zero.
constexpr Complex inverse(Complex a) {
    const double n = norm(a);
    return {a.re / n, -a.im / n};
}
constexpr Complex operator/(Complex a, Complex b) {
    return a * inverse(b);
}

} // namespace lightoff::units
