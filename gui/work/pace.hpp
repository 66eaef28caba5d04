// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstdint>

namespace lightoff::work {

/// How wall time becomes ticks. Time at the furnace goes by at the chosen speed, or stands still while it is
/// held; what the hands have begun goes on in any case, and what takes long is hurried: no act is sat
/// through. Every tick is computed, however fast they go by.
class Pace {
public:
    static constexpr std::array<double, 4> kSpeeds{1, 2, 5, 20};

    [[nodiscard]] std::size_t speed() const { return speed_; }
    void set_speed(std::size_t index) { speed_ = index < kSpeeds.size() ? index : speed_; }
    [[nodiscard]] bool held() const { return held_; }
    void hold(bool held) { held_ = held; }

    /// An act or a wait of so many ticks has begun.
    void begin(std::uint64_t ticks);
    /// Ticks due after `wall_s` more seconds; the rest is kept. `ticks_busy`: of the act in hand that are
    /// left, 0 for none. `reading`: somebody reads or writes, which holds time as well.
    [[nodiscard]] std::uint64_t due(double wall_s, std::uint64_t ticks_busy, bool reading);
    /// Nothing moves until somebody does something.
    [[nodiscard]] bool still(std::uint64_t ticks_busy, bool reading) const {
        return (held_ || reading) && ticks_busy == 0;
    }

private:
    std::size_t speed_ = 0;
    bool held_ = false;
    double hurry_ = 0.0; ///< ticks a second that the act in hand needs so as not to be sat through
    double left_over_ = 0.0;
};

} // namespace lightoff::work
