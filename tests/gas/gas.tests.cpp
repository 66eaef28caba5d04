// SPDX-License-Identifier: MIT
#include "gas/gas.hpp"
#include "gas/gas_path.hpp"
#include "gas/orifice.hpp"
#include "reference_gas.hpp"
#include "units/atmosphere.hpp"
#include "units/fields.hpp"
#include <catch2/catch.hpp>
#include <cmath>
#include <type_traits>

using namespace lightoff;
using namespace lightoff::gas;
using units::pa_to_inwc;

namespace {

Outputs run(const Params& p, const Condition& c, State& s, const Inputs& in, double seconds,
            double dt = 0.05) {
    Outputs out;
    for (int i = 0; i < static_cast<int>(std::lround(seconds / dt)); ++i)
        out = step(p, c, s, in, dt);
    return out;
}

Outputs settled(const Condition& c, const Inputs& in, const Params& p = test::reference_gas()) {
    State s;
    return run(p, c, s, in, 3.0);
}

Inputs firing() {
    Inputs in;
    in.valve_energised = true;
    return in;
}

template <class T>
std::size_t visited_bytes() {
    T value{};
    std::size_t bytes = 0;
    units::for_each_value(value, [&](const auto& v) { bytes += sizeof v; });
    return bytes;
}

} // namespace

TEST_CASE("field lists name every member") {
    CHECK(visited_bytes<State>() == sizeof(State));
    CHECK(visited_bytes<Condition>() == sizeof(Condition));
    CHECK(visited_bytes<Outputs>() == sizeof(Outputs));
    CHECK(std::is_trivially_copyable_v<State>);
    CHECK(std::is_trivially_copyable_v<Condition>);
}

// Settled targets of the reference furnace; common practice, no source, but for the orifice flow.
TEST_CASE("healthy gas train") {
    const Outputs off = settled({}, {});
    CHECK(pa_to_inwc(off.inlet_tap_pa) == Approx(7.1).margin(0.01));
    CHECK(off.manifold_tap_pa == 0.0);
    CHECK(off.burners_total_m3_s == 0.0);

    const Outputs on = settled({}, firing());
    CHECK(pa_to_inwc(on.inlet_tap_pa) == Approx(7.0).margin(0.01));
    CHECK(pa_to_inwc(on.manifold_tap_pa) == Approx(3.50).margin(0.005));
    CHECK(units::m3s_to_cfh(on.burners_total_m3_s) == Approx(76.1).epsilon(0.002));
}

TEST_CASE("the needle of a 2 ft3 dial goes round in 94.5 s") {
    State s;
    const Params p = test::reference_gas();
    run(p, {}, s, firing(), 2.0);
    const double start = s.meter_volume_m3;
    run(p, {}, s, firing(), 94.5);
    CHECK((s.meter_volume_m3 - start) / p.meter_dial_m3 == Approx(1.0).epsilon(0.002));
    CHECK(dial_fraction(2.25 * p.meter_dial_m3, p.meter_dial_m3) == Approx(0.25));
}

// Trade chain (common practice, no source): 7 static, 3 flowing, manifold about 2.5.
TEST_CASE("low inlet: undersized pipe holds static and starves flowing") {
    Condition c;
    c.pipe_restriction = 0.905;
    CHECK(pa_to_inwc(settled(c, {}).inlet_tap_pa) == Approx(7.1).margin(0.01));
    const Outputs on = settled(c, firing());
    CHECK(pa_to_inwc(on.inlet_tap_pa) == Approx(3.0).margin(0.15));
    CHECK(pa_to_inwc(on.manifold_tap_pa) == Approx(2.5).margin(0.15));

    SECTION("turning the regulator up does not cure it") {
        c.regulator_adjust_pa = units::inwc_to_pa(1.0);
        CHECK(settled(c, firing()).manifold_tap_pa == on.manifold_tap_pa);
    }
}

// Square law of the orifice equation: input times sqrt(4.5 / 3.5).
TEST_CASE("overfire follows the square root of the manifold pressure") {
    Condition c;
    c.regulator_adjust_pa = units::inwc_to_pa(1.0);
    const Outputs on = settled(c, firing());
    CHECK(pa_to_inwc(on.manifold_tap_pa) == Approx(4.5).margin(0.01));
    CHECK(on.burners_total_m3_s / settled({}, firing()).burners_total_m3_s ==
          Approx(std::sqrt(4.5 / 3.5)).epsilon(0.001));
}

TEST_CASE("other appliances pull the inlet down, more so with a poor supply") {
    Inputs in = firing();
    in.other_appliances_m3_s = units::cfh_to_m3s(120.0);
    const double alone = settled({}, firing()).inlet_tap_pa;
    const double together = settled({}, in).inlet_tap_pa;
    CHECK(together < alone);
    CHECK(pa_to_inwc(together) > 6.5);
    Condition weak;
    weak.supply_factor = 0.5;
    CHECK(pa_to_inwc(settled(weak, in).manifold_tap_pa) < 3.0);
}

TEST_CASE("regulator holds over the ordinary inlet range and follows a starved inlet") {
    Condition low;
    low.supply_factor = 5.2 / 7.1;
    CHECK(pa_to_inwc(settled(low, firing()).manifold_tap_pa) == Approx(3.5).margin(0.1));
    Condition high;
    high.supply_factor = 10.5 / 7.1;
    CHECK(pa_to_inwc(settled(high, firing()).manifold_tap_pa) == Approx(3.5).margin(0.1));
    double before = 0.0;
    for (int percent = 10; percent <= 150; ++percent) {
        Condition c;
        c.supply_factor = percent / 100.0;
        const double manifold = settled(c, firing()).manifold_tap_pa;
        CHECK(manifold > before); // no dip and no step over the whole range
        if (percent > 10)
            CHECK(manifold - before < units::inwc_to_pa(0.08));
        before = manifold;
    }
}

// The closed form must satisfy the balance it was derived from: pipe, valve and orifices by the square law,
// each recomputed here from the answer.
TEST_CASE("closed-form pressures satisfy the flow balance") {
    for (double set : {50.0, 300.0, 900.0, 5000.0})
        for (double valve : {1e-6, 1e-5, 4e-5})
            for (double other : {0.0, 5e-4, 2e-3})
                for (double leak : {0.0, 2e-6})
                    for (double slope : {0.0, 0.02}) {
                        GasPath p;
                        p.supply_pa = 1750.0;
                        p.shared_resistance = 1e8;
                        p.branch_resistance = 5e8;
                        p.other_flow_m3_s = other;
                        p.inlet_conductance = leak;
                        p.valve_conductance = valve;
                        p.load_conductance = 2e-5;
                        p.regulator_set_pa = set;
                        p.regulator_slope = slope;
                        const GasPressures got = settled_pressures(p);
                        const double q = p.load_conductance * std::sqrt(got.manifold_pa);
                        const double branch = q + leak * std::sqrt(got.inlet_pa);
                        const double shared = branch + other;
                        const double inlet = p.supply_pa - p.shared_resistance * shared * shared -
                                             p.branch_resistance * branch * branch;
                        CHECK(got.inlet_pa == Approx(inlet).margin(1e-6));
                        const double wide_open = got.inlet_pa - q * q / (valve * valve);
                        const double line = set + slope * got.inlet_pa;
                        // the leak's own droop is left out of the regulator line: slope x that droop
                        CHECK(got.manifold_pa ==
                              Approx(std::min(wide_open, line)).margin(leak > 0.0 ? 2.0 : 1e-6));
                    }
}

TEST_CASE("gas cock shut: pressure stays in the pipe until the valve opens, then is gone at once") {
    const Params p = test::reference_gas();
    State s;
    run(p, {}, s, {}, 1.0);
    Condition shut;
    shut.cock_open = 0.0;
    CHECK(pa_to_inwc(run(p, shut, s, {}, 60.0).inlet_tap_pa) == Approx(7.1).margin(0.01));
    SECTION("a leaking joint shows as a falling gauge") {
        shut.inlet_leak_area_m2 = 1e-9; // a hole of 0.04 mm
        const double after = run(p, shut, s, {}, 60.0).inlet_tap_pa;
        CHECK(pa_to_inwc(after) < 6.9);
        CHECK(pa_to_inwc(after) > 0.5);
    }
    SECTION("the valve opens on an empty pipe") {
        const Outputs out = run(p, shut, s, firing(), 1.0);
        CHECK(out.inlet_tap_pa == 0.0);
        CHECK(out.burners_total_m3_s == 0.0);
        CHECK(out.meter_flow_m3_s == 0.0);
    }
}

TEST_CASE("valve opens in its time and closes in less than 0.3 s, the same at both step sizes") {
    for (double dt : {0.05, 0.01}) {
        const Params p = test::reference_gas();
        State s;
        run(p, {}, s, firing(), 0.3, dt);
        CHECK(s.valve_position == Approx(0.5).margin(0.05));
        run(p, {}, s, firing(), 0.5, dt);
        CHECK(s.valve_position == 1.0);
        run(p, {}, s, {}, 0.2, dt);
        CHECK(s.valve_position == 0.0);
    }
}

TEST_CASE("stuck and leaking valves") {
    Condition stuck_shut;
    stuck_shut.valve_travel_max = 0.0;
    CHECK(settled(stuck_shut, firing()).burners_total_m3_s == 0.0);
    CHECK(pa_to_inwc(settled(stuck_shut, firing()).inlet_tap_pa) == Approx(7.1).margin(0.01));
    Condition stuck_open;
    stuck_open.valve_travel_min = 1.0;
    CHECK(settled(stuck_open, {}).burners_total_m3_s == settled({}, firing()).burners_total_m3_s);
    Condition leaking;
    leaking.valve_leak_area_m2 = 2e-7; // a scratch of 0.5 mm across
    const Outputs out = settled(leaking, {});
    CHECK(units::m3s_to_cfh(out.burners_total_m3_s) == Approx(1.6).margin(0.4));
    CHECK(pa_to_inwc(out.manifold_tap_pa) < 0.05);
    CHECK(out.meter_flow_m3_s == out.burners_total_m3_s); // so the needle creeps with everything off
}

TEST_CASE("plugged and wrong orifices change only their own burner while the regulator holds") {
    Condition c;
    c.orifice_plugging[1] = 0.5;
    c.orifice_diameter_factor[2] = 1.1;
    const Outputs healthy = settled({}, firing());
    const Outputs out = settled(c, firing());
    CHECK(out.burner_flow_m3_s[1] / healthy.burner_flow_m3_s[1] == Approx(0.5).epsilon(1e-3));
    CHECK(out.burner_flow_m3_s[2] / healthy.burner_flow_m3_s[2] == Approx(1.21).epsilon(1e-3));
    CHECK(out.burner_flow_m3_s[0] / healthy.burner_flow_m3_s[0] == Approx(1.0).epsilon(1e-3));
    CHECK(out.burner_flow_m3_s[4] == 0.0);
}

TEST_CASE("an outlet tap left open blows gas into the room") {
    Condition c;
    c.outlet_tap_open = 1.0;
    const Params p = test::reference_gas();
    State s;
    Inputs in = firing();
    in.room_air_changes_per_s = 0.5 / 3600.0;
    const Outputs out = run(p, c, s, in, 600.0);
    CHECK(out.outlet_leak_m3_s > 0.05 * out.burners_total_m3_s);
    // dilution: V dx/dt = q - n V x, solved exactly here
    const double n = in.room_air_changes_per_s;
    const double exact = out.outlet_leak_m3_s / (n * p.room_volume_m3) * (1.0 - std::exp(-n * 600.0));
    CHECK(s.room.raw_gas_fraction == Approx(exact).epsilon(0.002));
}

// Square-law reasoning: thinner gas leaves faster but weighs less, so volume at standard conditions goes with
// the square root of the density ratio, and the meter, which sees actual volume, speeds up by the inverse.
TEST_CASE("altitude: less gas by weight, faster dial") {
    Inputs high = firing();
    high.barometric_pa = units::pressure_at_altitude_pa(units::foot_to_m(5000.0));
    const double ratio = high.barometric_pa / 101325.0;
    const Params p = test::reference_gas();
    State low_state;
    State high_state;
    const Outputs low = run(p, {}, low_state, firing(), 100.0);
    const Outputs out = run(p, {}, high_state, high, 100.0);
    CHECK(out.burners_total_m3_s / low.burners_total_m3_s == Approx(std::sqrt(ratio)).epsilon(0.002));
    CHECK(high_state.meter_volume_m3 / low_state.meter_volume_m3 ==
          Approx(1.0 / std::sqrt(ratio)).epsilon(0.002));
}
