// SPDX-License-Identifier: MIT
#include "heat/heat.hpp"

#include "heat/network.hpp"

namespace lightoff::heat {

namespace {

constexpr double kOpenOhm = 1e9;

/// a + k*b member by member.
template <class T>
T plus_scaled(const T& a, const Flat<T>& k, const T& b) {
    Flat<T> sum = flat(a);
    const Flat<T> slope = flat(b);
    for (std::size_t i = 0; i < sum.size(); ++i)
        sum[i] += k[i] * slope[i];
    return std::bit_cast<T>(sum);
}

template <class T>
T mean_of(const T& a, const T& b) {
    Flat<T> mean = flat(a);
    const Flat<T> other = flat(b);
    for (std::size_t i = 0; i < mean.size(); ++i)
        mean[i] = 0.5 * (mean[i] + other[i]);
    return std::bit_cast<T>(mean);
}

Flat<Nodes> time_over_capacity(const Params& params, double dt_s) {
    Flat<Nodes> result = flat(params.capacity_j_k);
    for (double& value : result)
        value = dt_s / value;
    return result;
}

Flat<Energy> uniform(double value) {
    Flat<Energy> result{};
    result.fill(value);
    return result;
}

std::uint8_t flag(bool value) {
    return value ? 1 : 0;
}

void move_switches(const Params& params, const Condition& condition, State& state) {
    const Nodes& t = state.temperature;
    state.limit_open =
        next_open(state.limit_open, params.limit.contact, condition.limit_set_point_shift_k, t.limit);
    state.rollout_tripped = next_open(state.rollout_tripped, params.rollout.contact,
                                      condition.rollout_set_point_shift_k, t.rollout);
    state.blower_overload_open =
        next_open(state.blower_overload_open, params.blower_motor.overload, 0.0, t.blower_winding);
    state.inducer_overload_open =
        next_open(state.inducer_overload_open, params.inducer_motor.overload, 0.0, t.inducer_winding);
    const double parts_k = condition.igniter_crack_opens_above_k;
    const ThermalSwitch crack{parts_k, parts_k - params.igniter.crack_differential_k};
    state.igniter_crack_open = next_open(state.igniter_crack_open, crack, 0.0, t.igniter);
}

void note_condensation(const Inputs& inputs, State& state) {
    const bool vapour = inputs.latent_w > 0.0;
    const Nodes& t = state.temperature;
    state.exchanger_wet = flag(vapour && t.exchanger[kPasses - 1] < inputs.dew_point_k);
    state.collector_wet = flag(vapour && t.collector < inputs.dew_point_k);
    state.vent_wet = flag(vapour && t.vent < inputs.dew_point_k);
}

} // namespace

State at_rest(double temperature_k) {
    Flat<Nodes> all{};
    all.fill(temperature_k);
    State state;
    state.temperature = std::bit_cast<Nodes>(all);
    return state;
}

Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s) {
    const StepConstants constants = step_constants(params, condition, inputs);
    const Flat<Nodes> warming = time_over_capacity(params, dt_s);
    Outputs out;
    const Flows first = heat_flows(params, condition, inputs, constants, state.temperature, out);
    const Nodes predicted = plus_scaled(state.temperature, warming, first.node);
    const Flows second = heat_flows(params, condition, inputs, constants, predicted, out);
    state.temperature = plus_scaled(state.temperature, warming, mean_of(first.node, second.node));
    state.energy = plus_scaled(state.energy, uniform(dt_s), mean_of(first.border, second.border));

    move_switches(params, condition, state);
    note_condensation(inputs, state);
    out.igniter_ohm = state.igniter_crack_open != 0
                          ? kOpenOhm
                          : igniter_resistance_ohm(params.igniter, condition.igniter_resistance_factor,
                                                   state.temperature.igniter);
    out.limit_closed = is_closed(state.limit_open, condition.limit_fault);
    out.rollout_closed = is_closed(state.rollout_tripped, condition.rollout_fault);
    out.blower_overload_closed = is_closed(state.blower_overload_open, condition.blower_overload_fault);
    out.inducer_overload_closed = is_closed(state.inducer_overload_open, condition.inducer_overload_fault);
    return out;
}

void reset_rollout(const Params& params, const Condition& condition, State& state) {
    if (state.temperature.rollout < params.rollout.contact.opens_k + condition.rollout_set_point_shift_k)
        state.rollout_tripped = 0;
}

double stored_energy_j(const Params& params, const Nodes& temperature) {
    const Flat<Nodes> capacity = flat(params.capacity_j_k);
    const Flat<Nodes> t = flat(temperature);
    double sum = 0.0;
    for (std::size_t i = 0; i < t.size(); ++i)
        sum += capacity[i] * t[i];
    return sum - params.capacity_j_k.house * temperature.house;
}

double steady_efficiency_pct(const Inputs& inputs, const Outputs& outputs) {
    if (inputs.heat_released_hhv_w <= 0.0)
        return 0.0;
    return 100.0 * (1.0 - (outputs.flue_sensible_w + inputs.latent_w) / inputs.heat_released_hhv_w);
}

} // namespace lightoff::heat
