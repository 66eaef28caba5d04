// SPDX-License-Identifier: MIT
#include "gui/sound/synth.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::sound {
namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kGlide_s = 0.05; ///< a tick: tones come to their new pitch in it
constexpr double kMains_Hz = 60.0;
// Loudness of each sound at its fullest, by ear; together they stay below full scale.
constexpr double kInducerLevel = 0.16;
constexpr double kBlowerLevel = 0.18;
constexpr double kHumLevel = 0.14;
constexpr double kRoarLevel = 0.22;
constexpr double kClickLevel = 0.30;
constexpr double kBangLevel = 0.75;
constexpr double kFullLoudness = 20.0; ///< of bench::Heard, twentieths

const double kGlide = 1.0 - std::exp(-1.0 / (kGlide_s * 0.3 * kRate_Hz));

void glide(double& now, double wanted) {
    now += (wanted - now) * kGlide;
}

} // namespace

double Synth::noise() {
    // xorshift32: no more is asked of a hiss.
    noise_ ^= noise_ << 13U;
    noise_ ^= noise_ >> 17U;
    noise_ ^= noise_ << 5U;
    return static_cast<double>(noise_) / 2147483648.0 - 1.0;
}

void Synth::burst(double level, double lasts_s, double colour) {
    bursts_[next_burst_] = {level, std::exp(-1.0 / (lasts_s * kRate_Hz)), colour, 0.0};
    next_burst_ = (next_burst_ + 1) % kBursts;
}

void Synth::hear(const bench::Heard& heard) {
    const auto wheel = [](Wheel& w, std::uint16_t hz, std::uint8_t loudness, double full) {
        if (w.level < 1e-4)
            w.hz = hz; // out of silence it starts at its own pitch
        if (hz != 0)
            w.wanted_hz = hz;
        w.wanted_level = hz == 0 ? 0.0 : full * std::min(1.0, loudness / kFullLoudness);
    };
    wheel(inducer_, heard.inducer_hz, heard.inducer_loudness, kInducerLevel);
    wheel(blower_, heard.blower_hz, heard.blower_loudness, kBlowerLevel);
    wanted_hum_ = (heard.inducer_hum ? 0.7 : 0.0) + (heard.blower_hum ? 1.0 : 0.0);
    wanted_hum_ = kHumLevel * std::min(1.0, wanted_hum_);
    wanted_roar_ = kRoarLevel * heard.roar / 10.0;
    for (int i = 0; i < heard.relay_clicks; ++i)
        burst(kClickLevel, 0.004, 0.7);
    if (heard.valve_click)
        burst(kClickLevel, 0.012, 0.25);
    if (heard.ignition > ignition_before_)
        burst(kBangLevel * heard.ignition / 10.0, 0.05 + 0.02 * heard.ignition, 0.03);
    ignition_before_ = heard.ignition;
}

/// The tone and two overtones: a wheel is no tuning fork.
double Synth::wheel_sample(Wheel& wheel) const {
    glide(wheel.hz, wheel.wanted_hz);
    glide(wheel.level, wheel.wanted_level);
    wheel.phase += wheel.hz / kRate_Hz;
    wheel.phase -= std::floor(wheel.phase);
    const double turn = 2.0 * kPi * wheel.phase;
    return wheel.level * (0.7 * std::sin(turn) + 0.2 * std::sin(2.0 * turn) + 0.1 * std::sin(3.0 * turn));
}

void Synth::render(std::span<std::int16_t> samples) {
    for (std::int16_t& sample : samples) {
        double sum = wheel_sample(inducer_) + wheel_sample(blower_);
        const double hiss = noise();
        air_low_ += (hiss - air_low_) * 0.08;
        sum += air_low_ * 0.9 * blower_.level;
        glide(roar_, wanted_roar_);
        roar_low_ += (hiss - roar_low_) * 0.02;
        sum += roar_low_ * 3.0 * roar_;
        glide(hum_, wanted_hum_);
        hum_phase_ += 2.0 * kMains_Hz / kRate_Hz;
        hum_phase_ -= std::floor(hum_phase_);
        sum += hum_ * (0.8 * std::sin(2.0 * kPi * hum_phase_) + 0.2 * std::sin(4.0 * kPi * hum_phase_));
        for (Burst& one : bursts_) {
            one.low += (hiss - one.low) * one.colour;
            sum += one.low * one.level / std::sqrt(one.colour + 0.01);
            one.level *= one.decay;
        }
        sample = static_cast<std::int16_t>(std::clamp(sum, -1.0, 1.0) * 32767.0);
    }
}

} // namespace lightoff::sound
