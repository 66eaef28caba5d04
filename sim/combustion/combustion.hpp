// SPDX-License-Identifier: MIT
#pragma once
#include "combustion/carbon_monoxide.hpp"
#include "combustion/flue_gas.hpp"
#include "combustion/fuel.hpp"
#include <array>
#include <cstddef>
#include <cstdint>

/// A row of in-shot burners, each firing into its own cell of the heat exchanger: ignition, carry-over,
/// flames, gathered gas, flue gas and CO. Gas volumes are m3 at standard conditions (60 F, 1 atm).
///
/// "Air ratio" is air over stoichiometric air (1.5 = 50 % excess). Combustion air is shared equally by the
/// cells.
namespace lightoff::combustion {

inline constexpr std::size_t kMaxBurners = 8;
using PerBurner = std::array<double, kMaxBurners>;

/// Values without a source beside them are teaching values.
struct Params {
    Fuel fuel = natural_gas();
    double rated_burner_flow_m3_s = 0.0; ///< gas of one burner at the rating: flame length 1
    double primary_air_ratio = 0.50;     ///< drawn in by the gas jet, part of the air ratio
    double mixing_at_igniter = 0.30;     ///< share of the secondary air mixed in where the igniter sits
    double mixing_at_flame = 0.20;       ///< the same where an established flame is held
    double smother_air_ratio = 0.25;     ///< below it even a flame that rolls out dies
    double extinction_inert = 0.38;      ///< share of flue gas in the combustion air that stops any flame
    double rollout_air_ratio = 1.20;     ///< flame starts to come out of the burner opening below it
    double misaligned_rollout = 0.10;    ///< share of a fully misaligned flame that misses its cell
    double cell_volume_m3 = 0.006;       ///< of one cell, where unburnt gas gathers
    double cell_opening_m2 = 0.004;      ///< both ends of one cell, which vent an ignition puff
    double igniter_lights_k = 1253.15;   ///< surface that lights gas: 980 C (1,800 F), common practice
    double igniter_light_s = 0.40;       ///< time for an igniter well above it, or a pilot, to light burner 0
    double crossover_s = 0.20;           ///< carry-over to the next burner, clean
    double overflow_s = 1.0;             ///< the same by gas that overflows from a filled cell
    double flame_growth_s = 0.10;        ///< time constant
    double flame_decay_s = 0.06;         ///< time constant once gas or mixture is lost
    double pocket_burn_s = 0.10;         ///< time constant of gathered gas burning off
    double crack_jet_ratio = 0.15;       ///< jet / combustion air that half upsets the flames
    CoCurve co;
    std::int64_t burner_count = 0; ///< 1..8
};

/// How the parts are. Defaults: healthy.
struct Condition {
    PerBurner primary_blockage{};      ///< lint and rust in the burner's air opening, 0..1
    PerBurner misalignment{};          ///< flame touches metal, 0..1
    PerBurner crossover_blockage{};    ///< of the port between burner i and i + 1, 0..1
    double igniter_displacement = 0.0; ///< out of the gas stream, 0..1
    double exchanger_soot = 0.0;       ///< 0..1
    double air_dust = 0.0;             ///< lint in the combustion air, orange flecks, 0..1

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("primary_blockage", "1", self.primary_blockage);
        visit("misalignment", "1", self.misalignment);
        visit("crossover_blockage", "1", self.crossover_blockage);
        visit("igniter_displacement", "1", self.igniter_displacement);
        visit("exchanger_soot", "1", self.exchanger_soot);
        visit("air_dust", "1", self.air_dust);
    }
};

struct State {
    PerBurner flame{};                      ///< 0 none .. 1 established
    PerBurner kindling{};                   ///< progress of being lit, 0..1
    PerBurner unburnt_m3{};                 ///< gas gathered in the cell
    double peak_ignition_pressure_pa = 0.0; ///< of the latest light-off
    // Fuel account since the start: in = burnt + vented + spilled + gathered.
    double fuel_in_m3 = 0.0;
    double fuel_burnt_m3 = 0.0;
    double fuel_vented_m3 = 0.0;  ///< raw, up the vent
    double fuel_spilled_m3 = 0.0; ///< raw, into the room

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("flame", "1", self.flame);
        visit("kindling", "1", self.kindling);
        visit("unburnt", "m3", self.unburnt_m3);
        visit("peak_ignition_pressure", "Pa", self.peak_ignition_pressure_pa);
        visit("fuel_in", "m3", self.fuel_in_m3);
        visit("fuel_burnt", "m3", self.fuel_burnt_m3);
        visit("fuel_vented", "m3", self.fuel_vented_m3);
        visit("fuel_spilled", "m3", self.fuel_spilled_m3);
    }
};

struct Inputs {
    PerBurner gas_flow_m3_s{};
    double combustion_air_kg_s = 0.0; ///< through the burner openings, moist, with any recirculated flue gas
    double recirculated_fraction = 0.0; ///< share of it that is flue gas, 0..1
    double humidity_ratio = 0.0;        ///< of the air, kg/kg
    double igniter_surface_k = 293.0;
    double pilot_flame = 0.0;    ///< at burner 0, 0..1
    double crack_jet_kg_s = 0.0; ///< air blown into the exchanger through a crack, past the flames
};

/// What one flame looks like.
struct FlameLook {
    double strength = 0.0; ///< 0 none .. 1 steady and full
    double yellow = 0.0;   ///< 0 blue .. 1 yellow
    double length = 0.0;   ///< 1 at the rating
    double lift = 0.0;     ///< 0 seated .. 1 off the burner
    double softness = 0.0; ///< 0 crisp .. 1 lazy

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("strength", "1", self.strength);
        visit("yellow", "1", self.yellow);
        visit("length", "1", self.length);
        visit("lift", "1", self.lift);
        visit("softness", "1", self.softness);
    }
};

struct Outputs {
    std::array<FlameLook, kMaxBurners> burner{};
    double rod_flame_strength = 0.0; ///< of the flame at the last burner, 0..1
    double rod_flame_coverage = 0.0; ///< share of the rod within it, 0..1; 1 healthy
    double flame_upset = 0.0;        ///< by a crack jet, 0..1

    double heat_released_hhv_w = 0.0;         ///< in the exchanger
    double rollout_heat_hhv_w = 0.0;          ///< out of the burner openings, on top of the former
    double latent_w = 0.0;                    ///< part of heat_released_hhv_w that stays in the water vapour
    double flue_mass_flow_kg_s = 0.0;         ///< through the exchanger, raw gas not counted
    double water_vapour_mass_flow_kg_s = 0.0; ///< part of it
    FlueGas flue;                             ///< mol/s
    HeatCapacity flue_heat_capacity{};        ///< W/K as a polynomial of T; see sensible_heat()

    double o2_dry = 0.0;      ///< fraction
    double co2_dry = 0.0;     ///< fraction
    double co_dry = 0.0;      ///< fraction
    double co_air_free = 0.0; ///< fraction; 0 without flame
    double excess_air = 0.0;  ///< of the whole sample, at most 99; 0 without flame

    double vented_gas_m3_s = 0.0;      ///< raw gas up the vent
    double spilled_gas_m3_s = 0.0;     ///< raw gas into the room
    double spilled_co_m3_s = 0.0;      ///< CO into the room, from flame rolling out
    double ignition_pressure_pa = 0.0; ///< puff of gathered gas burning, highest cell
    double ignition_loudness = 0.0;    ///< 0 silent .. 1 a bang

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("burner", self.burner);
        visit("rod_flame_strength", "1", self.rod_flame_strength);
        visit("rod_flame_coverage", "1", self.rod_flame_coverage);
        visit("flame_upset", "1", self.flame_upset);
        visit("heat_released_hhv", "W", self.heat_released_hhv_w);
        visit("rollout_heat_hhv", "W", self.rollout_heat_hhv_w);
        visit("latent", "W", self.latent_w);
        visit("flue_mass_flow", "kg/s", self.flue_mass_flow_kg_s);
        visit("water_vapour_mass_flow", "kg/s", self.water_vapour_mass_flow_kg_s);
        visit("flue", self.flue);
        visit("flue_heat_capacity", "", self.flue_heat_capacity);
        visit("o2_dry", "1", self.o2_dry);
        visit("co2_dry", "1", self.co2_dry);
        visit("co_dry", "1", self.co_dry);
        visit("co_air_free", "1", self.co_air_free);
        visit("excess_air", "1", self.excess_air);
        visit("vented_gas", "m3/s", self.vented_gas_m3_s);
        visit("spilled_gas", "m3/s", self.spilled_gas_m3_s);
        visit("spilled_co", "m3/s", self.spilled_co_m3_s);
        visit("ignition_pressure", "Pa", self.ignition_pressure_pa);
        visit("ignition_loudness", "1", self.ignition_loudness);
    }
};

Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s);

/// Whether flames are spreading, growing or dying, so that this tick should be stepped at 10 ms.
bool needs_substeps(const Params& params, const State& state, const Inputs& inputs);

} // namespace lightoff::combustion
