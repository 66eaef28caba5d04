// SPDX-License-Identifier: MIT
#pragma once
#include "heat/reference_run.hpp"

#include <vector>

/// A whole heating cycle as stretches of constant inputs, each switched as the board would.
namespace heat_test {

struct Stretch {
    const char* name;
    double seconds;
    heat::Inputs in;
};

inline std::vector<Stretch> whole_cycle() {
    std::vector<Stretch> cycle;
    heat::Inputs in = standby();
    cycle.push_back({"standby", 30.0, in});
    run_inducer(in);
    cycle.push_back({"prepurge", 15.0, in});
    in.igniter_w = 400.0;
    cycle.push_back({"igniter warm-up", 20.0, in});
    in.igniter_w = 0.0;
    burn(in);
    cycle.push_back({"flame, blower on delay", 40.0, in});
    blow(in);
    cycle.push_back({"steady run", 600.0, in});
    burn(in, 0.0);
    cycle.push_back({"postpurge", 10.0, in});
    in = standby();
    blow(in);
    cycle.push_back({"blower off delay", 110.0, in});
    cycle.push_back({"cool-down", 900.0, standby()});
    return cycle;
}

/// The same cycle with every mechanism at work that a healthy furnace lacks: leak, rollout, dirt, bare
/// jacket.
inline std::vector<Stretch> troubled_cycle() {
    std::vector<Stretch> cycle = whole_cycle();
    for (Stretch& stretch : cycle) {
        stretch.in.supply_air_kg_s *= 0.7;
        stretch.in.exchanger_leak_kg_s = stretch.in.supply_air_kg_s > 0.0 ? 0.002 : 2e-4;
        stretch.in.rollout_w = 0.02 * stretch.in.heat_released_hhv_w;
        stretch.in.basement_k = kRoomK - 6.0;
    }
    return cycle;
}

inline heat::Condition troubled_condition() {
    heat::Condition c;
    c.gas_side_conductance = 0.85;
    c.air_side_conductance = 0.8;
    c.insulation_missing = 0.3;
    c.blower_openings_blocked = 0.5;
    c.inducer_openings_blocked = 0.4;
    return c;
}

} // namespace heat_test
