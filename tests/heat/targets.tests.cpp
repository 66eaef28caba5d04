// SPDX-License-Identifier: MIT
// Settled targets of the reference furnace (one consistent point; common practice, no single source).
#include "heat/reference_run.hpp"
#include "support/csv.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

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

TEST_CASE("temperature rise follows the trade's sensible-heat factor") {
    // 1.08 Btu/h per cfm and F = 0.24 * 60 * 0.075, arithmetic on standard air (tests/reference).
    const heat::Inputs in = steady_run();
    const Settled run = settle(in);
    const double output = kInputBtuH * heat::steady_efficiency_pct(in, run.out) / 100.0;
    // Losses of inducer and transformer are inside the skin losses and the air: count them in, too.
    const double jacket = units::w_to_btuh(run.out.jacket_w - in.inducer_loss_w);
    const double motor = in.blower_electrical_w * 3.412;
    const double shaft = (in.inducer_electrical_w - in.inducer_loss_w) * 3.412; // it left with the flue gas
    CHECK(rise_f(run.out) == Approx((output - jacket + motor + shaft) / (1.08 * 1150.0)).epsilon(0.005));
}

TEST_CASE("efficiency agrees with the DOE table at the run's own flue temperature") {
    // 7.0 % O2 row; flue gas per input from the Ganapathy rows (768 and 914 lb per 1e6 Btu at 0 and 20 %
    // excess air, linear in excess air). cp coefficients: of that gas, from memory of gas tables.
    const auto wet = lightoff::test::reference_table("flue_gas_wet.csv");
    const double at_0 = std::stod(wet.at(0).at("lb_flue_gas_per_1e6_Btu_hhv"));
    const double at_20 = std::stod(wet.at(1).at("lb_flue_gas_per_1e6_Btu_hhv"));
    for (const auto& row : lightoff::test::reference_table("combustion_efficiency.csv")) {
        const double excess = std::stod(row.at("excess_air_pct"));
        if (excess < 20.0)
            continue; // a furnace with 2 % O2 is not set up
        heat::Inputs in = steady_run();
        const double pounds = at_0 + (at_20 - at_0) * excess / 20.0;
        in.flue_mass_flow_kg_s = pounds * units::kilograms_per_pound * kInputBtuH / 1e6 / 3600.0;
        const Settled run = settle(in);
        const double net = net_flue_f(run.out);
        REQUIRE(net > 200.0);
        REQUIRE(net < 400.0);
        const std::string low = net < 300.0 ? "200" : "300";
        const std::string high = net < 300.0 ? "300" : "400";
        const double below = std::stod(row.at("efficiency_pct_at_net_" + low + "F"));
        const double above = std::stod(row.at("efficiency_pct_at_net_" + high + "F"));
        const double table = below + (above - below) * (net - std::stod(low)) / 100.0;
        CAPTURE(excess, net, table);
        CHECK(heat::steady_efficiency_pct(in, run.out) == Approx(table).margin(0.5));
    }
}
