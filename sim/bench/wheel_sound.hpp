// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace lightoff::bench {

/// Follows the sound of one wheel as an ear does: it notices that a note rises, falls, holds or stops, and
/// that a held note has become another one. Times and thresholds are teaching values.
class WheelSound {
public:
    enum class Change : std::uint8_t { none, rises, holds, falls, stops, higher, lower };

    /// One tick: the note in Hz, 0 if there is none.
    Change hear(std::uint16_t hz);
    [[nodiscard]] bool is_silent() const { return phase_ == Phase::silent; }

private:
    enum class Phase : std::uint8_t { silent, rising, holding, falling };
    static constexpr std::size_t kMemory = 40; ///< ticks over which a change of note is noticed
    Change become(Phase phase, Change change);

    std::array<std::uint16_t, kMemory> heard_{};
    std::size_t next_ = 0;
    std::uint16_t held_hz_ = 0;     ///< the note when it was last called held
    std::uint32_t level_ticks_ = 0; ///< for so long it has neither risen nor fallen
    Phase phase_ = Phase::silent;
    bool first_ = true; ///< nothing has been heard yet: what sounds now has been sounding
};

/// How strong a wheel sounds, from its loudness in twentieths.
std::string_view strength_of_sound(std::uint8_t loudness);

} // namespace lightoff::bench
