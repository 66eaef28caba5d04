// SPDX-License-Identifier: MIT
#pragma once
#include "heat/heat.hpp"
#include "units/convert.hpp"

/// The healthy reference furnace's inputs to the heat room, as the other rooms would give them.
namespace heat_test {

using namespace lightoff;

inline constexpr double kRoomK = 294.261; // 70 F
inline constexpr double kTick = 0.05;
inline constexpr double kInputBtuH = 79960.0; // settled targets, docs
inline constexpr double kAirKgS = 0.6515;     // 1,150 cfm at 0.075 lb/ft3

/// Nothing burns or runs; a little draught goes through.
inline heat::Inputs standby() {
    heat::Inputs in;
    in.flue_mass_flow_kg_s = 0.001;
    in.cp_c0_j_kg_k = 1010.0;
    in.cp_c1_j_kg_k2 = 0.21;
    in.dew_point_k = 324.6; // 124.6 F, tests/reference/excess_air.csv, methane at 50 %
    in.transformer_loss_w = 6.0;
    in.basement_k = kRoomK;
    in.outdoor_k = 272.0;
    return in;
}

inline void run_inducer(heat::Inputs& in) {
    in.flue_mass_flow_kg_s = 0.0114;
    in.inducer_electrical_w = 70.0;
    in.inducer_loss_w = 45.0;
    in.inducer_speed_ratio = 1.0;
}

/// `fraction` of the full input at the flue flow that is set.
inline void burn(heat::Inputs& in, double fraction = 1.0) {
    in.heat_released_hhv_w = units::btuh_to_w(kInputBtuH) * fraction;
    in.latent_w = 0.100 * in.heat_released_hhv_w; // natural gas, vapour at room temperature
}

/// `fraction` of the healthy airflow; motor power about as it follows.
inline void blow(heat::Inputs& in, double fraction = 1.0) {
    in.supply_air_kg_s = kAirKgS * fraction;
    in.blower_electrical_w = 527.0; // 1,800 Btu/h
    in.blower_loss_w = 270.0;
}

inline heat::Inputs steady_run() {
    heat::Inputs in = standby();
    run_inducer(in);
    burn(in);
    blow(in);
    return in;
}

/// Keeps the house at room temperature, as a steady test needs: losses balance whatever comes.
inline void hold_house(heat::State& state) {
    state.temperature.house = kRoomK;
}

/// Steps through `seconds` with the inputs held and the house held; returns the last outputs.
inline heat::Outputs hold(const heat::Params& p, const heat::Condition& c, heat::State& s,
                          const heat::Inputs& in, double seconds, double dt = kTick) {
    heat::Outputs out;
    const long steps = static_cast<long>(seconds / dt + 0.5);
    for (long i = 0; i < steps; ++i) {
        out = heat::step(p, c, s, in, dt);
        hold_house(s);
    }
    return out;
}

inline double rise_f(const heat::Outputs& out) {
    return units::k_difference_to_fahrenheit(out.supply_air_k - kRoomK);
}
inline double net_flue_f(const heat::Outputs& out) {
    return units::k_difference_to_fahrenheit(out.vent_connector_gas_k - kRoomK);
}

} // namespace heat_test
