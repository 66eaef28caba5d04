// SPDX-License-Identifier: MIT
// Expected: the exponential of a first-order lag (closed form, by libm), and how a thermostat's
// cycles answer to its settings (common practice, no source).
#include "control/thermostat.hpp"

#include "control/load_tables.hpp"
#include "units/fields.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace lightoff::control;
using Catch::Matchers::Contains;

namespace {

ThermostatDescription anticipated() {
    auto d = control_tests::load_thermostat("thermostat.json");
    d.power = ThermostatPower::none;
    d.works_above_v = 0.0;
    d.anticipator_a = 0.4;
    return d;
}

struct Cycles {
    double per_hour = 0.0;
    double on_s = 0.0; ///< mean length of a call
    double mean_k = 0.0;
};

/// A house of one capacity that the furnace warms by `up` and loses `down` K/h: integrated here by itself.
Cycles cycle(const ThermostatDescription& d, const ThermostatCondition& condition, double up = 9.0,
             double down = 3.0) {
    const ThermostatParams params = make_thermostat(d);
    ThermostatInputs in;
    in.set_point_k = 294.0;
    ThermostatState state = rested_thermostat(294.0);
    double room = 294.0, sum = 0.0;
    long on_ticks = 0, starts = 0, ticks = 0;
    bool closed = false;
    for (long t = 0; t < 72000L * 12; ++t) {
        in.room_k = room;
        in.call_current_a = closed ? 0.4 : 0.0;
        const auto out = step(params, condition, state, in);
        room += ((out.heat_closed ? up : 0.0) - down) / 72000.0;
        if (t > 72000L * 2) {
            starts += out.heat_closed && !closed;
            on_ticks += out.heat_closed;
            sum += room;
            ++ticks;
        }
        closed = out.heat_closed;
    }
    return {static_cast<double>(starts) / 10.0,
            0.05 * static_cast<double>(on_ticks) / static_cast<double>(starts),
            sum / static_cast<double>(ticks)};
}

} // namespace

TEST_CASE("the sensor follows the room as a first-order lag, at either tick") {
    for (const double tick_s : {0.05, 0.025}) {
        const auto d = control_tests::load_thermostat("thermostat.json");
        const auto params = make_thermostat(d, tick_s);
        ThermostatState state = rested_thermostat(290.0);
        ThermostatInputs in;
        in.room_k = 295.0;
        in.mode = ThermostatMode::off;
        const int ticks = static_cast<int>(d.sensor_lag_s / tick_s + 0.5);
        for (int i = 0; i < ticks; ++i)
            step(params, {}, state, in);
        CHECK(state.sensor_k == Approx(295.0 - 5.0 * std::exp(-1.0)).epsilon(1e-9));
    }
}

TEST_CASE("contact W: differential round the set point, mode and fan switch") {
    auto d = control_tests::load_thermostat("thermostat.json");
    const auto params = make_thermostat(d);
    ThermostatState state = rested_thermostat(294.0);
    ThermostatInputs in;
    in.set_point_k = 294.0;
    const auto settle = [&](double room) {
        state.sensor_k = room;
        state.bias_k = 0.0;
        in.room_k = room;
        return step(params, {}, state, in);
    };
    CHECK_FALSE(settle(294.0 - 0.29).heat_closed);
    CHECK(settle(294.0 - 0.31).heat_closed);
    CHECK(settle(294.0 + 0.28).heat_closed); // between the two points it stays
    CHECK_FALSE(settle(294.0 + 0.31).heat_closed);
    CHECK(settle(290.0).heat_closed);
    in.mode = ThermostatMode::off;
    CHECK_FALSE(settle(290.0).heat_closed);
    CHECK_FALSE(settle(290.0).fan_closed);
    in.fan = FanSwitch::on;
    CHECK(settle(290.0).fan_closed);
}

TEST_CASE("what can be wrong with it") {
    auto d = control_tests::load_thermostat("thermostat.json");
    ThermostatInputs in;
    in.room_k = 290.0;
    in.set_point_k = 294.0;
    ThermostatCondition condition;
    const auto out = [&] {
        ThermostatState state = rested_thermostat(in.room_k);
        return step(make_thermostat(d), condition, state, in);
    };
    CHECK(out().heat_closed);
    SECTION("dead battery: no display, no call") {
        condition.battery_v = 1.9;
        CHECK_FALSE(out().heat_closed);
        CHECK_FALSE(out().awake);
    }
    SECTION("fed over C: no 24 V, no call") {
        d.power = ThermostatPower::common;
        d.works_above_v = 16.0;
        CHECK_FALSE(out().awake);
        in.supply_v = 25.0;
        CHECK(out().heat_closed);
    }
    SECTION("sensor reads high: no call though the room is cold") {
        condition.sensor_offset_k = 5.0;
        CHECK_FALSE(out().heat_closed);
        CHECK(out().shown_k == Approx(295.0));
    }
    SECTION("contacts stuck") {
        condition.heat_contact = Contact::stuck_open;
        CHECK_FALSE(out().heat_closed);
        condition.heat_contact = Contact::stuck_closed;
        in.mode = ThermostatMode::off;
        CHECK(out().heat_closed);
        condition.fan_contact = Contact::stuck_closed;
        CHECK(out().fan_closed);
    }
}

TEST_CASE("cycles: 3 to 6 an hour at a third of full load; a wrong anticipator changes their length") {
    const Cycles proper = cycle(anticipated(), {});
    CHECK(proper.per_hour >= 3.0);
    CHECK(proper.per_hour <= 6.0);
    CHECK(std::abs(proper.mean_k - 294.0) < 1.5); // droop: the bias costs a part of a kelvin
    ThermostatCondition low, high;
    low.anticipator_factor = 0.6;  // overheats
    high.anticipator_factor = 2.5; // hardly heats
    const Cycles short_calls = cycle(anticipated(), low), long_calls = cycle(anticipated(), high);
    CAPTURE(proper.per_hour, proper.on_s, proper.mean_k, short_calls.per_hour, short_calls.on_s,
            long_calls.per_hour, long_calls.on_s);
    CHECK(short_calls.on_s < 0.7 * proper.on_s);
    CHECK(long_calls.on_s > 1.4 * proper.on_s);
    CHECK(short_calls.per_hour > proper.per_hour);
    CHECK(long_calls.per_hour < proper.per_hour);
    // an electronic one with the same bias cycles alike, whatever the current
    auto electronic = anticipated();
    electronic.anticipator_a = 0.0;
    CHECK(cycle(electronic, low).per_hour == Approx(proper.per_hour).margin(0.2));
}

TEST_CASE("a thermostat out of range is refused by name") {
    auto d = control_tests::load_thermostat("thermostat.json");
    d.differential_k = 0.0;
    CHECK_THROWS_WITH(make_thermostat(d), Contains("differential_k") && Contains("more than 0"));
    d = control_tests::load_thermostat("thermostat.json");
    d.works_above_v = 0.0;
    CHECK_THROWS_WITH(make_thermostat(d), Contains("works_above_v"));
    d = control_tests::load_thermostat("thermostat.json");
    d.sensor_lag_s = -1.0;
    CHECK_THROWS_WITH(make_thermostat(d), Contains("sensor_lag_s"));
}

TEST_CASE("thermostat: field lists name every byte") {
    const auto bytes = [](const auto& root) {
        std::size_t sum = 0;
        lightoff::units::for_each_value(root, [&](const auto& value) { sum += sizeof value; });
        return sum;
    };
    CHECK(bytes(ThermostatState{}) == sizeof(ThermostatState));
    CHECK(bytes(ThermostatCondition{}) == sizeof(ThermostatCondition));
}
