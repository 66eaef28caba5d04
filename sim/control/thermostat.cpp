// SPDX-License-Identifier: MIT
#include "control/thermostat.hpp"

#include "control/plain_number.hpp"
#include "units/pinned_math.hpp"

#include <stdexcept>
#include <string>

namespace lightoff::control {
namespace {

void require(bool good, const char* key, double value, const char* allowed) {
    if (!good)
        throw std::invalid_argument(std::string("thermostat: ") + key + " = " + plain_number(value) +
                                    "; allowed: " + allowed);
}

bool awake(const ThermostatParams& params, const ThermostatCondition& condition,
           const ThermostatInputs& inputs) {
    switch (params.power) {
    case ThermostatPower::none:
        return true;
    case ThermostatPower::battery:
        return condition.battery_v >= params.works_above_v;
    case ThermostatPower::common:
        return inputs.supply_v >= params.works_above_v;
    }
    return false;
}

/// Settled bias at the present current, kelvins.
double settled_bias_k(const ThermostatParams& params, const ThermostatCondition& condition,
                      const ThermostatInputs& inputs) {
    if (params.anticipator_a <= 0.0)
        return params.heat_bias_k;
    const double part = inputs.call_current_a / (params.anticipator_a * condition.anticipator_factor);
    return params.heat_bias_k * part * part;
}

bool contact(Contact condition, bool wanted) {
    if (condition == Contact::free)
        return wanted;
    return condition == Contact::stuck_closed;
}

} // namespace

ThermostatParams make_thermostat(const ThermostatDescription& d, double tick_s) {
    require(tick_s > 0.0, "tick_s", tick_s, "more than 0");
    require(d.sensor_lag_s > 0.0, "sensor_lag_s", d.sensor_lag_s, "more than 0");
    require(d.differential_k > 0.0, "differential_k", d.differential_k, "more than 0");
    require(d.heat_bias_k >= 0.0, "heat_bias_k", d.heat_bias_k, "0 or more");
    require(d.heat_bias_lag_s > 0.0, "heat_bias_lag_s", d.heat_bias_lag_s, "more than 0");
    require(d.anticipator_a >= 0.0, "anticipator_a", d.anticipator_a, "0 or more");
    const bool logic = d.power != ThermostatPower::none;
    require(logic ? d.works_above_v > 0.0 : d.works_above_v == 0.0, "works_above_v", d.works_above_v,
            logic ? "more than 0" : "0, as its power is none");
    ThermostatParams params;
    params.sensor_keep = units::exp(-tick_s / d.sensor_lag_s);
    params.bias_keep = units::exp(-tick_s / d.heat_bias_lag_s);
    params.half_differential_k = 0.5 * d.differential_k;
    params.heat_bias_k = d.heat_bias_k;
    params.anticipator_a = d.anticipator_a;
    params.works_above_v = d.works_above_v;
    params.power = d.power;
    return params;
}

ThermostatState rested_thermostat(double room_k) {
    ThermostatState state;
    state.sensor_k = room_k;
    return state;
}

ThermostatOutputs step(const ThermostatParams& params, const ThermostatCondition& condition,
                       ThermostatState& state, const ThermostatInputs& inputs) {
    state.sensor_k = inputs.room_k + (state.sensor_k - inputs.room_k) * params.sensor_keep;
    // The heater sits in the W circuit, so it heats whenever that is closed, stuck or not.
    const bool was_closed = contact(condition.heat_contact, state.calling != 0);
    const double bias_k = was_closed ? settled_bias_k(params, condition, inputs) : 0.0;
    state.bias_k = bias_k + (state.bias_k - bias_k) * params.bias_keep;

    ThermostatOutputs outputs;
    outputs.awake = awake(params, condition, inputs);
    outputs.shown_k = state.sensor_k + condition.sensor_offset_k;
    const double error_k = outputs.shown_k + state.bias_k - inputs.set_point_k;
    if (!outputs.awake || inputs.mode != ThermostatMode::heat)
        state.calling = 0;
    else if (error_k <= -params.half_differential_k)
        state.calling = 1;
    else if (error_k >= params.half_differential_k)
        state.calling = 0;
    outputs.heat_closed = contact(condition.heat_contact, state.calling != 0);
    outputs.fan_closed = contact(condition.fan_contact, outputs.awake && inputs.fan == FanSwitch::on);
    return outputs;
}

} // namespace lightoff::control
