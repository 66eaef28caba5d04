// SPDX-License-Identifier: MIT
#pragma once
#include "heat/heat.hpp"

/// The equations of the heat network. Temperatures K, flows kg/s, conductances W/K, heat W.
///
/// Gas. m = flue flow + leak, at least 1e-4. It enters with the enthalpy
///   h = ((1 - radiant)*(HHV - latent - rollout) + leak*cp_air*(T_plenum - T_house))/m  over the basement's,
/// and passes the three metal parts: T_out = T_i + (T_in - T_i)*exp(-NTU),
///   NTU = UA_gas/3 / (m*cp(property temperature)),  heat to part i = m*(h(T_in) - h(T_out)).
/// Collector and vent are stirred: T_out = T_metal + (T_in - T_metal)*C/(C + UA), C = m*cp(their property
/// temperature), heat to the metal m*(h(T_in) - h(T_out)).
/// Shaft power of the inducer is added between them. So is what a draft hood takes in, air at the basement's
/// temperature: the vent's flow is m + dilution. Where the hood spills, the vent gets less of the same gas
/// and the rest of its heat goes to the burner compartment.
///
/// Air. m_fresh^2 = blower^2 + k_t^2*(T_plenum - T_house)+ ; m_local^2 = m_fresh^2 + k_p^2*(T_metal mean -
/// T_plenum)+ + 1e-10. Fresh air and the rest (plenum air that comes round again) mix, then pass parts 3, 2,
/// 1 (counterflow), each a stirred cell: heat from part i = C*UA_i/(C + UA_i)*(T_i - T_in), C =
/// m_local*cp_air. Air that leaks into the gas is taken before part 1. What comes out feeds the plenum node;
/// motor and transformer heat go straight to the plenum node.
///
/// Limit: G(m_local)*(air leaving the exchanger - T) + view*sigma*(T_metal mean^4 - T^4).
/// Burner compartment air has no capacity: collector metal, inducer winding, rollout element, rolled-out
/// flame and spilled flue gas feed it, the basement takes it. Igniter: electrical -
/// igniter_loss_w(surroundings = basement); its loss warms the first pass.
///
/// Left out: capacity of gas and air, heat by conduction between parts, moisture of the air, the change of
/// properties with temperature other than cp of the gas.
namespace lightoff::heat {

/// What stays the same through a step, worked out once from inputs and condition.
struct StepConstants {
    double gas_flow_kg_s;  // leak included
    double per_gas_flow;   // its inverse, s/kg
    double vent_flow_kg_s; // dilution air included
    double vent_share;     // of the vent's flow that is flue gas
    double spilled_kg_s;   // flue gas out of a draft hood
    double leak_kg_s;
    double transmitted; // exp(-NTU) of one pass
    double mean_share;  // (1 - exp(-NTU))/NTU: how far over the metal the gas of a pass is on average
    double collector_transmitted; // C/(C + UA)
    double vent_transmitted;
    double gas_heat_w; // fire's heat that the gas carries into the exchanger
    double flame_radiation_w;
    double inducer_shaft_w;
    double air_side_conductance;
    double per_air_reference_flow; // s/kg
    double jacket_w_k;
    double blower_cooling_w_k;
    double inducer_cooling_w_k;
};

StepConstants step_constants(const Params& params, const Condition& condition, const Inputs& inputs);

/// All flows at the given temperatures; `seen` gets the gas and air temperatures on the way.
Flows heat_flows(const Params& params, const Inputs& inputs, const StepConstants& constants,
                 const Nodes& temperature, Outputs& seen);

} // namespace lightoff::heat
