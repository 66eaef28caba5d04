// SPDX-License-Identifier: MIT
#include "gui/sound/synth.hpp"

#include "bench/percept.hpp"
#include "files/bundle_loader.hpp"
#include "visit/visit.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

using namespace lightoff;

namespace {

std::vector<std::int16_t> rendered(sound::Synth& synth, double seconds) {
    std::vector<std::int16_t> samples(static_cast<std::size_t>(seconds * sound::kRate_Hz));
    synth.render(samples);
    return samples;
}

/// Power of one frequency (Goertzel's sum, written out).
double power_at(const std::vector<std::int16_t>& samples, double hz) {
    double re = 0.0;
    double im = 0.0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double turn = 2.0 * 3.14159265358979 * hz * static_cast<double>(i) / sound::kRate_Hz;
        re += samples[i] * std::cos(turn);
        im += samples[i] * std::sin(turn);
    }
    return re * re + im * im;
}

/// The strongest frequency between two.
double strongest(const std::vector<std::int16_t>& samples, double from_hz, double to_hz) {
    double best_hz = from_hz;
    double best = -1.0;
    for (double hz = from_hz; hz <= to_hz; hz += 0.5)
        if (const double power = power_at(samples, hz); power > best) {
            best = power;
            best_hz = hz;
        }
    return best_hz;
}

double loudness(const std::vector<std::int16_t>& samples) {
    double sum = 0.0;
    for (const std::int16_t sample : samples)
        sum += static_cast<double>(sample) * sample;
    return std::sqrt(sum / static_cast<double>(samples.size()));
}

} // namespace

TEST_CASE("wheels sing at the blade-pass frequency of the model, within 1 %", "[gui]") {
    const files::LoadedBundle bundle = files::load_bundle("call-for-heat");
    visit::Visit visit(bundle, 0);
    REQUIRE(visit.begin(bench::parse_action(visit.site(), "thermostat-set 80F"), "student").empty());
    for (int tick = 0; tick < 180 * 20; ++tick)
        visit.tick();
    const furnace::Signals& signals = visit.world().state.signals;
    const bench::Heard heard = visit.percept().heard;
    REQUIRE(heard.inducer_hz > 0);
    REQUIRE(heard.blower_hz > 0);
    sound::Synth synth;
    synth.hear(heard);
    rendered(synth, 0.5); // it has settled
    const std::vector<std::int16_t> samples = rendered(synth, 1.0);
    // The frequency of what is computed, not of the percept's coarse steps: blades times turns a second.
    const double turns = signals.draft.wheel_speed_rad_s / (2.0 * 3.14159265358979);
    const double blades = std::round(heard.inducer_hz / turns);
    CHECK(strongest(samples, 0.9 * heard.inducer_hz, 1.1 * heard.inducer_hz) ==
          Approx(blades * turns).epsilon(0.01));
    const double blower_turns = signals.air.wheel_speed_rad_s / (2.0 * 3.14159265358979);
    const double blower_blades = std::round(heard.blower_hz / blower_turns);
    CHECK(strongest(samples, 0.9 * heard.blower_hz, 1.1 * heard.blower_hz) ==
          Approx(blower_blades * blower_turns).epsilon(0.01));
}

TEST_CASE("a stalled motor hums at twice the mains frequency", "[gui]") {
    sound::Synth synth;
    bench::Heard heard;
    heard.blower_hum = true;
    synth.hear(heard);
    rendered(synth, 0.3);
    CHECK(strongest(rendered(synth, 1.0), 40, 300) == Approx(120.0).epsilon(0.01));
}

TEST_CASE("clicks and bangs are short, a late light-off is louder, silence is silent", "[gui]") {
    sound::Synth synth;
    CHECK(loudness(rendered(synth, 0.2)) == 0.0);
    bench::Heard click;
    click.relay_clicks = 1;
    synth.hear(click);
    CHECK(loudness(rendered(synth, 0.02)) > 100);
    synth.hear({});
    CHECK(loudness(rendered(synth, 0.3)) < 20);
    const auto light_off = [](std::uint8_t loud) {
        sound::Synth fresh;
        bench::Heard heard;
        heard.ignition = loud;
        fresh.hear(heard);
        return loudness(rendered(fresh, 0.2));
    };
    CHECK(light_off(10) > 2 * light_off(3));
    CHECK(light_off(3) > 0);
}

TEST_CASE("everything at once does not clip for long", "[gui]") {
    sound::Synth synth;
    bench::Heard heard;
    heard.inducer_hz = 500;
    heard.blower_hz = 700;
    heard.inducer_loudness = heard.blower_loudness = 20;
    heard.roar = 10;
    heard.inducer_hum = heard.blower_hum = true;
    synth.hear(heard);
    const auto samples = rendered(synth, 1.0);
    const auto clipped = std::count_if(samples.begin(), samples.end(),
                                       [](std::int16_t s) { return s == 32767 || s == -32767; });
    CHECK(clipped < static_cast<std::ptrdiff_t>(samples.size() / 1000));
}
