// SPDX-License-Identifier: MIT
#include "bench/wheel_sound.hpp"

namespace lightoff::bench {
namespace {

constexpr std::uint32_t kHeldTicks = 30;
constexpr std::uint32_t kSilentTicks = 10;

/// Smallest change of a note over the memory that is noticed: 3 %, but never a single step of the percept.
int noticed(int hz) {
    const int share = 3 * hz / 100;
    return share > 8 ? share : 8;
}

} // namespace

WheelSound::Change WheelSound::become(Phase phase, Change change) {
    phase_ = phase;
    level_ticks_ = 0;
    return change;
}

WheelSound::Change WheelSound::hear(std::uint16_t hz) {
    if (first_) {
        first_ = false;
        heard_.fill(hz);
        held_hz_ = hz;
        return hz > 0 ? become(Phase::holding, Change::holds) : Change::none;
    }
    const int now = hz;
    const int before = heard_[next_];
    heard_[next_] = hz;
    next_ = (next_ + 1) % kMemory;
    const int step = now - before;
    const bool level = step <= noticed(before) && -step <= noticed(before);
    level_ticks_ = level ? level_ticks_ + 1 : 0;

    if (phase_ == Phase::silent)
        return step > noticed(before) ? become(Phase::rising, Change::rises) : Change::none;
    if (now == 0 && level_ticks_ >= kSilentTicks)
        return become(Phase::silent, Change::stops);
    if (phase_ != Phase::holding) {
        if (now > 0 && level_ticks_ >= kHeldTicks) {
            held_hz_ = hz;
            return become(Phase::holding, Change::holds);
        }
        if (phase_ == Phase::rising && step < -noticed(before))
            return become(Phase::falling, Change::falls);
        if (phase_ == Phase::falling && step > noticed(before))
            return become(Phase::rising, Change::rises);
        return Change::none;
    }
    const int held = held_hz_;
    if (10 * now < 8 * held && step < -noticed(before))
        return become(Phase::falling, Change::falls);
    if (10 * now > 12 * held && step > noticed(before))
        return become(Phase::rising, Change::rises);
    if (level && (20 * now < 19 * held || 20 * now > 21 * held) && level_ticks_ >= kHeldTicks) {
        held_hz_ = hz;
        return now > held ? Change::higher : Change::lower;
    }
    return Change::none;
}

std::string_view strength_of_sound(std::uint8_t loudness) {
    if (loudness < 5)
        return "faint";
    if (loudness < 10)
        return "low";
    return loudness < 15 ? "middling" : "full";
}

} // namespace lightoff::bench
