// SPDX-License-Identifier: MIT
#include "units/fields.hpp"
#include "heat/cycle.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <type_traits>

using namespace heat_test;

namespace {

template <class T>
std::size_t bytes_visited(const T& value) {
    std::size_t bytes = 0;
    units::for_each_value(value, [&](const auto& leaf) { bytes += sizeof leaf; });
    return bytes;
}

} // namespace

TEST_CASE("field lists name every byte") {
    CHECK(bytes_visited(heat::State{}) == sizeof(heat::State));
    CHECK(bytes_visited(heat::Condition{}) == sizeof(heat::Condition));
    CHECK(bytes_visited(heat::Outputs{}) == sizeof(heat::Outputs));
    CHECK(bytes_visited(heat::Nodes{}) == sizeof(heat::Nodes));
    CHECK(bytes_visited(heat::Energy{}) == sizeof(heat::Energy));
    STATIC_REQUIRE(std::is_trivially_copyable_v<heat::State>);
    STATIC_REQUIRE(std::is_trivially_copyable_v<heat::Condition>);
    STATIC_REQUIRE(std::is_trivially_copyable_v<heat::Params>);
}

TEST_CASE("zip reaches every number") {
    std::size_t count = 0;
    heat::Nodes nodes;
    heat::Nodes::zip([&](double&) { ++count; }, nodes);
    CHECK(count * sizeof(double) == sizeof(heat::Nodes));
    count = 0;
    heat::Energy energy;
    heat::Energy::zip([&](double&) { ++count; }, energy);
    CHECK(count * sizeof(double) == sizeof(heat::Energy));
}

TEST_CASE("a finer step gives the same readings and events") {
    const heat::Params params;
    const auto limit_opens_s = [&](double dt) {
        heat::State state = heat::at_rest(kRoomK);
        heat::Inputs in = steady_run();
        in.supply_air_kg_s = 0.0;
        double t = 0.0;
        while (t < 600.0 && hold(params, {}, state, in, dt, dt).limit_closed)
            t += dt;
        return t;
    };
    CHECK(limit_opens_s(0.05) == Approx(limit_opens_s(0.025)).margin(0.1));
    CHECK(limit_opens_s(0.05) == Approx(limit_opens_s(0.01)).margin(0.1));

    heat::State coarse = heat::at_rest(kRoomK);
    heat::State fine = coarse;
    const heat::Outputs a = hold(params, {}, coarse, steady_run(), 900.0, 0.05);
    const heat::Outputs b = hold(params, {}, fine, steady_run(), 900.0, 0.025);
    CHECK(rise_f(a) == Approx(rise_f(b)).epsilon(1e-5));
    CHECK(net_flue_f(a) == Approx(net_flue_f(b)).epsilon(1e-5));
}

TEST_CASE("whatever the inputs, temperatures stay finite and believable") {
    std::mt19937 random(7);
    const auto draw = [&](double most) { return most * static_cast<double>(random()) / 4294967295.0; };
    const heat::Params params;
    for (int run = 0; run < 200; ++run) {
        heat::State state = heat::at_rest(270.0 + draw(40.0));
        heat::Condition condition;
        condition.gas_side_conductance = 0.05 + draw(1.0);
        condition.air_side_conductance = 0.05 + draw(1.0);
        condition.insulation_missing = draw(1.0);
        condition.blower_openings_blocked = draw(1.0);
        for (int change = 0; change < 20; ++change) {
            heat::Inputs in = standby();
            in.flue_mass_flow_kg_s = draw(1.0) < 0.3 ? 0.0 : draw(0.02);
            // A fire needs 7.5e-4 kg/s of gas per kW at least (stoichiometric): the flow limits it.
            burn(in, std::min(draw(1.4), in.flue_mass_flow_kg_s / 0.0077));
            in.rollout_w = draw(0.1) * in.heat_released_hhv_w;
            in.supply_air_kg_s = draw(1.0) < 0.3 ? 0.0 : draw(1.0);
            in.exchanger_leak_kg_s = draw(1.0) < 0.7 ? 0.0 : draw(0.01);
            in.blower_electrical_w = draw(1500.0);
            in.blower_loss_w = draw(1.0) * in.blower_electrical_w;
            in.igniter_w = draw(500.0);
            in.basement_k = 270.0 + draw(40.0);
            in.outdoor_k = 230.0 + draw(80.0);
            for (int i = 0; i < 1200; ++i)
                heat::step(params, condition, state, in, 0.05);
            units::for_each_field(state,
                                  [&](const std::string& path, std::string_view unit, const auto& value) {
                                      const double x = static_cast<double>(value);
                                      if (std::isfinite(x) && (unit != "K" || (x > 220.0 && x < 2500.0)))
                                          return;
                                      INFO(path << " = " << x);
                                      CHECK(false);
                                  });
        }
    }
}
