// SPDX-License-Identifier: MIT
#include "heat/heat.hpp"

#include "heat/network.hpp"

namespace lightoff::heat {

namespace {

constexpr double kOpenOhm = 1e9;

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
    State state;
    Nodes::zip([&](double& t) { t = temperature_k; }, state.temperature);
    return state;
}

Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s) {
    const StepConstants constants = step_constants(params, condition, inputs);
    const double half_s = 0.5 * dt_s;
    Outputs out;
    const Flows first = heat_flows(params, inputs, constants, state.temperature, out);
    Nodes half_warming; // K per W of half the step
    Nodes predicted;
    Nodes::zip(
        [&](double& warming, double& ahead, double t, double capacity, double w) {
            warming = half_s / capacity;
            ahead = t + 2.0 * warming * w;
        },
        half_warming, predicted, state.temperature, params.capacity_j_k, first.node);
    const Flows second = heat_flows(params, inputs, constants, predicted, out);
    Nodes::zip([](double& t, double warming, double w1, double w2) { t += warming * (w1 + w2); },
               state.temperature, half_warming, first.node, second.node);
    Energy::zip([&](double& j, double w1, double w2) { j += half_s * (w1 + w2); }, state.energy, first.border,
                second.border);

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
    double sum = 0.0;
    Nodes::zip([&](double capacity, double t) { sum += capacity * t; }, params.capacity_j_k, temperature);
    return sum - params.capacity_j_k.house * temperature.house;
}

double steady_efficiency_pct(const Inputs& inputs, const Outputs& outputs) {
    if (inputs.heat_released_hhv_w <= 0.0)
        return 0.0;
    return 100.0 * (1.0 - (outputs.flue_sensible_w + inputs.latent_w) / inputs.heat_released_hhv_w);
}

} // namespace lightoff::heat
