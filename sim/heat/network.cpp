// SPDX-License-Identifier: MIT
#include "heat/network.hpp"

#include "heat/flue_gas.hpp"
#include "units/constants.hpp"
#include "units/pinned_math.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::heat {

namespace {

constexpr double kLeastGasFlow = 1e-4;         // kg/s; some gas always drifts, and nothing divides by zero
constexpr double kLeastAirFlowSquared = 1e-10; // (kg/s)^2

constexpr double square(double x) {
    return x * x;
}
constexpr double fourth_power(double x) {
    return square(square(x));
}
constexpr double positive(double x) {
    return x > 0.0 ? x : 0.0;
}

/// A floor plus a straight line through 1 at the reference flow.
constexpr double flow_factor(double still_fraction, double flow_ratio) {
    return still_fraction + (1.0 - still_fraction) * flow_ratio;
}

double mean_metal(const Nodes& t) {
    return (t.exchanger[0] + t.exchanger[1] + t.exchanger[2]) * (1.0 / 3.0);
}

double cooling(const MotorParams& motor, double blocked, double flow_ratio) {
    return motor.shell_w_k + motor.openings_w_k * (1.0 - blocked) * flow_ratio;
}

/// Air past the exchanger and into the plenum; returns the heat that leaks into the gas.
double air_flows(const Params& params, const Condition& condition, const Inputs& inputs,
                 const StepConstants& constants, const Nodes& t, double metal_k, Flows& flows,
                 Outputs& seen) {
    const ExchangerParams& exchanger = params.exchanger;
    const FreeConvectionParams& free = params.free_convection;
    const double fresh_squared =
        square(inputs.supply_air_kg_s) + square(free.thermosiphon_kg_s_sqrt_k) * positive(t.plenum - t.house);
    const double fresh = std::max(std::sqrt(fresh_squared), constants.leak_kg_s);
    const double local = std::sqrt(
        square(fresh) + square(free.plume_kg_s_sqrt_k) * positive(metal_k - t.plenum) + kLeastAirFlowSquared);
    const double flow_ratio = local / exchanger.air_reference_flow_kg_s;
    const double wetted =
        condition.air_side_conductance * flow_factor(exchanger.air_still_fraction, flow_ratio);
    const double capacity_rate = local * units::cp_air_j_kg_k;

    double air_k = t.plenum + fresh / local * (t.house - t.plenum);
    double leak_k = air_k;
    for (std::size_t i = kPasses; i-- > 0;) {
        if (i == 0)
            leak_k = air_k;
        const double conductance = wetted * exchanger.air_conductance_w_k[i];
        const double warming = conductance / (capacity_rate + conductance) * (t.exchanger[i] - air_k);
        flows.node.exchanger[i] -= capacity_rate * warming;
        air_k += warming;
    }
    const double leak_rate = constants.leak_kg_s * units::cp_air_j_kg_k;
    flows.node.plenum += capacity_rate * (air_k - t.plenum) - leak_rate * (leak_k - t.plenum);
    flows.border.delivered = (fresh * units::cp_air_j_kg_k - leak_rate) * (t.plenum - t.house);

    const LimitParams& limit = params.limit;
    const double limit_air = limit.air_w_k * flow_factor(limit.still_fraction, flow_ratio);
    const double radiated =
        limit.view_m2 * units::stefan_boltzmann_w_m2_k4 * (fourth_power(metal_k) - fourth_power(t.limit));
    const double convected = limit_air * (air_k - t.limit);
    flows.node.limit = convected + radiated;
    flows.node.plenum -= convected;
    for (double& pass : flows.node.exchanger)
        pass -= radiated * (1.0 / 3.0);

    seen.exchanger_air_k = air_k;
    seen.supply_air_k = t.plenum;
    // A bare probe in sight: the limit's own balance without its lag, linear in the probe's rise.
    seen.supply_air_in_sight_k = t.plenum + limit.view_m2 * units::stefan_boltzmann_w_m2_k4 *
                                                (fourth_power(metal_k) - fourth_power(t.plenum)) / limit_air;
    seen.moved_air_kg_s = fresh;
    seen.delivered_w = flows.border.delivered;
    return leak_rate * (leak_k - t.house);
}

/// Gas through the exchanger, collector, inducer and vent.
void gas_flows(const Params& params, const Inputs& inputs, const StepConstants& constants, double leak_w,
               const Nodes& t, Flows& flows, Outputs& seen) {
    const FlueGas gas{inputs.cp_c0_j_kg_k, inputs.cp_c1_j_kg_k2};
    const double flow = constants.gas_flow_kg_s;
    const double entering_k = gas.temperature(inputs.basement_k, (constants.gas_heat_w + leak_w) / flow);
    double gas_k = entering_k;
    double mean_sum = 0.0;
    const double mean_share = (1.0 - constants.transmitted) / constants.transfer_units;
    for (std::size_t i = 0; i < kPasses; ++i) {
        const double metal_k = t.exchanger[i];
        mean_sum += metal_k + (gas_k - metal_k) * mean_share;
        const double out_k = metal_k + (gas_k - metal_k) * constants.transmitted;
        flows.node.exchanger[i] += flow * gas.enthalpy(out_k, gas_k);
        gas_k = out_k;
    }
    seen.flame_k = entering_k;
    seen.exchanger_gas_mean_k = mean_sum * (1.0 / 3.0);

    const double collector_rate = flow * gas.cp(gas_k);
    const double collected_k =
        t.collector + (gas_k - t.collector) * collector_rate / (collector_rate + params.vent.collector_w_k);
    flows.node.collector = flow * gas.enthalpy(collected_k, gas_k);
    seen.collector_gas_k = collected_k;

    const double connector_h =
        gas.enthalpy(inputs.basement_k, collected_k) + constants.inducer_shaft_w / flow;
    const double connector_k = gas.temperature(inputs.basement_k, connector_h);
    const double vent_rate = flow * gas.cp(connector_k);
    const double outlet_k = t.vent + (connector_k - t.vent) * vent_rate / (vent_rate + params.vent.gas_w_k);
    flows.border.vent_skin = params.vent.skin_w_k * (t.vent - inputs.basement_k);
    flows.node.vent = flow * gas.enthalpy(outlet_k, connector_k) - flows.border.vent_skin;
    flows.border.flue_sensible = flow * gas.enthalpy(inputs.basement_k, outlet_k);
    seen.vent_connector_gas_k = connector_k;
    seen.vent_outlet_gas_k = outlet_k;
    seen.vent_gas_mean_k = 0.5 * (connector_k + outlet_k);
    seen.flue_sensible_w = flow * connector_h;
}

/// Burner compartment: its air is in balance at every instant.
void vestibule_flows(const Params& params, const Inputs& inputs, const StepConstants& constants,
                     const Nodes& t, Flows& flows, Outputs& seen) {
    const double collector = params.jacket.collector_to_vestibule_w_k;
    const double element = params.rollout.air_w_k;
    const double winding = constants.inducer_cooling_w_k;
    const double basement = params.jacket.vestibule_to_basement_w_k;
    const double struck_w = params.rollout.struck_fraction * inputs.rollout_w;
    const double air_k = (collector * t.collector + element * t.rollout + winding * t.inducer_winding +
                          basement * inputs.basement_k + inputs.rollout_w - struck_w) /
                         (collector + element + winding + basement);
    flows.node.collector -= collector * (t.collector - air_k);
    flows.node.rollout = struck_w - element * (t.rollout - air_k);
    flows.node.inducer_winding = inputs.inducer_loss_w - winding * (t.inducer_winding - air_k);
    flows.border.vestibule = basement * (air_k - inputs.basement_k);
    seen.vestibule_k = air_k;
}

} // namespace

StepConstants step_constants(const Params& params, const Condition& condition, const Inputs& inputs) {
    const ExchangerParams& exchanger = params.exchanger;
    StepConstants c{};
    c.leak_kg_s = positive(inputs.exchanger_leak_kg_s);
    c.gas_flow_kg_s = std::max(positive(inputs.flue_mass_flow_kg_s) + c.leak_kg_s, kLeastGasFlow);
    const double cp = inputs.cp_c0_j_kg_k + inputs.cp_c1_j_kg_k2 * exchanger.gas_property_temperature_k;
    const double conductance =
        exchanger.gas_conductance_w_k * condition.gas_side_conductance *
        flow_factor(exchanger.gas_still_fraction, c.gas_flow_kg_s / exchanger.gas_reference_flow_kg_s);
    c.transfer_units = conductance / (static_cast<double>(kPasses) * c.gas_flow_kg_s * cp);
    c.transmitted = units::exp(-c.transfer_units);
    const double fire_w = inputs.heat_released_hhv_w - inputs.latent_w - inputs.rollout_w;
    c.flame_radiation_w = exchanger.flame_radiant_fraction * fire_w;
    c.gas_heat_w = fire_w - c.flame_radiation_w;
    c.inducer_shaft_w = inputs.inducer_electrical_w - inputs.inducer_loss_w;
    c.jacket_w_k = params.jacket.insulated_w_k +
                   (params.jacket.bare_w_k - params.jacket.insulated_w_k) * condition.insulation_missing;
    c.blower_cooling_w_k = cooling(params.blower_motor, condition.blower_openings_blocked,
                                   inputs.supply_air_kg_s / exchanger.air_reference_flow_kg_s);
    c.inducer_cooling_w_k =
        cooling(params.inducer_motor, condition.inducer_openings_blocked, inputs.inducer_speed_ratio);
    return c;
}

Flows heat_flows(const Params& params, const Condition& condition, const Inputs& inputs,
                 const StepConstants& constants, const Nodes& t, Outputs& seen) {
    Flows flows;
    const double leak_w = air_flows(params, condition, inputs, constants, t, mean_metal(t), flows, seen);
    gas_flows(params, inputs, constants, leak_w, t, flows, seen);
    vestibule_flows(params, inputs, constants, t, flows, seen);

    const double igniter_w = igniter_loss_w(params.igniter, t.igniter, inputs.basement_k);
    flows.node.igniter = inputs.igniter_w - igniter_w;
    flows.node.exchanger[0] += constants.flame_radiation_w + igniter_w;

    const double winding_w = constants.blower_cooling_w_k * (t.blower_winding - t.house);
    const double transformer_w = params.transformer.cooling_w_k * (t.transformer - t.house);
    const double shaft_w = inputs.blower_electrical_w - inputs.blower_loss_w;
    flows.node.blower_winding = inputs.blower_loss_w - winding_w;
    flows.node.transformer = inputs.transformer_loss_w - transformer_w;
    flows.border.cabinet_skin = constants.jacket_w_k * (t.plenum - inputs.basement_k);
    flows.node.plenum += winding_w + shaft_w + transformer_w - flows.border.cabinet_skin;

    Energy& border = flows.border;
    border.fuel_hhv = inputs.heat_released_hhv_w;
    border.flue_latent = inputs.latent_w;
    border.electrical = inputs.blower_electrical_w + inputs.inducer_electrical_w + inputs.igniter_w +
                        inputs.transformer_loss_w;
    border.house_gain = params.jacket.to_house_fraction * (border.cabinet_skin + border.vestibule);
    border.house_loss = params.house.loss_w_k * (t.house - inputs.outdoor_k);
    flows.node.house = border.delivered + border.house_gain - border.house_loss;
    seen.jacket_w = border.cabinet_skin + border.vestibule;
    return flows;
}

} // namespace lightoff::heat
