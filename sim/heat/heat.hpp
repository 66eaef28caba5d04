// SPDX-License-Identifier: MIT
#pragma once
#include "heat/igniter.hpp"
#include "heat/nodes.hpp"
#include "heat/switches.hpp"

#include <array>
#include <cstdint>

/// Where the heat goes: flue gas, exchanger metal, supply air, limit and rollout elements, vent, igniter,
/// motor windings, transformer, house. Lumps joined by conductances; flue gas and the air that passes the
/// exchanger are quasi-steady (they stay under 1 s). Equations: network.hpp.
namespace lightoff::heat {

/// Exchanger between flue gas and air. A conductance grows with flow as
///   UA = UA_ref * (still + (1 - still) * flow/flow_ref),
/// a laminar (or free-convection) floor plus a straight line with about the slope that the 0.8 power of
/// turbulent flow has at the reference point (Dittus-Boelter exponent, heat-transfer texts).
struct ExchangerParams {
    double gas_conductance_w_k =
        37.9; // all passes together, clean, at the reference flow (fitted to settled targets)
    double gas_reference_flow_kg_s = 0.0114;
    double gas_still_fraction = 0.2;
    double gas_property_temperature_k = 800.0; // where cp is taken for the number of transfer units
    double flame_radiant_fraction = 0.05; // of the sensible heat, straight to the first pass (teaching value)
    std::array<double, kPasses> air_conductance_w_k{45.0, 42.0, 38.0}; // clean, at the reference flow
    double air_reference_flow_kg_s = 0.652;                            // 1,150 cfm of standard air
    double air_still_fraction = 0.15; // free convection, and radiation to the liner
};

/// Air that moves by its own lightness when the blower does not move it (teaching values).
struct FreeConvectionParams {
    double plume_kg_s_sqrt_k =
        3.0e-3; // round the exchanger inside the cabinet: m = k*sqrt(T_metal - T_plenum)
    double thermosiphon_kg_s_sqrt_k =
        1.5e-3; // through the idle blower and the ducts: m = k*sqrt(T_plenum - T_house)
};

struct JacketParams {
    double insulated_w_k = 4.0; // cabinet and plenum skin to the basement, liner in place
    double bare_w_k = 20.0;     // the same without its insulation
    double collector_to_vestibule_w_k = 0.75;
    double vestibule_to_basement_w_k = 8.0; // louvres and front panel
    double to_house_fraction = 0.5;         // of skin and vestibule loss that comes up to the house
};

struct LimitParams {
    ThermalSwitch contact{360.928, 344.261}; // 190 F, closes 30 F lower
    double air_w_k = 0.12; // element to the air that leaves the exchanger, at its reference flow
    double still_fraction = 0.25;
    double view_m2 = 7.0e-4; // emissivity * view factor * area towards the exchanger metal
};

struct RolloutParams {
    ThermalSwitch contact{422.039, 0.0}; // 300 F, manual reset
    double air_w_k = 0.12;               // element to the air of the burner compartment
    double struck_fraction = 0.01;       // of rolled-out and spilled heat that strikes the element
};

struct VentParams {
    double collector_w_k = 4.0;            // gas to metal of collector box and inducer housing
    double gas_w_k = 14.0;                 // gas to vent metal
    double property_temperature_k = 440.0; // where cp is taken for the two above
    double skin_w_k = 6.0;                 // vent metal to its surroundings
};

/// Cooling of a motor winding: W/K = shell + openings * (1 - blocked) * flow/reference flow.
struct MotorParams {
    double shell_w_k;
    double openings_w_k;
    ThermalSwitch overload;
};

struct TransformerParams {
    double cooling_w_k = 0.2;
};

struct HouseParams {
    double loss_w_k = 240.0;
};

/// Immutable, from the equipment profile. Defaults are the reference furnace's (teaching values fitted to the
/// settled targets of common practice; see docs). All conductances > 0, fractions 0..1.
struct Params {
    Nodes capacity_j_k{
        {3500.0, 3400.0, 3100.0}, 2600.0, 2.8, 4.0, 1500.0, 2400.0, 2.6, 2200.0, 500.0, 400.0, 6.0e6};
    ExchangerParams exchanger;
    FreeConvectionParams free_convection;
    JacketParams jacket;
    LimitParams limit;
    RolloutParams rollout;
    VentParams vent;
    IgniterParams igniter;
    MotorParams blower_motor{1.2, 4.4, {408.15, 348.15}};
    MotorParams inducer_motor{0.30, 0.6, {408.15, 348.15}};
    TransformerParams transformer;
    HouseParams house;
};

/// How the parts are; the default is a healthy furnace.
struct Condition {
    double gas_side_conductance = 1.0;    // factor, 1 clean, below 1 sooted or scaled; > 0
    double air_side_conductance = 1.0;    // factor, 1 clean, below 1 furred with dust; > 0
    double insulation_missing = 0.0;      // fraction of the jacket's insulation, 0..1
    double limit_set_point_shift_k = 0.0; // negative: weak, opens early
    double rollout_set_point_shift_k = 0.0;
    double igniter_resistance_factor = 1.0;     // above 1 aged
    double igniter_crack_opens_above_k = 1.0e4; // a crack parts at this temperature; 0: open for good
    double blower_openings_blocked = 0.0;       // cooling openings, fraction 0..1
    double inducer_openings_blocked = 0.0;
    ContactFault limit_fault = ContactFault::works;
    ContactFault rollout_fault = ContactFault::works;
    ContactFault blower_overload_fault = ContactFault::works;
    ContactFault inducer_overload_fault = ContactFault::works;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("gas_side_conductance", "", self.gas_side_conductance);
        visit("air_side_conductance", "", self.air_side_conductance);
        visit("insulation_missing", "", self.insulation_missing);
        visit("limit_set_point_shift", "K", self.limit_set_point_shift_k);
        visit("rollout_set_point_shift", "K", self.rollout_set_point_shift_k);
        visit("igniter_resistance_factor", "", self.igniter_resistance_factor);
        visit("igniter_crack_opens_above", "K", self.igniter_crack_opens_above_k);
        visit("blower_openings_blocked", "", self.blower_openings_blocked);
        visit("inducer_openings_blocked", "", self.inducer_openings_blocked);
        visit("limit_fault", "", self.limit_fault);
        visit("rollout_fault", "", self.rollout_fault);
        visit("blower_overload_fault", "", self.blower_overload_fault);
        visit("inducer_overload_fault", "", self.inducer_overload_fault);
    }
};

/// What evolves. Make one with `at_rest`.
struct State {
    Nodes temperature;                // K
    Energy energy;                    // J since `at_rest`
    std::uint8_t limit_open = 0;      // where the bimetal stands, whatever its contact does
    std::uint8_t rollout_tripped = 0; // stays until reset by hand: see reset_rollout
    std::uint8_t blower_overload_open = 0;
    std::uint8_t inducer_overload_open = 0;
    std::uint8_t igniter_crack_open = 0;
    std::uint8_t exchanger_wet = 0; // last pass under the dew point while water vapour passes
    std::uint8_t collector_wet = 0;
    std::uint8_t vent_wet = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("temperature", self.temperature);
        visit("energy", self.energy);
        visit("limit_open", "", self.limit_open);
        visit("rollout_tripped", "", self.rollout_tripped);
        visit("blower_overload_open", "", self.blower_overload_open);
        visit("inducer_overload_open", "", self.inducer_overload_open);
        visit("igniter_crack_open", "", self.igniter_crack_open);
        visit("exchanger_wet", "", self.exchanger_wet);
        visit("collector_wet", "", self.collector_wet);
        visit("vent_wet", "", self.vent_wet);
    }
};

/// What the other rooms give for one step. Powers and flows >= 0; losses and latent heat are parts of the
/// whole they are named after and not more than it.
struct Inputs {
    double heat_released_hhv_w = 0.0; // by what burns, higher heating value
    double latent_w = 0.0;            // part of it that is water vapour's latent heat; leaves by the vent
    double rollout_w = 0.0;           // part of it that comes out of the burner openings
    double flue_mass_flow_kg_s = 0.0; // through the burner openings, fuel included, leak excluded
    double dilution_kg_s = 0.0;       // room air into a draft hood; below 0 flue gas spills out of it
    double cp_c0_j_kg_k = 1000.0;     // flue gas cp = c0 + c1*T
    double cp_c1_j_kg_k2 = 0.15;
    double dew_point_k = 0.0;          // of the flue gas
    double supply_air_kg_s = 0.0;      // what the blower moves
    double exchanger_leak_kg_s = 0.0;  // air through a cracked exchanger into the flue gas
    double igniter_w = 0.0;            // electrical
    double blower_electrical_w = 0.0;  // all of it ends in the air ...
    double blower_loss_w = 0.0;        // ... this part by way of the winding
    double inducer_electrical_w = 0.0; // shaft part ends in the flue gas ...
    double inducer_loss_w = 0.0;       // ... this part in the winding and the burner compartment
    double inducer_speed_ratio = 0.0;  // over the healthy running speed; drives its cooling fan
    double transformer_loss_w = 0.0;
    double basement_k = 294.261; // air round the furnace, and the combustion air
    double outdoor_k = 273.15;
};

struct Outputs {
    // Flue gas along its way.
    double flame_k = 0.0;              // entering the exchanger, mixed
    double exchanger_gas_mean_k = 0.0; // along the passes
    double collector_gas_k = 0.0;      // in front of the inducer wheel
    double vent_connector_gas_k = 0.0; // behind it (and behind a draft hood): where the analyser's probe goes
    double vent_gas_mean_k = 0.0;
    double vent_outlet_gas_k = 0.0;
    // Air.
    double supply_air_k = 0.0;          // out of sight of the exchanger
    double supply_air_in_sight_k = 0.0; // what a probe in its sight comes to
    double exchanger_air_k = 0.0;       // leaving the exchanger, where the limit is
    double vestibule_k = 0.0;           // burner compartment
    double moved_air_kg_s = 0.0;        // through the ducts, thermosiphon included
    // Heat flows, W.
    double delivered_w = 0.0;
    double jacket_w = 0.0;        // skin and vestibule
    double flue_sensible_w = 0.0; // at the vent connector, over the surroundings
    // Electrical side.
    double igniter_ohm = 0.0; // 1e9 when open
    std::uint16_t limit_closed = 1;
    std::uint16_t rollout_closed = 1;
    std::uint16_t blower_overload_closed = 1;
    std::uint16_t inducer_overload_closed = 1;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("flame", "K", self.flame_k);
        visit("exchanger_gas_mean", "K", self.exchanger_gas_mean_k);
        visit("collector_gas", "K", self.collector_gas_k);
        visit("vent_connector_gas", "K", self.vent_connector_gas_k);
        visit("vent_gas_mean", "K", self.vent_gas_mean_k);
        visit("vent_outlet_gas", "K", self.vent_outlet_gas_k);
        visit("supply_air", "K", self.supply_air_k);
        visit("supply_air_in_sight", "K", self.supply_air_in_sight_k);
        visit("exchanger_air", "K", self.exchanger_air_k);
        visit("vestibule", "K", self.vestibule_k);
        visit("moved_air", "kg/s", self.moved_air_kg_s);
        visit("delivered", "W", self.delivered_w);
        visit("jacket", "W", self.jacket_w);
        visit("flue_sensible", "W", self.flue_sensible_w);
        visit("igniter_resistance", "ohm", self.igniter_ohm);
        visit("limit_closed", "", self.limit_closed);
        visit("rollout_closed", "", self.rollout_closed);
        visit("blower_overload_closed", "", self.blower_overload_closed);
        visit("inducer_overload_closed", "", self.inducer_overload_closed);
    }
};

/// Everything at one temperature, switches closed, accounts empty.
State at_rest(double temperature_k);

/// One step of `dt_s` (0.01 or 0.05 s; stable to 1 s): Heun's two-stage rule on all nodes and accounts with
/// the inputs held. Gas and air temperatures in Outputs are those of the second stage.
Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s);

/// The button of the rollout switch: closes it if its element has cooled below its set point.
void reset_rollout(const Params& params, const Condition& condition, State& state);

/// Energy in the furnace's nodes (all but the house) over 0 K, J.
double stored_energy_j(const Params& params, const Nodes& temperature);

/// Steady (stack-loss) efficiency, percent of the higher heating value: what did not leave by the vent
/// connector as sensible or latent heat. Common practice (an analyser works it out so). 0 without fire.
double steady_efficiency_pct(const Inputs& inputs, const Outputs& outputs);

} // namespace lightoff::heat
