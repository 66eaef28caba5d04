// SPDX-License-Identifier: MIT
#pragma once
#include "gas/room_air.hpp"
#include <array>
#include <cstddef>
#include <cstdint>

/// Gas train: supply, meter, pipe, cock, valve with regulator, manifold and burner orifices; and the gas and
/// CO balance of the room. Pressures are gauge, Pa; flows m3/s at standard conditions (60 F, 1 atm).
namespace lightoff::gas {

inline constexpr std::size_t kMaxBurners = 8;
using PerBurner = std::array<double, kMaxBurners>;

struct Params {
    double supply_static_pa = 0.0;       ///< in the house pipe at no flow
    double meter_resistance = 0.0;       ///< meter and shared pipe, Pa/(m3/s)^2
    double pipe_resistance = 0.0;        ///< branch pipe of the furnace, Pa/(m3/s)^2
    double cock_resistance = 0.0;        ///< gas cock full open, Pa/(m3/s)^2
    double inlet_pipe_volume_m3 = 0.0;   ///< between cock and valve: holds pressure when the cock is shut
    double specific_gravity = 0.60;      ///< of the gas, air = 1
    double regulator_set_pa = 0.0;       ///< manifold set point at `regulator_inlet_pa`
    double regulator_inlet_pa = 0.0;     ///< inlet pressure that the set point is stated for
    double regulator_slope = 0.0;        ///< rise of the manifold for each Pa of inlet
    double valve_conductance = 0.0;      ///< wide-open valve, m3/s per Pa^(1/2)
    double valve_opening_s = 0.0;        ///< full stroke
    double valve_closing_s = 0.0;        ///< full stroke, < 0.3 s
    double discharge_coefficient = 0.90; ///< of orifices, taps and leaks
    PerBurner orifice_diameter_m{};      ///< of the first `burner_count`
    double tap_diameter_m = 0.0;         ///< pressure tap with its plug out
    double meter_dial_m3 = 0.0;          ///< one turn of the test dial
    double room_volume_m3 = 0.0;
    std::int64_t burner_count = 0; ///< 1..8
};

/// How the parts are. Defaults: healthy.
struct Condition {
    double cock_open = 1.0;     ///< share of the bore that the open cock leaves free; 0: its plug stays shut
    double supply_factor = 1.0; ///< factor on the static supply pressure
    double pipe_restriction = 0.0; ///< share of the branch pipe's bore blocked or missing (undersized), 0..1
    double regulator_adjust_pa = 0.0; ///< what a technician turned in
    double regulator_drift_pa = 0.0;  ///< what age did to the set point
    double valve_travel_min = 0.0;    ///< > 0: hangs open there when not energised
    double valve_travel_max = 1.0;    ///< < 1: opens no further; 0 is stuck shut
    double valve_leak_area_m2 = 0.0;  ///< past both closed seats
    double inlet_leak_area_m2 = 0.0;  ///< joint between cock and valve, to the room
    double inlet_tap_open = 0.0;      ///< share of the tap's bore open to the room, 0 plugged or hose on
    double outlet_tap_open = 0.0;
    PerBurner orifice_plugging{}; ///< share of the orifice area blocked, 0..1
    PerBurner orifice_diameter_factor{1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0}; ///< wrong drill size

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("cock_open", "1", self.cock_open);
        visit("supply_factor", "1", self.supply_factor);
        visit("pipe_restriction", "1", self.pipe_restriction);
        visit("regulator_adjust", "Pa", self.regulator_adjust_pa);
        visit("regulator_drift", "Pa", self.regulator_drift_pa);
        visit("valve_travel_min", "1", self.valve_travel_min);
        visit("valve_travel_max", "1", self.valve_travel_max);
        visit("valve_leak_area", "m2", self.valve_leak_area_m2);
        visit("inlet_leak_area", "m2", self.inlet_leak_area_m2);
        visit("inlet_tap_open", "1", self.inlet_tap_open);
        visit("outlet_tap_open", "1", self.outlet_tap_open);
        visit("orifice_plugging", "1", self.orifice_plugging);
        visit("orifice_diameter_factor", "1", self.orifice_diameter_factor);
    }
};

struct State {
    double valve_position = 0.0;    ///< stroke, 0 shut .. 1 open
    double inlet_pressure_pa = 0.0; ///< held by the inlet pipe when the cock is shut
    double meter_volume_m3 = 0.0;   ///< passed by the meter, at the meter's own conditions
    RoomAir room;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("valve_position", "1", self.valve_position);
        visit("inlet_pressure", "Pa", self.inlet_pressure_pa);
        visit("meter_volume", "m3", self.meter_volume_m3);
        visit("room", self.room);
    }
};

struct Inputs {
    double barometric_pa = 101325.0;
    double other_appliances_m3_s = 0.0;  ///< drawn behind the same meter
    double room_air_changes_per_s = 0.0; ///< fresh air of the room
    double spilled_gas_m3_s = 0.0;       ///< raw gas into the room from burners and vent
    double spilled_co_m3_s = 0.0;        ///< carbon monoxide into the room
    bool cock_handle_open = true;        ///< as the hand left it
    bool valve_energised = false;        ///< the coil has pulled in
};

struct Outputs {
    double inlet_tap_pa = 0.0;
    double manifold_tap_pa = 0.0;
    PerBurner burner_flow_m3_s{};
    double burners_total_m3_s = 0.0;
    double inlet_leak_m3_s = 0.0;     ///< joints and open inlet tap, to the room
    double outlet_leak_m3_s = 0.0;    ///< open outlet tap, to the room
    double meter_flow_m3_s = 0.0;     ///< furnace and others, standard conditions
    double meter_dial_fraction = 0.0; ///< of one turn of the test dial, 0..1

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("inlet_tap", "Pa", self.inlet_tap_pa);
        visit("manifold_tap", "Pa", self.manifold_tap_pa);
        visit("burner_flow", "m3/s", self.burner_flow_m3_s);
        visit("burners_total", "m3/s", self.burners_total_m3_s);
        visit("inlet_leak", "m3/s", self.inlet_leak_m3_s);
        visit("outlet_leak", "m3/s", self.outlet_leak_m3_s);
        visit("meter_flow", "m3/s", self.meter_flow_m3_s);
        visit("meter_dial_fraction", "1", self.meter_dial_fraction);
    }
};

/// One step. The pressures settle within it (a gas pipe does so in milliseconds).
Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s);

/// The meter's needle on its test dial, 0..1 of a turn, for a volume passed >= 0.
double dial_fraction(double meter_volume_m3, double dial_m3);

} // namespace lightoff::gas
