// SPDX-License-Identifier: MIT
// Which way readings move (signs known to the trade; common practice, no source unless given).
#include "heat/reference_run.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace heat_test;

namespace {

struct Settled {
    heat::Inputs in;
    heat::State state;
    heat::Outputs out;
    double efficiency;
};

Settled settle(const heat::Inputs& in, const heat::Condition& condition = {}) {
    Settled s{in, heat::at_rest(kRoomK), {}, 0.0};
    s.out = hold({}, condition, s.state, in, 3600.0);
    s.efficiency = heat::steady_efficiency_pct(in, s.out);
    return s;
}

double metal(const Settled& s, std::size_t pass) {
    return s.state.temperature.exchanger[pass];
}

} // namespace

TEST_CASE("overfire: hotter flue, more rise, hotter metal, limit nearer") {
    heat::Inputs in = steady_run();
    burn(in, std::sqrt(4.5 / 3.5)); // manifold at 4.5 in. instead of 3.5: input goes with the square root
    const Settled base = settle(steady_run());
    const Settled over = settle(in);
    CHECK(net_flue_f(over.out) > net_flue_f(base.out) + 20.0);
    CHECK(rise_f(over.out) > rise_f(base.out) + 4.0);
    CHECK(metal(over, 0) > metal(base, 0) + 20.0);
    CHECK(over.state.temperature.limit > base.state.temperature.limit + 3.0);
}

TEST_CASE("underfire: less of all, and flue metal nearer its dew point") {
    heat::Inputs in = steady_run();
    burn(in, 0.6);
    const Settled base = settle(steady_run());
    const Settled under = settle(in);
    CHECK(net_flue_f(under.out) < net_flue_f(base.out) - 40.0);
    CHECK(rise_f(under.out) < rise_f(base.out) - 10.0);
    CHECK(under.state.temperature.collector < base.state.temperature.collector - 20.0);
}

TEST_CASE("less air: more rise, hotter metal and flue, less efficiency, limit nearer, in every step down") {
    Settled last = settle(steady_run());
    for (double fraction : {0.9, 0.8, 0.7, 0.6, 0.5}) {
        heat::Inputs in = steady_run();
        blow(in, fraction);
        const Settled now = settle(in);
        CAPTURE(fraction);
        CHECK(rise_f(now.out) > rise_f(last.out));
        CHECK(net_flue_f(now.out) > net_flue_f(last.out));
        CHECK(now.efficiency < last.efficiency);
        CHECK(metal(now, 0) > metal(last, 0));
        CHECK(now.state.temperature.limit > last.state.temperature.limit);
        CHECK(now.out.delivered_w < last.out.delivered_w);
        last = now;
    }
}

TEST_CASE("a dirty filter opens the limit after minutes, at a rise over 70 F") {
    heat::Inputs in = steady_run();
    blow(in, 0.62);
    heat::State state = heat::at_rest(kRoomK);
    double seconds = 0.0;
    heat::Outputs out;
    do {
        out = hold({}, {}, state, in, kTick);
        seconds += kTick;
    } while (out.limit_closed && seconds < 3600.0);
    CHECK_FALSE(out.limit_closed);
    CHECK(seconds > 120.0);
    CHECK(rise_f(out) > 70.0);
}

TEST_CASE("more excess air: less efficiency and less rise") {
    heat::Inputs in = steady_run();
    in.flue_mass_flow_kg_s *= 1.3;
    const Settled base = settle(steady_run());
    const Settled lean = settle(in);
    CHECK(lean.efficiency < base.efficiency - 1.0);
    CHECK(rise_f(lean.out) < rise_f(base.out));
    CHECK(std::abs(net_flue_f(lean.out) - net_flue_f(base.out)) < 30.0);
}

TEST_CASE("soot: hotter flue, less rise; dust on the air side: hotter flue and hotter metal") {
    const Settled base = settle(steady_run());
    heat::Condition sooted;
    sooted.gas_side_conductance = 0.85;
    const Settled soot = settle(steady_run(), sooted);
    CHECK(net_flue_f(soot.out) > net_flue_f(base.out) + 20.0);
    CHECK(rise_f(soot.out) < rise_f(base.out));
    CHECK(metal(soot, 0) < metal(base, 0));
    heat::Condition furred;
    furred.air_side_conductance = 0.8;
    const Settled fur = settle(steady_run(), furred);
    CHECK(net_flue_f(fur.out) > net_flue_f(base.out) + 10.0);
    CHECK(rise_f(fur.out) < rise_f(base.out));
    CHECK(metal(fur, 0) > metal(base, 0) + 20.0);
}

TEST_CASE("missing insulation: more jacket loss, less rise, flue unchanged") {
    heat::Condition bare;
    bare.insulation_missing = 1.0;
    const Settled base = settle(steady_run());
    const Settled now = settle(steady_run(), bare);
    CHECK(now.out.jacket_w > 2.0 * base.out.jacket_w);
    CHECK(rise_f(now.out) < rise_f(base.out) - 0.5);
    CHECK(std::abs(net_flue_f(now.out) - net_flue_f(base.out)) < 2.0);
}

TEST_CASE("a cracked exchanger lets supply air into the flue: thinner, cooler flame gas, more flue loss") {
    heat::Inputs in = steady_run();
    in.exchanger_leak_kg_s = 0.003;
    const Settled base = settle(steady_run());
    const Settled crack = settle(in);
    CHECK(crack.out.flame_k < base.out.flame_k - 100.0);
    CHECK(crack.efficiency < base.efficiency);
    CHECK(crack.out.delivered_w < base.out.delivered_w);
}

TEST_CASE("a probe in sight of the exchanger reads high, the more the less air there is") {
    const Settled base = settle(steady_run());
    const double high =
        units::k_difference_to_fahrenheit(base.out.supply_air_in_sight_k - base.out.supply_air_k);
    CHECK(high > 5.0);
    CHECK(high < 30.0);
    heat::Inputs in = steady_run();
    blow(in, 0.6);
    const Settled less = settle(in);
    CHECK(less.out.supply_air_in_sight_k - less.out.supply_air_k >
          base.out.supply_air_in_sight_k - base.out.supply_air_k);
}

TEST_CASE("flue gas cools along its way and the metal with it") {
    const Settled s = settle(steady_run());
    CHECK(s.out.flame_k > s.out.exchanger_gas_mean_k);
    CHECK(s.out.exchanger_gas_mean_k > s.out.collector_gas_k);
    CHECK(s.out.vent_connector_gas_k > s.out.collector_gas_k); // shaft power of the inducer
    CHECK(s.out.vent_connector_gas_k > s.out.vent_gas_mean_k);
    CHECK(metal(s, 0) > metal(s, 1));
    CHECK(metal(s, 1) > metal(s, 2));
    CHECK(s.out.exchanger_gas_mean_k > metal(s, 1));
}

TEST_CASE("metal sweats when cold and dries as it warms; a cold, underfired, overblown exchanger stays wet") {
    heat::State state = heat::at_rest(kRoomK);
    hold({}, {}, state, steady_run(), 5.0);
    CHECK(state.vent_wet == 1);
    CHECK(state.collector_wet == 1);
    CHECK(state.exchanger_wet == 1);
    hold({}, {}, state, steady_run(), 900.0);
    CHECK(state.vent_wet == 0);
    CHECK(state.collector_wet == 0);
    CHECK(state.exchanger_wet == 0);

    heat::Inputs in = steady_run();
    burn(in, 0.5);
    blow(in, 1.2);
    in.basement_k = units::fahrenheit_to_k(55.0);
    state = heat::at_rest(in.basement_k);
    for (int i = 0; i < 20 * 1800; ++i) {
        heat::step({}, {}, state, in, kTick);
        state.temperature.house = in.basement_k;
    }
    CHECK(state.exchanger_wet == 1);
}

TEST_CASE("air is lukewarm when the blower starts, and the last heat is carried out after the fire") {
    heat::State state = heat::at_rest(kRoomK);
    heat::Inputs in = standby();
    run_inducer(in);
    burn(in);
    hold({}, {}, state, in, 40.0);
    blow(in);
    const double just_started = rise_f(hold({}, {}, state, in, 10.0));
    const double minutes_later = rise_f(hold({}, {}, state, in, 600.0));
    CHECK(just_started > 0.25 * minutes_later);
    CHECK(just_started < 0.85 * minutes_later);
    in = standby();
    blow(in);
    const double after_30 = rise_f(hold({}, {}, state, in, 30.0));
    const double after_120 = rise_f(hold({}, {}, state, in, 90.0));
    CHECK(after_30 > 0.4 * minutes_later);
    CHECK(after_120 < 0.4 * minutes_later);
}
