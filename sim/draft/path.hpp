// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

#include "units/fan.hpp"

namespace lightoff::draft {

/// The way of the gas from the burner compartment to outdoors. Effective area = area times discharge
/// coefficient: dp = m^2 / (2 density area^2).
struct PathParams {
    double door_area_m2 = 0.0;      ///< louvres of the burner-compartment door, effective
    double burner_area_m2 = 0.0;    ///< burner openings of the exchanger, effective
    double exchanger_area_m2 = 0.0; ///< tubes or cells, effective; full of hot gas
    double outlet_area_m2 =
        0.0; ///< baffled outlets of the cells into the collector box, effective: set the excess air
    double exchanger_height_m = 0.0; ///< rise of the hot gas from burners to collector box
    double vent_diameter_m = 0.0;
    double vent_height_m = 0.0;        ///< rise from connector to cap
    double vent_length_m = 0.0;        ///< developed length
    double vent_friction_factor = 0.0; ///< Darcy
    double vent_fittings_loss =
        0.0;                      ///< elbows, cap, exit: sum of loss coefficients on the vent's velocity head
    double cap_wind_factor = 0.0; ///< part of the wind's pressure felt at the cap; below 0 the cap sucks
    double hood_entry_loss = 0.0; ///< draft hood only: entry from hood to connector
    std::uint64_t draft_hood = 0; ///< 1: natural draft, open hood instead of an inducer
};

/// How the path is. Fractions are of the area blocked, 0 to 1; a path is never tighter than 0.1 % open.
struct PathCondition {
    double burner_blockage = 0.0;
    double exchanger_blockage = 0.0; ///< soot, scale in tubes and outlets: upstream of the hose port
    double vent_blockage = 0.0;      ///< nest, collapsed liner: downstream of the hose port
    double vent_extra_length_m = 0.0;
    double wind_exposure = 0.0; ///< further part of the wind's pressure felt at a badly placed or lost cap
    double crack_area_m2 = 0.0; ///< opening between supply air and the burner end of the exchanger

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("burner_blockage", "", self.burner_blockage);
        visit("exchanger_blockage", "", self.exchanger_blockage);
        visit("vent_blockage", "", self.vent_blockage);
        visit("vent_extra_length", "m", self.vent_extra_length_m);
        visit("wind_exposure", "", self.wind_exposure);
        visit("crack_area", "m2", self.crack_area_m2);
    }
};

/// What drives the gas this moment. Absolute temperatures above 0.
struct PathDrive {
    double room_k = 0.0;
    double outdoor_k = 0.0;
    double barometric_pa = 0.0;
    double exchanger_gas_k = 0.0; ///< mean along the exchanger
    double collector_gas_k = 0.0; ///< at its outlets and in the collector box
    double vent_gas_k = 0.0;      ///< mean along the vent
    double wind_pa = 0.0;         ///< dynamic pressure of the wind at the cap
    double added_kg_s = 0.0;      ///< gas and leak air that join at the burner end
    bool door_on = true;
};

/// Flows positive towards outdoors; pressures against the room's at the same height.
struct PathFlow {
    double burner_kg_s = 0.0;            ///< air in through the burner openings; below 0 products roll out
    double flue_kg_s = 0.0;              ///< through exchanger and inducer
    double vent_kg_s = 0.0;              ///< up the vent
    double dilution_kg_s = 0.0;          ///< room air into the hood; below 0 products spill out of it
    double compartment_suction_pa = 0.0; ///< burner compartment under room
    double burner_end_suction_pa = 0.0;  ///< burner end of the exchanger under room
    double port_suction_pa = 0.0;        ///< collector box under room
    double connector_pa = 0.0;           ///< vent connector over room
};

/// Flow through the path by the closed-form root of
///     fan + buoyancy - wind = sum of the square-law drops,
/// with the sign of every drop following its flow, so that wind or a blocked vent reverses it.
/// Buoyancy of a column = g h (density outside - density inside) (hydrostatics). The basement is taken to
/// stand at the outdoor pressure of its own height. Flue gas is counted as air (3 % too heavy).
/// With a draft hood exchanger and vent meet at room pressure and are solved apart; `fan` is then not used.
/// A blocked vent costs a sudden contraction and expansion, loss = (1/(Cc a) - 1)^2, Cc = 0.63 + 0.37 a^3,
/// a the open fraction (Weisbach, from memory).
PathFlow solve_path(const PathParams& params, const PathCondition& condition, const PathDrive& drive,
                    const units::FanNow& fan);

/// Air (kg/s) through a crack from the supply air at `outside_pa` over room into the exchanger at
/// `burner_end_suction_pa` under room; below 0 products leak into the supply air. Sharp-edged opening,
/// coefficient 0.6 (from memory).
double crack_flow_kg_s(double crack_area_m2, double outside_pa, double burner_end_suction_pa,
                       double density_kg_m3);

/// Density of air (kg/m3) as an ideal gas.
double air_density_kg_m3(double pressure_pa, double temperature_k);

} // namespace lightoff::draft
