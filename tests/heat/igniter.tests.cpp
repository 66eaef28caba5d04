// SPDX-License-Identifier: MIT
#include "heat/reference_run.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace heat_test;

namespace {

const heat::Params kParams;
constexpr double kHotSurfaceK =
    980.0 + 273.15; // must exceed this to light the gas (common practice, no source)

struct Glow {
    double seconds_to_hot = -1.0; // negative: never
    double kelvin = 0.0;
    double amps = 0.0;
    double ohms = 0.0;
};

/// Holds a voltage on the igniter from cold; resistance and power are taken anew each tick.
Glow energise(double volts, double seconds, const heat::Condition& condition = {}) {
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    Glow glow;
    glow.ohms = heat::step(kParams, condition, state, in, kTick).igniter_ohm;
    for (double t = 0.0; t < seconds; t += kTick) {
        in.igniter_w = volts * volts / glow.ohms;
        glow.ohms = heat::step(kParams, condition, state, in, kTick).igniter_ohm;
        if (glow.seconds_to_hot < 0.0 && state.temperature.igniter > kHotSurfaceK)
            glow.seconds_to_hot = t + kTick;
    }
    glow.kelvin = state.temperature.igniter;
    glow.amps = volts / glow.ohms;
    return glow;
}

} // namespace

TEST_CASE("a new igniter reads 40 to 90 ohms cold and draws 3 to 4.5 A hot") { // common practice, no source
    CHECK(heat::igniter_resistance_ohm(kParams.igniter, 1.0, 293.15) > 40.0);
    CHECK(heat::igniter_resistance_ohm(kParams.igniter, 1.0, 293.15) < 90.0);
    const Glow glow = energise(120.0, 20.0);
    CHECK(glow.amps > 3.0);
    CHECK(glow.amps < 4.5);
    CHECK(glow.amps > 120.0 / heat::igniter_resistance_ohm(kParams.igniter, 1.0, kRoomK)); // amps RISE
    CHECK(glow.seconds_to_hot > 2.0);
    CHECK(glow.seconds_to_hot < 12.0); // well inside 20 s
}

TEST_CASE("resistance falls all the way up") {
    double last = 1e9;
    for (double t = 294.0; t < 1700.0; t += 50.0) {
        const double ohms = heat::igniter_resistance_ohm(kParams.igniter, 1.0, t);
        CHECK(ohms < last);
        last = ohms;
    }
}

TEST_CASE("the glow settles where Stefan-Boltzmann and Newton's law balance the power") {
    for (double volts : {90.0, 102.0, 120.0, 132.0}) {
        const auto surplus = [&](double t) { // textbook balance, sigma from CODATA 2018
            const double ohms = 28.0 + (62.0 - 28.0) * 200.0 / (200.0 + t - 293.15);
            const double radiated = 0.88 * 5.670374419e-8 * (std::pow(t, 4) - std::pow(kRoomK, 4));
            return volts * volts / ohms - 1.2e-3 * (radiated + 60.0 * (t - kRoomK));
        };
        double low = 400.0;
        double high = 3000.0;
        for (int i = 0; i < 80; ++i) {
            const double middle = 0.5 * (low + high);
            (surplus(middle) > 0.0 ? low : high) = middle;
        }
        CHECK(energise(volts, 200.0).kelvin == Approx(low).margin(0.1));
    }
}

TEST_CASE("the glow meets what the industry asks of a ceramic igniter") {
    // >= 1100 C at 85 % of the voltage, <= 1500 C at 110 %: US Patent 5,892,201, background
    // (tests/reference/rules_and_constants.csv). Its 1350 C at 100 % and its 5 s are for faster
    // elements than silicon carbide on a 20 s warm-up.
    CHECK(energise(102.0, 120.0).kelvin >= 1100.0 + 273.15);
    CHECK(energise(132.0, 120.0).kelvin <= 1500.0 + 273.15);
}

TEST_CASE("an aged igniter or low line voltage does not get hot enough in 20 s") {
    heat::Condition aged;
    aged.igniter_resistance_factor = 1.9;
    const Glow old = energise(120.0, 20.0, aged);
    CHECK(old.seconds_to_hot < 0.0);
    CHECK(old.amps < 2.5); // "under about 2.5-3 A = aged" (common practice, no source)
    CHECK(energise(85.0, 20.0).seconds_to_hot < 0.0);
}

TEST_CASE("a crack that parts when hot reads good cold and open hot") {
    heat::Condition cracked;
    cracked.igniter_crack_opens_above_k = 900.0;
    const Glow cold = energise(120.0, 0.5, cracked);
    CHECK(cold.ohms < 90.0);
    bool opened = false;
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    double ohms = cold.ohms;
    for (double t = 0.0; t < 20.0; t += kTick) {
        in.igniter_w = 120.0 * 120.0 / ohms;
        ohms = heat::step(kParams, cracked, state, in, kTick).igniter_ohm;
        opened = opened || ohms > 1e8;
        CHECK(state.temperature.igniter < 950.0);
    }
    CHECK(opened);
    in.igniter_w = 0.0;
    CHECK(hold(kParams, cracked, state, in, 300.0).igniter_ohm < 90.0);
}
