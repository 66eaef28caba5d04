// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/quantity.hpp"

#include <array>
#include <cstdint>
#include <string>

namespace lightoff::instruments {

/// A display that has kept within its accuracy for so many ticks is a reading: 2 s.
inline constexpr std::uint32_t kSettledTicks = 40;

/// Bits of Display::flags.
inline constexpr std::uint8_t kOn = 1;       ///< a number or OL stands in the window
inline constexpr std::uint8_t kOverload = 2; ///< OL: more than the highest range, or an open circuit
inline constexpr std::uint8_t kBeep = 4;     ///< continuity, a glowing voltage tester, CO to act on
inline constexpr std::uint8_t kNoisy = 8;    ///< the number jumps: something disturbs the measurement
inline constexpr std::uint8_t kAlarm = 16;   ///< CO to leave for, gas at a tenth of the explosive limit

/// A window: whole numbers only, so that two instruments that look the same are the same.
struct Display {
    std::int32_t mantissa = 0;          ///< in steps of the range's last digit
    std::int32_t anchor = 0;            ///< the number that it has stayed near, in steps of `anchor_range`
    std::uint32_t ticks_settled = 0;    ///< it has not moved by more than its accuracy for so long
    Quantity quantity = Quantity::none; ///< what it shows
    std::uint8_t range = 0;             ///< place in the quantity's ranges
    std::uint8_t anchor_range = 0;      ///< of `anchor`
    std::uint8_t flags = 0;

    [[nodiscard]] bool has(std::uint8_t flag) const { return (flags & flag) != 0; }

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("mantissa", "", self.mantissa);
        visit("anchor", "", self.anchor);
        visit("ticks_settled", "ticks", self.ticks_settled);
        visit("quantity", "", self.quantity);
        visit("range", "", self.range);
        visit("anchor_range", "", self.anchor_range);
        visit("flags", "", self.flags);
    }
    friend bool operator==(const Display&, const Display&) = default;
};

/// A number in the window (no OL) that has settled.
bool is_settled(const Display& display);

/// What stands in the window: "24.31 V", "OL", "-0.031 in. w.c."; empty while it is off.
std::string text(const Display& display);

/// What a reading says of the true value: it lies within `half_width` of `value` (SI).
struct Value {
    double value = 0.0;
    double half_width = 0.0;    ///< accuracy of the range, and half a step of rounding
    std::string_view unit = {}; ///< "V", "Pa", "K"
    bool known = false;         ///< false: off or OL
};
Value value_of(const Display& display);

/// Empties the window; what it showed before is forgotten.
void blank(Display& display);

/// One tick passes.
void age(Display& display);

/// Puts an SI value into the window: ranges by itself, rounds, says OL beyond the last range.
void show(Display& display, Quantity quantity, double value_si, std::uint8_t more_flags = 0);
/// OL for another reason than a high value: an open circuit.
void show_overload(Display& display, Quantity quantity, std::uint8_t more_flags = 0);

/// How far an instrument of this attempt is off, each from -1 to 1 of a third of the accuracy. The same all
/// the time and over the whole range.
struct Calibration {
    double gain = 0.0;
    double offset = 0.0;
};
/// `channel` tells apart two sensors of one instrument.
Calibration calibration(std::uint64_t seed, Quantity quantity, unsigned channel = 0);
/// The value as the instrument takes it, SI.
double with_error(Quantity quantity, double value_si, const Calibration& calibration);

/// Part of the way to a new value that a first-order lag covers: 1 - exp(-dt/lag); 1 without lag.
double lag_share(double dt_s, double lag_s);

/// Whether a setting is another than in the last tick; remembers it.
template <class Setting>
bool has_changed(Setting& seen, const Setting& now) {
    if (seen == now)
        return false;
    seen = now;
    return true;
}

} // namespace lightoff::instruments
