// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

namespace lightoff::units {

/// Counter-based random numbers: a pure function of (seed, stream, counter), so nothing has to be
/// kept in the World and the order of calls does not matter. Mixing steps of the SplitMix64
/// generator (Steele, Lea, Flood 2014), applied to the three words in turn.
constexpr std::uint64_t random_bits(std::uint64_t seed, std::uint64_t stream, std::uint64_t counter) {
    constexpr auto scramble = [](std::uint64_t z) {
        z += 0x9E3779B97F4A7C15ULL;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
        return z ^ (z >> 31U);
    };
    return scramble(scramble(scramble(seed) ^ stream) ^ counter);
}

/// Uniform in [0, 1), 53 bits.
constexpr double random_unit(std::uint64_t seed, std::uint64_t stream, std::uint64_t counter) {
    return static_cast<double>(random_bits(seed, stream, counter) >> 11U) * 0x1.0p-53;
}

/// Uniform in [-1, 1).
constexpr double random_signed(std::uint64_t seed, std::uint64_t stream, std::uint64_t counter) {
    return 2.0 * random_unit(seed, stream, counter) - 1.0;
}

} // namespace lightoff::units
