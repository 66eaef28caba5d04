// SPDX-License-Identifier: MIT
// Settled targets of the reference furnace (one consistent point; common practice, no single source).
#include "heat/reference_run.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace heat_test;

namespace {

const heat::Params kParams;
const heat::Condition kHealthy;

struct Settled {
    heat::State state;
    heat::Outputs out;
};

Settled settle(const heat::Inputs& in, const heat::Condition& condition = kHealthy) {
    Settled result{heat::at_rest(kRoomK), {}};
    result.out = hold(kParams, condition, result.state, in, 3600.0);
    return result;
}

double limit_margin_f(const heat::State& state) {
    return units::k_difference_to_fahrenheit(kParams.limit.contact.opens_k - state.temperature.limit);
}

} // namespace

TEST_CASE("the reference point settles on its targets") {
    const heat::Inputs in = steady_run();
    const Settled run = settle(in);
    CHECK(net_flue_f(run.out) == Approx(315.0).margin(15.0));
    CHECK(heat::steady_efficiency_pct(in, run.out) == Approx(80.3).margin(0.7));
    CHECK(rise_f(run.out) > 50.0);
    CHECK(rise_f(run.out) < 55.0);
    CHECK(units::w_to_btuh(run.out.jacket_w) == Approx(800.0).margin(100.0));
    CHECK(limit_margin_f(run.state) >= 30.0);
    CHECK(run.out.limit_closed);
    CHECK(run.out.rollout_closed);
    CHECK(run.out.blower_overload_closed);
    CHECK(run.out.inducer_overload_closed);
    CHECK(run.state.vent_wet == 0);
    CHECK(run.state.collector_wet == 0);
}

TEST_CASE("the limit element of a healthy furnace keeps 30 F below its set point through a whole cycle") {
    heat::State state = heat::at_rest(kRoomK);
    double least_f = 1e9;
    const auto watch = [&](const heat::Inputs& in, double seconds) {
        for (double t = 0.0; t < seconds; t += 1.0) {
            CHECK(hold(kParams, kHealthy, state, in, 1.0).limit_closed);
            least_f = std::min(least_f, limit_margin_f(state));
        }
    };
    heat::Inputs in = standby();
    run_inducer(in);
    watch(in, 40.0);
    burn(in);
    watch(in, 45.0); // the longest usual blower on delay
    blow(in);
    watch(in, 1800.0);
    burn(in, 0.0);
    watch(in, 15.0);
    in = standby();
    blow(in);
    watch(in, 90.0); // the shortest usual blower off delay
    watch(standby(), 600.0);
    CHECK(least_f >= 30.0);
}

TEST_CASE("with no airflow the limit opens 90 to 150 s after flame") {
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    run_inducer(in);
    hold(kParams, kHealthy, state, in, 40.0);
    burn(in);
    double seconds = 0.0;
    while (seconds < 400.0 && hold(kParams, kHealthy, state, in, kTick).limit_closed)
        seconds += kTick;
    CHECK(seconds > 90.0);
    CHECK(seconds < 150.0);
}
