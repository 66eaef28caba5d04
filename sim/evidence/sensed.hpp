// SPDX-License-Identifier: MIT
#pragma once
#include "bench/percept.hpp"

#include <array>
#include <cstddef>
#include <cstdint>

/// What eyes, ears, nose and hand make of a furnace, so coarse that nobody would dispute it.
namespace lightoff::evidence {

enum class Channel : std::uint8_t {
    lamp_pattern,  ///< dark, or which of the board's patterns
    lamp_count,    ///< flashes of a counted pattern
    inducer,       ///< silent, hums, runs
    blower,        ///< silent, hums, runs
    roar,          ///< of the burners, heard with the doors on or off
    flames,        ///< burners that burn; the burner door off
    flame_outside, ///< flame at the burner openings; the burner door off
    igniter,       ///< dark, glows; the burner door off
    gas_smell,     ///< none, plain, strong
    winding_smell,
    register_air,    ///< none, weak, ordinary, strong
    register_warmth, ///< steps of 10 K over the room
    count
};
inline constexpr std::size_t kChannels = static_cast<std::size_t>(Channel::count);

/// Senses are compared over stretches of this many ticks, so edges may lie so far apart: 5 s.
inline constexpr std::uint64_t kStretchTicks = 100;
/// Within a stretch, a look every half second.
inline constexpr std::uint64_t kLookTicks = 10;

/// By channel, bit v is set if the value v was perceived in a stretch of time. Values are 0 to 30; a channel
/// that cannot be perceived has value 0.
using Sensed = std::array<std::uint32_t, kChannels>;

/// What is perceived at this moment. The lamp counts as read: whoever stands there for a cycle knows it.
Sensed sense(const bench::Percept& percept, const control::LampState& lamp);

/// Adds what was perceived at another moment.
void add(Sensed& stretch, const Sensed& moment);

/// Whether somebody would say that two stretches were the same: each channel shows something in common. With
/// furnaces of two severities (`low`, `high`), whatever lies between them counts as shown.
bool alike(const Sensed& seen, const Sensed& low, const Sensed& high);

} // namespace lightoff::evidence
