// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

/// The progress lamp: how far the call has come, never why it stopped.
namespace lightoff::control {

inline constexpr std::uint8_t kNoPattern = 0xFF;

/// One cycle of a lamp pattern, in ticks: flashes, then a glow, then a rest.
struct LampPattern {
    std::uint32_t on_ticks = 0;
    std::uint32_t flash_ticks = 1; ///< on and off together
    std::uint32_t flashes = 0;
    std::uint32_t glow_ticks = 0;
    std::uint32_t rest_ticks = 0;
    bool counted = false; ///< as many flashes as steps passed
};

/// Counts of steps passed. A retry or restart within a call moves `trial` to `interrupted`.
struct LampRegisters {
    std::uint8_t trial = 0;       ///< steps passed by the trial in progress
    std::uint8_t interrupted = 0; ///< steps passed by the trial before it in the same call

    void reach(std::uint8_t count) { trial = count > trial ? count : trial; }
    /// A trial that passed no step leaves the older count standing.
    void end_trial() {
        if (trial > 0)
            interrupted = trial;
        trial = 0;
    }
    void new_call() { trial = interrupted = 0; }
    /// The interrupted count shows until the new trial passes it (or ends).
    [[nodiscard]] std::uint8_t shown() const { return trial > interrupted ? trial : interrupted; }

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("trial", "", self.trial);
        visit("interrupted", "", self.interrupted);
    }
};

/// What the lamp is showing and how far it is within the cycle.
struct LampState {
    std::uint32_t tick = 0;            ///< since the cycle began
    std::uint8_t pattern = kNoPattern; ///< index, or kNoPattern for dark
    std::uint8_t count = 0;            ///< flashes shown if the pattern is a counted one
    std::uint8_t dark_ticks = 0;       ///< left before the first cycle of a new pattern
    std::uint8_t on = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("tick", "ticks", self.tick);
        visit("pattern", "", self.pattern);
        visit("count", "", self.count);
        visit("dark", "ticks", self.dark_ticks);
        visit("on", "", self.on);
    }
};

/// Moves the lamp on by one tick. A change of pattern or count starts a new cycle after
/// `change_dark_ticks` of darkness, so that no two flashes run together.
inline void step_lamp(LampState& lamp, const LampPattern* pattern, std::uint8_t index, std::uint8_t count,
                      std::uint8_t change_dark_ticks) {
    if (index != lamp.pattern || count != lamp.count) {
        lamp = {};
        lamp.pattern = index;
        lamp.count = count;
        lamp.dark_ticks = change_dark_ticks;
    }
    lamp.on = 0;
    if (pattern == nullptr)
        return;
    if (lamp.dark_ticks > 0) {
        --lamp.dark_ticks;
        return;
    }
    const std::uint32_t flashing = pattern->flash_ticks * (pattern->counted ? count : pattern->flashes);
    const std::uint32_t lit = flashing + pattern->glow_ticks;
    if (lamp.tick < flashing)
        lamp.on = lamp.tick % pattern->flash_ticks < pattern->on_ticks ? 1 : 0;
    else
        lamp.on = lamp.tick < lit ? 1 : 0;
    ++lamp.tick;
    if (lamp.tick >= lit + pattern->rest_ticks)
        lamp.tick = 0;
}

} // namespace lightoff::control
