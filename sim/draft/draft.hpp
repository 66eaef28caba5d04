// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

#include "draft/inducer.hpp"
#include "draft/path.hpp"
#include "draft/sense_line.hpp"

/// The draft: burner openings, exchanger, collector box with its hose port, inducer, vent; hose and pressure
/// switch.
namespace lightoff::draft {

struct Params {
    PathParams path;
    InducerParams inducer;
    SenseLineParams sense_line;
};

struct Condition {
    PathCondition path;
    InducerCondition inducer;
    SenseLineCondition sense_line;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("path", self.path);
        visit("inducer", self.inducer);
        visit("sense_line", self.sense_line);
    }
};

struct State {
    InducerState inducer;
    SenseLineState sense_line;
    double leak_kg_s = 0.0; ///< through the crack of the exchanger; follows its pressures in kLeakLag_s

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("inducer", self.inducer);
        visit("sense_line", self.sense_line);
        visit("leak", "kg/s", self.leak_kg_s);
    }
};

/// Absolute temperatures above 0 K; pressures in Pa.
struct Inputs {
    double room_k = 0.0;
    double outdoor_k = 0.0;
    double barometric_pa = 0.0;
    double exchanger_gas_k = 0.0;         ///< mean along the exchanger
    double collector_gas_k = 0.0;         ///< in the collector box and at the inducer wheel
    double vent_gas_k = 0.0;              ///< mean along the vent
    double gas_kg_s = 0.0;                ///< fuel let in at the burners
    double motor_torque_nm = 0.0;         ///< inducer motor, 0 or more
    double motor_torque_slope_nm_s = 0.0; ///< its derivative by speed
    double wind_pa = 0.0;                 ///< dynamic pressure of the wind at the cap
    double blower_pressure_pa = 0.0;      ///< supply air around the exchanger, over room
    bool burner_door_on = true;
};

/// Suctions are positive under the room's pressure at the same height.
struct Outputs {
    double combustion_air_kg_s = 0.0; ///< in through the burner openings; 0 while products roll out
    double leak_air_kg_s = 0.0; ///< in through a cracked exchanger; below 0 products leak into the supply air
    double flue_kg_s = 0.0;     ///< at the inducer, fuel included; below 0 reversed
    double vent_kg_s = 0.0;     ///< up the vent
    double dilution_kg_s = 0.0; ///< room air into a draft hood
    double spillage_kg_s = 0.0; ///< products into the room, from burner openings and hood
    double port_suction_pa = 0.0;         ///< collector box
    double inducer_side_suction_pa = 0.0; ///< tee in the hose before a plug
    double switch_side_suction_pa = 0.0;  ///< tee behind it
    double switch_suction_pa = 0.0;       ///< across the diaphragm
    double vent_connector_pa = 0.0;       ///< over room: below 0 is draft
    double inducer_speed_rad_s = 0.0;     ///< of the motor
    double wheel_speed_rad_s = 0.0;
    double shaft_power_w = 0.0; ///< asked by wheel and bearings
    double shake_m_s = 0.0;     ///< peak velocity of the inducer housing
    std::uint64_t switch_closed = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("combustion_air", "kg/s", self.combustion_air_kg_s);
        visit("leak_air", "kg/s", self.leak_air_kg_s);
        visit("flue", "kg/s", self.flue_kg_s);
        visit("vent", "kg/s", self.vent_kg_s);
        visit("dilution", "kg/s", self.dilution_kg_s);
        visit("spillage", "kg/s", self.spillage_kg_s);
        visit("port_suction", "Pa", self.port_suction_pa);
        visit("inducer_side_suction", "Pa", self.inducer_side_suction_pa);
        visit("switch_side_suction", "Pa", self.switch_side_suction_pa);
        visit("switch_suction", "Pa", self.switch_suction_pa);
        visit("vent_connector", "Pa", self.vent_connector_pa);
        visit("inducer_speed", "rad/s", self.inducer_speed_rad_s);
        visit("wheel_speed", "rad/s", self.wheel_speed_rad_s);
        visit("shaft_power", "W", self.shaft_power_w);
        visit("shake", "m/s", self.shake_m_s);
        visit("switch_closed", "", self.switch_closed);
    }
};

/// Time in which the leak through a crack follows its pressures: it couples the crack to the path without an
/// iteration, and settles on the exact balance (teaching value; the gas itself is quicker).
inline constexpr double kLeakLag_s = 0.2;

/// One step: solves the path at the wheel's present speed, then moves rotor, hose and switch.
/// `dt_s` above 0, meant for 0.01 and 0.05.
Outputs step(const Params& params, const Condition& condition, State& state, const Inputs& inputs,
             double dt_s);

/// Throws std::invalid_argument with a sentence naming the value if a profile cannot be stepped.
void check(const Params& params);

} // namespace lightoff::draft
