// SPDX-License-Identifier: MIT
#pragma once
#include "units/complex.hpp"
#include <array>
#include <cstddef>

/// The small dense system of a tick: the network reduced to its ports, in admittance form
///     (Y_network + Y_ports) v = i.
/// Real and imaginary parts lie apart, so that a row is worked on several columns at a time.
namespace lightoff::electrical {

template <std::size_t MaxPorts>
struct PortMatrix {
    static constexpr std::size_t kWidth = MaxPorts + 2; ///< right-hand side in column n; even
    using Row = std::array<double, kWidth>;
    std::array<Row, MaxPorts> re{};
    std::array<Row, MaxPorts> im{};

    void set(std::size_t row, std::size_t column, units::Complex value) {
        re[row][column] = value.re;
        im[row][column] = value.im;
    }
    void add(std::size_t row, std::size_t column, units::Complex value) {
        re[row][column] += value.re;
        im[row][column] += value.im;
    }
    [[nodiscard]] units::Complex get(std::size_t row, std::size_t column) const {
        return {re[row][column], im[row][column]};
    }
};

/// Solves the first N rows in place by Gaussian elimination; x replaces the right-hand side in column N.
/// No pivoting: a passive network's admittance matrix has a positive definite real part, for which the
/// factors stay bounded (accretive matrices; Golub and Van Loan, from memory). Tested against ngspice.
template <std::size_t N, std::size_t MaxPorts>
void solve_passive(PortMatrix<MaxPorts>& a) {
    using units::Complex;
    constexpr std::size_t width = (N + 2) / 2 * 2;
    std::array<Complex, N> pivot;
    for (std::size_t c = 0; c < N; ++c) {
        pivot[c] = units::inverse(a.get(c, c));
        const auto re = a.re[c]; // copies: the compiler sees that no row below is touched by them
        const auto im = a.im[c];
        for (std::size_t r = c + 1; r < N; ++r) {
            const Complex share = a.get(r, c) * pivot[c];
            auto& below_re = a.re[r];
            auto& below_im = a.im[r];
            for (std::size_t k = 0; k < width; ++k) {
                below_re[k] -= share.re * re[k] - share.im * im[k];
                below_im[k] -= share.re * im[k] + share.im * re[k];
            }
        }
    }
    for (std::size_t r = N; r-- > 0;) {
        Complex x = a.get(r, N);
        for (std::size_t k = r + 1; k < N; ++k)
            x -= a.get(r, k) * a.get(k, N);
        a.set(r, N, x * pivot[r]);
    }
}

} // namespace lightoff::electrical
