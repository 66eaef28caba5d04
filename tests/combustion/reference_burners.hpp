// SPDX-License-Identifier: MIT
#pragma once
#include "combustion/combustion.hpp"
#include "units/convert.hpp"
#include <cmath>

namespace lightoff::test {

/// Combustion air [kg/s] at which the reference furnace reads O2 7.5 % dry at 79,960 Btu/h, from
/// stoichiometry.
inline double reference_air_kg_s(double humidity_ratio) {
    using namespace combustion;
    const Fuel fuel = natural_gas();
    const double fuel_mol_s = units::btuh_to_w(79960.0) / fuel.hhv_j_mol;
    const double air_mol_s = fuel_mol_s * stoichiometric_air(fuel) * (1.0 + excess_air_from_o2(fuel, 0.075));
    return air_mol_s * units::molar_mass_air_kg_mol * (1.0 + humidity_ratio);
}

inline combustion::Params reference_burners() {
    combustion::Params p;
    p.burner_count = 4;
    p.rated_burner_flow_m3_s = units::btuh_to_w(79960.0) / combustion::hhv_j_m3(p.fuel) / 4.0;
    return p;
}

/// Four burners in a bench test: gas is opened at t = 0 on a hot igniter, with the reference air.
struct BurnerBench {
    combustion::Params params = reference_burners();
    combustion::Condition condition;
    combustion::State state;
    combustion::Inputs inputs;
    combustion::Outputs outputs;
    double time_s = 0.0;
    double gas_factor = 1.0;     ///< of the rated flow
    double gas_opening_s = 0.25; ///< ramp
    double hottest_puff_pa = 0.0;
    double rollout_j = 0.0;

    BurnerBench() {
        inputs.humidity_ratio = 0.008;
        inputs.combustion_air_kg_s = reference_air_kg_s(inputs.humidity_ratio);
        inputs.igniter_surface_k = 1500.0;
    }
    void step(double dt) {
        const double opened = std::min(1.0, (time_s + dt) / gas_opening_s);
        for (std::size_t i = 0; i < static_cast<std::size_t>(params.burner_count); ++i)
            inputs.gas_flow_m3_s[i] = params.rated_burner_flow_m3_s * gas_factor * opened;
        outputs = combustion::step(params, condition, state, inputs, dt);
        hottest_puff_pa = std::max(hottest_puff_pa, outputs.ignition_pressure_pa);
        rollout_j += outputs.rollout_heat_hhv_w * dt;
        time_s += dt;
    }
    void run(double seconds, double dt = 0.01) {
        for (int i = 0; i < static_cast<int>(std::lround(seconds / dt)); ++i)
            step(dt);
    }
    /// As the furnace does: ticks of `tick`, in five substeps where the predicate asks for them.
    void run_ticks(double seconds, double tick = 0.05) {
        for (int i = 0; i < static_cast<int>(std::lround(seconds / tick)); ++i) {
            const double opened = std::min(1.0, (time_s + tick) / gas_opening_s);
            for (std::size_t b = 0; b < static_cast<std::size_t>(params.burner_count); ++b)
                inputs.gas_flow_m3_s[b] = params.rated_burner_flow_m3_s * gas_factor * opened;
            const bool fine = combustion::needs_substeps(params, state, inputs);
            for (int k = 0; k < (fine ? 5 : 1); ++k)
                step(fine ? tick / 5.0 : tick);
        }
    }
    /// Seconds until the last burner's flame is established; -1 if it isn't within `limit_s`.
    double lighting_time(double limit_s, double dt = 0.01) {
        const auto last = static_cast<std::size_t>(params.burner_count - 1);
        while (time_s < limit_s) {
            step(dt);
            if (state.flame[last] > 0.5)
                return time_s;
        }
        return -1.0;
    }
};

} // namespace lightoff::test
