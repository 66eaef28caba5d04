// SPDX-License-Identifier: MIT
#pragma once
#include "units/complex_pair.hpp"
#include <array>
#include <cstddef>

/// The small dense system of a tick: the network reduced to its ports, in admittance form
///     (Y_network + Y_ports) v = i.
namespace lightoff::electrical {

/// One row for each port. Column 0 is the right-hand side, column 1 + k belongs to port k; two columns lie
/// side by side in a pair.
template <std::size_t MaxPorts>
struct PortMatrix {
    static constexpr std::size_t kPairs = (1 + MaxPorts + 1) / 2;
    using Row = std::array<units::ComplexPair, kPairs>;
    std::array<Row, MaxPorts> rows{};

    [[nodiscard]] units::Complex get(std::size_t row, std::size_t column) const {
        return rows[row][column / 2].lane(column % 2);
    }
    void set(std::size_t row, std::size_t column, units::Complex value) {
        rows[row][column / 2].set_lane(column % 2, value);
    }
    /// A whole pair at once: a half that was just written can't be read as part of a pair without a wait.
    void add(std::size_t row, std::size_t column, units::Complex value) {
        rows[row][column / 2] += units::in_lane(column % 2, value);
    }
};

/// Solves the first N rows by Gaussian elimination, last port first, and leaves the matrix changed.
/// No pivoting: a passive network's admittance matrix has a positive definite real part, for which the
/// factors stay bounded (accretive matrices; Golub and Van Loan, from memory). Tested against ngspice.
template <std::size_t N, std::size_t MaxPorts>
void solve_passive(PortMatrix<MaxPorts>& a, std::array<units::Complex, MaxPorts>& x) {
    using units::Complex;
    using units::ComplexPair;
    std::array<Complex, N> conjugate; // of the pivots, and their inverse squared magnitudes
    std::array<double, N> per_square;
#pragma GCC unroll 8
    for (std::size_t step = 0; step < N; ++step) {
        const std::size_t c = N - 1 - step;
        conjugate[c] = units::conj(a.get(c, 1 + c));
        per_square[c] = 1.0 / units::norm(conjugate[c]); // the products below do not wait for it
#pragma GCC unroll 8
        for (std::size_t r = 0; r < c; ++r) {
            const ComplexPair share(a.get(r, 1 + c) * conjugate[c] * per_square[c]);
#pragma GCC unroll 8
            for (std::size_t k = 0; k < (c + 2) / 2; ++k) // columns 0 to c are still needed
                a.rows[r][k] -= share * a.rows[c][k];
        }
    }
    for (std::size_t r = 0; r < N; ++r) {
        Complex sum = a.get(r, 0);
        for (std::size_t k = 0; k < r; ++k)
            sum -= a.get(r, 1 + k) * x[k];
        x[r] = sum * conjugate[r] * per_square[r];
    }
}

} // namespace lightoff::electrical
