// SPDX-License-Identifier: MIT
#include "heat/reference_run.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace heat_test;

namespace {

const heat::Params kParams;
const heat::Condition kHealthy;

/// Seconds until `done`; 1e9 if not within `at_most`.
template <class Done>
double seconds_until(const heat::Condition& c, heat::State& s, const heat::Inputs& in, double at_most,
                     Done done) {
    for (double t = kTick; t < at_most; t += kTick)
        if (done(hold(kParams, c, s, in, kTick)))
            return t;
    return 1e9;
}

} // namespace

TEST_CASE("a winding warms as the closed form of a lump says") {
    // T = T0 + P/G*(1 - exp(-G*t/C)), any heat-transfer text; air of the blower compartment held at 70 F.
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    in.blower_electrical_w = in.blower_loss_w = 100.0;
    hold(kParams, kHealthy, state, in, 1200.0);
    const double g = kParams.blower_motor.shell_w_k;
    const double expected =
        kRoomK + 100.0 / g * (1.0 - std::exp(-g * 1200.0 / kParams.capacity_j_k.blower_winding));
    CHECK(state.temperature.blower_winding == Approx(expected).margin(0.01));
}

TEST_CASE("the transformer and an unheated house follow theirs") {
    heat::Params params;
    params.free_convection = {0.0, 0.0};
    params.jacket.to_house_fraction = 0.0;
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    in.flue_mass_flow_kg_s = 0.0;
    for (int i = 0; i < 20 * 7200; ++i)
        heat::step(params, kHealthy, state, in, kTick);
    const double tau = params.capacity_j_k.house / params.house.loss_w_k;
    CHECK(state.temperature.house ==
          Approx(in.outdoor_k + (kRoomK - in.outdoor_k) * std::exp(-7200.0 / tau)).margin(0.01));

    state = heat::at_rest(kRoomK);
    hold(kParams, kHealthy, state, in, 1800.0);
    const double g = kParams.transformer.cooling_w_k;
    const double expected =
        kRoomK + 6.0 / g * (1.0 - std::exp(-g * 1800.0 / kParams.capacity_j_k.transformer));
    CHECK(state.temperature.transformer == Approx(expected).margin(0.01));
}

TEST_CASE("a stalled blower motor opens its overload in minutes and is back in 20 to 40") { // common practice
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    const double stalled_w = 1300.0;
    in.blower_electrical_w = in.blower_loss_w = stalled_w;
    const double opened = seconds_until(kHealthy, state, in, 1800.0,
                                        [](const auto& out) { return !out.blower_overload_closed; });
    const auto& motor = kParams.blower_motor;
    const double tau = kParams.capacity_j_k.blower_winding / motor.shell_w_k;
    const double final_rise = stalled_w / motor.shell_w_k;
    CHECK(opened ==
          Approx(-tau * std::log(1.0 - (motor.overload.opens_k - kRoomK) / final_rise)).margin(0.2));
    CHECK(opened < 600.0);

    in.blower_electrical_w = in.blower_loss_w = 0.0;
    const double back = seconds_until(kHealthy, state, in, 7200.0,
                                      [](const auto& out) { return out.blower_overload_closed; });
    CHECK(back ==
          Approx(tau * std::log((motor.overload.opens_k - kRoomK) / (motor.overload.closes_k - kRoomK)))
              .margin(1.0));
    CHECK(back > 20.0 * 60.0);
    CHECK(back < 40.0 * 60.0);
}

TEST_CASE("a stalled inducer motor does the same") {
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    in.inducer_electrical_w = in.inducer_loss_w = 250.0;
    CHECK(seconds_until(kHealthy, state, in, 1800.0,
                        [](const auto& out) { return !out.inducer_overload_closed; }) < 900.0);
    in.inducer_electrical_w = in.inducer_loss_w = 0.0;
    const double back = seconds_until(kHealthy, state, in, 7200.0,
                                      [](const auto& out) { return out.inducer_overload_closed; });
    CHECK(back > 20.0 * 60.0);
    CHECK(back < 40.0 * 60.0);
}

TEST_CASE("packed cooling openings open the overload of a motor that runs well otherwise") {
    heat::Condition packed;
    packed.blower_openings_blocked = 1.0;
    heat::State state = heat::at_rest(kRoomK);
    const double opened = seconds_until(packed, state, steady_run(), 7200.0,
                                        [](const auto& out) { return !out.blower_overload_closed; });
    CHECK(opened > 300.0);
    CHECK(opened < 7200.0);
    packed.blower_openings_blocked = 0.3;
    state = heat::at_rest(kRoomK);
    CHECK(hold(kParams, packed, state, steady_run(), 7200.0).blower_overload_closed);
}

TEST_CASE("the limit opens at its set point, closes lower, and opens again while the cause stays") {
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs fire = steady_run();
    blow(fire, 0.5);
    heat::Inputs air_only = fire;
    burn(air_only, 0.0);
    for (int cycle = 0; cycle < 2; ++cycle) {
        const double opened =
            seconds_until(kHealthy, state, fire, 3600.0, [](const auto& out) { return !out.limit_closed; });
        CHECK(opened > 30.0);
        CHECK(opened < 1200.0);
        CHECK(state.temperature.limit == Approx(units::fahrenheit_to_k(190.0)).margin(0.05));
        const double closed = seconds_until(kHealthy, state, air_only, 3600.0,
                                            [](const auto& out) { return out.limit_closed; });
        CHECK(closed > 10.0);
        CHECK(closed < 600.0);
        CHECK(state.temperature.limit == Approx(units::fahrenheit_to_k(160.0)).margin(0.05));
    }
}

TEST_CASE("a weak limit opens in a clean furnace; one that is stuck does as it is stuck") {
    heat::Condition weak;
    weak.limit_set_point_shift_k = -30.0;
    heat::State state = heat::at_rest(kRoomK);
    CHECK(seconds_until(weak, state, steady_run(), 3600.0,
                        [](const auto& out) { return !out.limit_closed; }) < 3600.0);

    heat::Condition stuck;
    stuck.limit_fault = heat::ContactFault::stuck_open;
    state = heat::at_rest(kRoomK);
    CHECK_FALSE(hold(kParams, stuck, state, standby(), 1.0).limit_closed);
    stuck.limit_fault = heat::ContactFault::stuck_closed;
    heat::Inputs no_air = steady_run();
    no_air.supply_air_kg_s = 0.0;
    const heat::Outputs out = hold(kParams, stuck, state, no_air, 600.0);
    CHECK(out.limit_closed);
    CHECK(state.limit_open == 1);
}

TEST_CASE("a rollout trips its switch, which stays open until reset by hand, and trips again if only reset") {
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = steady_run();
    CHECK(hold(kParams, kHealthy, state, in, 1800.0).rollout_closed);
    in.rollout_w = 1500.0;
    const auto open = [](const auto& out) { return !out.rollout_closed; };
    const double tripped = seconds_until(kHealthy, state, in, 600.0, open);
    CHECK(tripped > 2.0);
    CHECK(tripped < 60.0);
    heat::reset_rollout(kParams, kHealthy, state); // still hot
    CHECK(state.rollout_tripped == 1);
    CHECK_FALSE(hold(kParams, kHealthy, state, standby(), 3600.0).rollout_closed);
    heat::reset_rollout(kParams, kHealthy, state);
    CHECK(hold(kParams, kHealthy, state, standby(), 1.0).rollout_closed);
    CHECK(seconds_until(kHealthy, state, in, 600.0, open) < 60.0);
}

TEST_CASE("a weak rollout switch trips at a smaller rollout, or at none") {
    heat::Inputs in = steady_run();
    in.rollout_w = 400.0;
    heat::State state = heat::at_rest(kRoomK);
    CHECK(hold(kParams, kHealthy, state, in, 1800.0).rollout_closed);
    heat::Condition weak;
    weak.rollout_set_point_shift_k = -80.0;
    CHECK_FALSE(hold(kParams, weak, state, in, 600.0).rollout_closed);
}

TEST_CASE("power lost in a run: heat soaks from the exchanger into the limit, which then cools by itself") {
    heat::State state = heat::at_rest(kRoomK);
    const heat::Outputs running = hold(kParams, kHealthy, state, steady_run(), 900.0);
    const double before = state.temperature.limit;
    double hottest = before;
    heat::Inputs dead = standby();
    dead.transformer_loss_w = 0.0;
    for (int second = 0; second < 600; ++second) {
        hold(kParams, kHealthy, state, dead, 1.0);
        hottest = std::max(hottest, state.temperature.limit);
    }
    CHECK(running.limit_closed);
    CHECK(hottest > before + 10.0);
    CHECK(hold(kParams, kHealthy, state, dead, 6.0 * 3600.0).limit_closed);
}
