// SPDX-License-Identifier: MIT
#pragma once
#include "units/fields.hpp"
#include "units/pinned_math.hpp"
#include "units/random.hpp"

#include <bit>
#include <cstdint>

/// One hash over many results of every pinned function, on arguments made by the random numbers of the same
/// room.
inline std::uint64_t units_golden_hash() {
    namespace units = lightoff::units;
    std::uint64_t hash = 0;
    const auto add = [&](double value) { hash = units::mix(hash, std::bit_cast<std::uint64_t>(value)); };
    for (std::uint64_t i = 0; i < 100000; ++i) {
        const double a = units::random_signed(1, 0, i);
        const double b = units::random_signed(1, 1, i);
        add(units::exp(800.0 * a));
        add(units::exp(b));
        add(units::log(2.0 + 2.0 * a));
        add(units::log(units::exp(700.0 * b)));
        add(units::pow(4.0 + 4.0 * a, 20.0 * b));
        add(units::sin(1.0e5 * a));
        add(units::cos(10.0 * b));
        add(units::atan2(a, b));
        add(units::tanh(4.0 * a));
        add(units::cbrt(1000.0 * b));
    }
    return hash;
}
