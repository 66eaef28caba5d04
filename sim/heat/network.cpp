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

constexpr double kShareOfPass = 1.0 / static_cast<double>(kPasses);

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
    return (t.exchanger[0] + t.exchanger[1] + t.exchanger[2]) * kShareOfPass;
}

double cooling(const MotorParams& motor, double blocked, double flow_ratio) {
    return motor.shell_w_k + motor.openings_w_k * (1.0 - blocked) * flow_ratio;
}

/// Air past the exchanger and into the plenum, and the limit element in it.
void air_flows(const Params& params, const Inputs& inputs, const StepConstants& c, const Nodes& t,
               Flows& flows, Outputs& seen) {
    const FreeConvectionParams& free = params.free_convection;
    const double metal_k = mean_metal(t);
    const double fresh =
        std::max(std::sqrt(square(inputs.supply_air_kg_s) +
                           square(free.thermosiphon_kg_s_sqrt_k) * positive(t.plenum - t.house)),
                 c.leak_kg_s);
    const double local = std::sqrt(
        square(fresh) + square(free.plume_kg_s_sqrt_k) * positive(metal_k - t.plenum) + kLeastAirFlowSquared);
    const double flow_ratio = local * c.per_air_reference_flow;
    const double wetted =
        c.air_side_conductance * flow_factor(params.exchanger.air_still_fraction, flow_ratio);
    const double capacity_rate = local * units::cp_air_j_kg_k;

    double air_k = t.plenum + fresh / local * (t.house - t.plenum);
    for (std::size_t i = kPasses; i-- > 0;) {
        const double conductance = wetted * params.exchanger.air_conductance_w_k[i];
        const double effectiveness = conductance / (capacity_rate + conductance);
        const double warming = effectiveness * (t.exchanger[i] - air_k);
        flows.node.exchanger[i] -= capacity_rate * warming;
        air_k += warming;
    }
    flows.border.delivered = (fresh - c.leak_kg_s) * units::cp_air_j_kg_k * (t.plenum - t.house);

    const LimitParams& limit = params.limit;
    const double limit_air = limit.air_w_k * flow_factor(limit.still_fraction, flow_ratio);
    const double view = limit.view_m2 * units::stefan_boltzmann_w_m2_k4;
    const double convected = limit_air * (air_k - t.limit);
    const double radiated = view * (fourth_power(metal_k) - fourth_power(t.limit));
    flows.node.limit = convected + radiated;
    flows.node.plenum = capacity_rate * (air_k - t.plenum) - convected;
    for (double& pass : flows.node.exchanger)
        pass -= radiated * kShareOfPass;

    seen.exchanger_air_k = air_k;
    seen.supply_air_k = t.plenum;
    // A bare probe in sight balances like the limit, without its lag; radiation made linear.
    const double sight = view * (square(metal_k) + square(t.plenum)) * (metal_k + t.plenum);
    seen.supply_air_in_sight_k = t.plenum + sight / (sight + limit_air) * (metal_k - t.plenum);
    seen.moved_air_kg_s = fresh;
    seen.delivered_w = flows.border.delivered;
}

/// Gas through the exchanger, collector, inducer and vent; the heat (W) of what a draft hood spills.
double gas_flows(const Params& params, const Inputs& inputs, const StepConstants& c, const Nodes& t,
                 Flows& flows, Outputs& seen) {
    const FlueGas gas{inputs.cp_c0_j_kg_k, inputs.cp_c1_j_kg_k2};
    const double flow = c.gas_flow_kg_s;
    const double leak_w = c.leak_kg_s * units::cp_air_j_kg_k * (t.plenum - t.house);
    double gas_k = gas.temperature(inputs.basement_k, (c.gas_heat_w + leak_w) * c.per_gas_flow);
    seen.flame_k = gas_k;
    double mean_sum = 0.0;
    for (std::size_t i = 0; i < kPasses; ++i) {
        const double metal_k = t.exchanger[i];
        mean_sum += metal_k + (gas_k - metal_k) * c.mean_share;
        const double out_k = metal_k + (gas_k - metal_k) * c.transmitted;
        flows.node.exchanger[i] += flow * gas.enthalpy(out_k, gas_k);
        gas_k = out_k;
    }
    seen.exchanger_gas_mean_k = mean_sum * kShareOfPass;

    const double collected_k = t.collector + (gas_k - t.collector) * c.collector_transmitted;
    flows.node.collector = flow * gas.enthalpy(collected_k, gas_k);
    seen.collector_gas_k = collected_k;

    const double flue_h = gas.enthalpy(inputs.basement_k, collected_k) + c.inducer_shaft_w * c.per_gas_flow;
    const double connector_h = flue_h * c.vent_share;
    const double connector_k = gas.temperature(inputs.basement_k, connector_h);
    const double outlet_k = t.vent + (connector_k - t.vent) * c.vent_transmitted;
    flows.border.vent_skin = params.vent.skin_w_k * (t.vent - inputs.basement_k);
    flows.node.vent = c.vent_flow_kg_s * gas.enthalpy(outlet_k, connector_k) - flows.border.vent_skin;
    flows.border.flue_sensible = c.vent_flow_kg_s * gas.enthalpy(inputs.basement_k, outlet_k);
    seen.vent_connector_gas_k = connector_k;
    seen.vent_outlet_gas_k = outlet_k;
    seen.vent_gas_mean_k = 0.5 * (connector_k + outlet_k);
    seen.flue_sensible_w = flow * flue_h;
    return c.spilled_kg_s * flue_h;
}

/// Burner compartment: its air is in balance at every instant.
void vestibule_flows(const Params& params, const Inputs& inputs, const StepConstants& constants,
                     const Nodes& t, double spilled_w, Flows& flows, Outputs& seen) {
    const double collector = params.jacket.collector_to_vestibule_w_k;
    const double element = params.rollout.air_w_k;
    const double winding = constants.inducer_cooling_w_k;
    const double basement = params.jacket.vestibule_to_basement_w_k;
    const double outside_w = inputs.rollout_w + spilled_w;
    const double struck_w = params.rollout.struck_fraction * outside_w;
    const double air_k = (collector * t.collector + element * t.rollout + winding * t.inducer_winding +
                          basement * inputs.basement_k + outside_w - struck_w) /
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
    c.per_gas_flow = 1.0 / c.gas_flow_kg_s;
    const double transfer_units = conductance * kShareOfPass / cp * c.per_gas_flow;
    c.transmitted = units::exp(-transfer_units);
    c.mean_share = (1.0 - c.transmitted) / transfer_units;
    c.vent_flow_kg_s = std::max(c.gas_flow_kg_s + inputs.dilution_kg_s, kLeastGasFlow);
    c.spilled_kg_s = positive(c.gas_flow_kg_s - c.vent_flow_kg_s);
    c.vent_share = inputs.dilution_kg_s > 0.0 ? c.gas_flow_kg_s / c.vent_flow_kg_s : 1.0;
    const double cool_cp = inputs.cp_c0_j_kg_k + inputs.cp_c1_j_kg_k2 * params.vent.property_temperature_k;
    const double cool_rate = c.gas_flow_kg_s * cool_cp;
    const double vent_rate = c.vent_flow_kg_s * cool_cp;
    c.collector_transmitted = cool_rate / (cool_rate + params.vent.collector_w_k);
    c.vent_transmitted = vent_rate / (vent_rate + params.vent.gas_w_k);
    const double fire_w = inputs.heat_released_hhv_w - inputs.latent_w - inputs.rollout_w;
    c.flame_radiation_w = exchanger.flame_radiant_fraction * fire_w;
    c.gas_heat_w = fire_w - c.flame_radiation_w;
    c.inducer_shaft_w = inputs.inducer_electrical_w - inputs.inducer_loss_w;
    c.air_side_conductance = condition.air_side_conductance;
    c.per_air_reference_flow = 1.0 / exchanger.air_reference_flow_kg_s;
    c.jacket_w_k = params.jacket.insulated_w_k +
                   (params.jacket.bare_w_k - params.jacket.insulated_w_k) * condition.insulation_missing;
    c.blower_cooling_w_k = cooling(params.blower_motor, condition.blower_openings_blocked,
                                   inputs.supply_air_kg_s * c.per_air_reference_flow);
    c.inducer_cooling_w_k =
        cooling(params.inducer_motor, condition.inducer_openings_blocked, inputs.inducer_speed_ratio);
    return c;
}

Flows heat_flows(const Params& params, const Inputs& inputs, const StepConstants& constants, const Nodes& t,
                 Outputs& seen) {
    Flows flows;
    air_flows(params, inputs, constants, t, flows, seen);
    const double spilled_w = gas_flows(params, inputs, constants, t, flows, seen);
    vestibule_flows(params, inputs, constants, t, spilled_w, flows, seen);

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
