// SPDX-License-Identifier: MIT
#pragma once
#include "units/complex.hpp"

#include <cstddef>

namespace lightoff::units {

/// Two numbers in one register, worked on by one instruction (SSE2 on x86, NEON on ARM: the baseline of
/// both). Each lane rounds as a double does, so that results are those of the same sums written out.
using DoublePair = double __attribute__((vector_size(16)));

/// Two complex numbers side by side. Not set until they are set (`{}` makes zeros): clearing scratch first
/// costs as much as the sum that it is for.
struct ComplexPair {
    DoublePair re;
    DoublePair im;

    ComplexPair() = default;
    ComplexPair(DoublePair real, DoublePair imaginary) : re(real), im(imaginary) {}
    /// The same number in both lanes.
    explicit ComplexPair(Complex z) : re{z.re, z.re}, im{z.im, z.im} {}

    [[nodiscard]] Complex lane(std::size_t i) const { return {re[i], im[i]}; }
    void set_lane(std::size_t i, Complex z) {
        re[i] = z.re;
        im[i] = z.im;
    }
    ComplexPair& operator+=(const ComplexPair& o) {
        re += o.re;
        im += o.im;
        return *this;
    }
    ComplexPair& operator-=(const ComplexPair& o) {
        re -= o.re;
        im -= o.im;
        return *this;
    }
};

/// The number in one lane, 0 in the other.
inline ComplexPair in_lane(std::size_t i, Complex z) {
    const bool first = i == 0;
    const DoublePair re = {first ? z.re : 0.0, first ? 0.0 : z.re};
    const DoublePair im = {first ? z.im : 0.0, first ? 0.0 : z.im};
    return {re, im};
}
inline ComplexPair operator*(const ComplexPair& a, const ComplexPair& b) {
    return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re};
}
/// Squared magnitudes.
inline DoublePair norm(const ComplexPair& a) {
    return a.re * a.re + a.im * a.im;
}

} // namespace lightoff::units
