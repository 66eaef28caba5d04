// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>

namespace lightoff::bench {

inline constexpr std::size_t kMaxParts = 128;
inline constexpr std::size_t kMaxCapacitors = 4;

/// What hands have done and left, as far as it is not among the furnace's own inputs.
struct Handiwork {
    std::array<std::uint64_t, kMaxParts / 64> parts_off{}; ///< bits by part of the catalogue
    std::array<std::int8_t, kMaxParts> eighths{}; ///< that a part's screw stands from how it was found
    /// Volts that a capacitor taken out of circuit still holds, in the order of the netlist. Held for good:
    /// its own leakage takes hours.
    std::array<double, kMaxCapacitors> capacitor_v{};
    double small_breaker_heat = 0.0; ///< 0 cold, 1 trips
    double other_gas_m3_s = 0.0;     ///< what the other appliances draw once they are on again
    std::uint8_t small_breaker_tripped = 0;
    std::uint8_t door_switch_taped = 0;
    std::uint8_t tagged = 0; ///< shut off, with a tag on it
    std::uint8_t told = 0;   ///< bits by Topic
    std::uint8_t signed_off = 0;
    std::uint8_t appliances_off = 0;
    std::uint16_t spare = 0;

    [[nodiscard]] bool is_off(int part) const {
        const auto i = static_cast<std::size_t>(part);
        return (parts_off[i / 64] >> (i % 64) & 1U) != 0;
    }
    void set_off(int part, bool off) {
        const auto i = static_cast<std::size_t>(part);
        const std::uint64_t bit = std::uint64_t{1} << (i % 64);
        parts_off[i / 64] = off ? parts_off[i / 64] | bit : parts_off[i / 64] & ~bit;
    }

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("parts_off", "", self.parts_off);
        visit("eighths", "", self.eighths);
        visit("capacitor", "V", self.capacitor_v);
        visit("small_breaker_heat", "", self.small_breaker_heat);
        visit("other_gas", "m3/s", self.other_gas_m3_s);
        visit("small_breaker_tripped", "", self.small_breaker_tripped);
        visit("door_switch_taped", "", self.door_switch_taped);
        visit("tagged", "", self.tagged);
        visit("told", "", self.told);
        visit("signed_off", "", self.signed_off);
        visit("appliances_off", "", self.appliances_off);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const Handiwork&, const Handiwork&) = default;
};

} // namespace lightoff::bench
