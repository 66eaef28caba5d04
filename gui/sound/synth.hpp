// SPDX-License-Identifier: MIT
#pragma once
#include "bench/percept.hpp"

#include <array>
#include <cstdint>
#include <span>

/// What is heard at the furnace, as samples. Everything comes from bench::Heard: who listens knows no more
/// than who reads the captions.
namespace lightoff::sound {

inline constexpr unsigned kRate_Hz = 44'100;

/// Makes sound. Wheels sing at their blade-pass frequency with a little noise of air; burners roar; a motor
/// that stalls hums at twice the mains' 60 Hz; relays and the gas valve click; a light-off puffs or bangs.
/// Between two percepts tones glide, so that a wheel runs up instead of stepping.
class Synth {
public:
    /// What is heard now; clicks and light-offs of this moment are added to what still sounds.
    void hear(const bench::Heard& heard);
    /// Silence from now on, fading within a few milliseconds.
    void hush() { hear({}); }
    /// The next samples, mono, 16 bits.
    void render(std::span<std::int16_t> samples);

private:
    struct Wheel {
        double phase = 0.0;     ///< turns of the tone
        double hz = 0.0;        ///< now
        double wanted_hz = 0.0; ///< it glides there
        double level = 0.0;     ///< now
        double wanted_level = 0.0;
    };
    /// Something short: noise, low-passed, that dies away.
    struct Burst {
        double level = 0.0;
        double decay = 0.0;  ///< factor each sample
        double colour = 1.0; ///< share of the noise let through each sample: 1 bright, small dull
        double low = 0.0;
    };
    static constexpr std::size_t kBursts = 8;

    double noise();
    double wheel_sample(Wheel& wheel) const;
    void burst(double level, double lasts_s, double colour);

    Wheel inducer_, blower_;
    double hum_phase_ = 0.0;
    double hum_ = 0.0, wanted_hum_ = 0.0;
    double roar_ = 0.0, wanted_roar_ = 0.0, roar_low_ = 0.0;
    double air_low_ = 0.0;
    std::array<Burst, kBursts> bursts_{};
    std::size_t next_burst_ = 0;
    std::uint8_t ignition_before_ = 0;
    std::uint32_t noise_ = 0x9E3779B9U;
};

} // namespace lightoff::sound
